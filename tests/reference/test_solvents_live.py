"""The frozen solvents of tests/core against the library, asked live."""

from __future__ import annotations

import pytest

from tests.reference.solvents import CAS, COLUMNS, frozen, of

pytestmark = pytest.mark.reference


@pytest.mark.parametrize("solvent", CAS)
def test_the_frozen_solvents_are_what_the_library_gives(solvent):
    known, live = frozen()[solvent], of(solvent)
    for column in COLUMNS:
        found = live[column]
        assert known[column] == (None if found is None else pytest.approx(found, rel=1e-4))
