"""`python -m garboard` does what `garboard` does."""

import sys

from garboard.cli import main

sys.exit(main())
