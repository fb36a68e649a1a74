"""Solvents by a general-purpose library of chemical data, apart from the project's own figures.

`chemicals` gives molar masses, densities (Perry's, table 2-32), boiling points, and of each list
that it holds flash points, lower explosive limits and exposure limits. `python -m
tests.reference.solvents` writes tests/core/safety/solvents.csv.
"""

from __future__ import annotations

import csv
from pathlib import Path

FROZEN = Path(__file__).parents[1] / "core" / "safety" / "solvents.csv"
SAYS = """\
# Frozen output of chemicals 1.5.2: molar mass; density at 25 C (Perry's, table 2-32); boiling
# point; the lowest lower explosive limit and flash point of IEC 60079-20-1 and NFPA 497; the limits
# of a day and of 15 minutes of Ontario Regulation 833. Empty: the library has none. Made by "python
# -m tests.reference.solvents", re-proved live by tests/reference/test_solvents_live.py.
"""
# By their CAS numbers; of the mixtures (spirits, naphtha, turpentine) no one formula speaks, and
# xylene is three.
CAS = {
    "ethanol": ("64-17-5",),
    "methanol": ("67-56-1",),
    "isopropanol": ("67-63-0",),
    "acetone": ("67-64-1",),
    "mek": ("78-93-3",),
    "toluene": ("108-88-3",),
    "xylene": ("1330-20-7", "95-47-6", "108-38-3", "106-42-3"),
    "butyl-acetate": ("123-86-4",),
    "ethyl-acetate": ("141-78-6",),
    "butanol": ("71-36-3",),
    "butoxyethanol": ("111-76-2",),
    "limonene": ("5989-27-5",),
    "turpentine": ("8006-64-2",),
}
STANDARDS = ("IEC 60079-20-1 (2010)", "NFPA 497 (2008)")
KELVIN = 273.15
COLUMNS = (
    "molar_mass_g_per_mol", "density_g_per_ml", "boils_c", "lel_pct", "flash_c", "day_ppm",
    "short_ppm",
)  # fmt: skip


def of(solvent: str) -> dict[str, float | None]:
    """Return what the library says of a solvent; of several isomers the lowest of each figure."""
    found = [_of_one(cas) for cas in CAS[solvent]]
    told = {key: [one[key] for one in found] for key in COLUMNS}
    return {
        key: min((figure for figure in figures if figure is not None), default=None)
        for key, figures in told.items()
    }


def _of_one(cas: str) -> dict[str, float | None]:
    from chemicals import LFL, STEL, TWA, Tb
    from chemicals.safety import LFL_methods, T_flash, T_flash_methods

    mass = _mass(cas)
    boils = Tb(cas)
    lists = [m for m in LFL_methods(CASRN=cas) if m in STANDARDS]
    flashes = [m for m in T_flash_methods(cas) if m in STANDARDS]
    return {
        "molar_mass_g_per_mol": mass,
        "density_g_per_ml": _density(cas, mass),
        "boils_c": boils - KELVIN if boils else None,
        "lel_pct": min((100 * LFL(CASRN=cas, method=m) for m in lists), default=None),
        "flash_c": min((T_flash(cas, method=m) - KELVIN for m in flashes), default=None),
        "day_ppm": _ppm(TWA(cas)),
        "short_ppm": _ppm(STEL(cas)),
    }


def _mass(cas: str) -> float | None:
    from chemicals import MW

    try:
        return float(MW(cas))
    except ValueError:
        return None


def _density(cas: str, mass: float | None) -> float | None:
    from chemicals.dippr import EQ105
    from chemicals.volume import rho_data_Perry_8E_105_l

    if mass is None or cas not in rho_data_Perry_8E_105_l.index:
        return None
    row = rho_data_Perry_8E_105_l.loc[cas]
    return float(EQ105(25 + KELVIN, row["C1"], row["C2"], row["C3"], row["C4"])) * mass * 1e-6


def _ppm(limit: tuple[float, str] | None) -> float | None:
    return limit[0] if limit is not None and limit[1] == "ppm" else None


def frozen() -> dict[str, dict[str, float | None]]:
    """Return the frozen table by solvent and column."""
    lines = [x for x in FROZEN.read_text("utf-8").splitlines() if not x.startswith("#")]
    return {
        row["solvent"]: {key: float(row[key]) if row[key] else None for key in COLUMNS}
        for row in csv.DictReader(lines)
    }


def main() -> None:
    """Write the frozen table anew."""
    with FROZEN.open("w", encoding="utf-8", newline="") as file:
        file.write(SAYS)
        table = csv.writer(file, lineterminator="\n")
        table.writerow(["solvent", *COLUMNS])
        for solvent in CAS:
            found = of(solvent)
            figures = (found[key] for key in COLUMNS)
            table.writerow([solvent, *("" if f is None else f"{f:.6g}" for f in figures)])


if __name__ == "__main__":
    main()
