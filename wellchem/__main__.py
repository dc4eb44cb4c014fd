"""`python -m wellchem` is the command line."""

import sys

from wellchem.cli import main

sys.exit(main())
