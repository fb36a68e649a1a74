"""A finisher with an empty database."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cases.finisher import Finisher
from tests.cli.run import Finishlog


@pytest.fixture
def finisher(tmp_path: Path) -> Finisher:
    return Finisher(Finishlog(tmp_path))
