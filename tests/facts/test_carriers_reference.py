"""Make the frozen vapour pressures again from the reference library."""

from __future__ import annotations

import pytest
from test_carriers import PERRY

CAS = {
    "ethanol": "64-17-5",
    "butyl-acetate": "123-86-4",
    "mineral-spirits": "124-18-5",
    "xylene": "108-38-3",
}


@pytest.mark.reference
@pytest.mark.parametrize("key", PERRY)
def test_the_frozen_points_are_what_the_library_gives(key):
    from chemicals import vapor_pressure
    from chemicals.dippr import EQ101

    row = vapor_pressure.Psat_data_Perrys2_8.loc[CAS[key]]
    for temperature_c, pascal in PERRY[key].items():
        live = EQ101(temperature_c + 273.15, row.C1, row.C2, row.C3, row.C4, row.C5)
        assert live == pytest.approx(pascal, abs=0.006)
