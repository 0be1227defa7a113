"""Exam English and notation, read into typed facts and asks."""
