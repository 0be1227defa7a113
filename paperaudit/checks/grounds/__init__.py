"""What several checks rest on: how places are called, sums of marks, numbering, options, labels, units."""
