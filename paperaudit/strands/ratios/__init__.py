"""Ratio, percentages, money, rates, measures and solids: from named amounts to answers."""
