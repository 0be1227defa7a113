"""One file a strand of the syllabus: recognise a part, derive its answer, confirm it a second way."""
