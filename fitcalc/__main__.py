"""`python -m fitcalc`."""

import sys

from fitcalc.cli import main

sys.exit(main())
