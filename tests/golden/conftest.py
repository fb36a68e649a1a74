"""What runs the program, and the line that each command ends well with, stand in tests/cli."""

from __future__ import annotations

import sys
from pathlib import Path

CLI = str(Path(__file__).parents[1] / "cli")
if CLI not in sys.path:
    sys.path.append(CLI)
