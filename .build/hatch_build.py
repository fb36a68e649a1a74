"""Ship migrations/ and sample_data/ inside the wheel.

Only in a real wheel: an editable install reads the folders where they stand, and a copy would
go stale.
"""

from __future__ import annotations

from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class ShipFolders(BuildHookInterface):  # type: ignore[type-arg]
    """Add the two top-level folders to the standard wheel."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Map each folder to its place in the package."""
        if version == "standard":
            build_data["force_include"]["migrations"] = "finishlog/_migrations"
            build_data["force_include"]["sample_data"] = "finishlog/_sample_data"
