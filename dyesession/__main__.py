"""`python -m dyesession`: starts the command line."""

import sys

from dyesession.cli import main

sys.exit(main())
