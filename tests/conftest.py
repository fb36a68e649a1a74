"""A finisher with an empty database; and how the properties search.

The command of README draws the same examples each time, so that it gives one verdict. `.ci/run`
searches besides with `--hypothesis-profile=search` and a new seed, which it prints. What that
finds is kept beside its test as an `@example`.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import Phase, settings

from tests.cli.run import Finishlog
from tests.finisher import Finisher

settings.register_profile("same", derandomize=True, database=None, deadline=None)
# Explaining a find costs minutes and adds nothing to the seed and the smallest example.
settings.register_profile(
    "search",
    database=None,
    deadline=None,
    print_blob=True,
    phases=(Phase.explicit, Phase.generate, Phase.shrink),
)
settings.load_profile("same")


@pytest.fixture
def finisher(tmp_path: Path) -> Finisher:
    return Finisher(Finishlog(tmp_path))
