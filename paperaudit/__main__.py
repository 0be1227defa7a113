"""Runs the command line as `python -m paperaudit`."""

import sys

from paperaudit.cli import main

sys.exit(main())
