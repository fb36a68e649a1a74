"""A finisher with an empty database; what a run shares; and how the properties search.

The command of README draws the same examples each time, so that it gives one verdict, and not more
than a budget of each property. `.ci/run` searches besides with `--hypothesis-profile=search`,
without that budget, and a new seed, which it prints. What that finds is kept beside its test as an
`@example`.
"""

from __future__ import annotations

import gc
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import Phase, settings

from tests.cli.run import Finishlog
from tests.examples import BUDGET, KILLS
from tests.finisher import Finisher
from tests.once import built_once, compiled_once

settings.register_profile(
    "same", derandomize=True, database=None, deadline=None, max_examples=BUDGET
)
# Explaining a find costs minutes and adds nothing to the seed and the smallest example.
settings.register_profile(
    "search",
    database=None,
    deadline=None,
    print_blob=True,
    phases=(Phase.explicit, Phase.generate, Phase.shrink),
)
settings.load_profile("same")

# As seldom as `finishlog.__main__` has it, from here on: collecting the tests makes no cycles.
gc.set_threshold(100_000)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--kills", type=int, default=KILLS, help="how often to kill what writes")


@pytest.fixture(scope="session")
def kills(pytestconfig: pytest.Config) -> int:
    """How often a process that writes is killed."""
    return int(pytestconfig.getoption("--kills"))


@pytest.fixture
def finisher(tmp_path: Path) -> Finisher:
    return Finisher(Finishlog(tmp_path))


def pytest_collection_finish() -> None:
    """Never walk through all that was collected in search of cycles."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="session")
def for_all_workers(tmp_path_factory: pytest.TempPathFactory, pytestconfig: pytest.Config) -> Path:
    """The folder of this run, which its workers share."""
    own = tmp_path_factory.getbasetemp()
    return own.parent if hasattr(pytestconfig, "workerinput") else own


@pytest.fixture(scope="session", autouse=True)
def _built_once(for_all_workers: Path) -> Iterator[None]:
    with built_once(), compiled_once(for_all_workers):
        yield
