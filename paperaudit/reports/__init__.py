"""One file an output: terminal, JSON, page, mark scheme, workbooks, figure."""
