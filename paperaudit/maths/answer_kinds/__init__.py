"""Comparing answers that are no single value: intervals, lists, points, equations of lines, words; one file a kind."""
