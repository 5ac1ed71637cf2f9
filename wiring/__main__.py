"""``python -m wiring``: the command line without the editor."""

import sys

from wiring.commands.main import main

sys.exit(main())
