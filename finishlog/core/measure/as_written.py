"""A temperature says no more than it was written to: whole degrees of either scale, or a tenth."""

from __future__ import annotations

# Half of the last digit that published figures are rounded to (°C).
WRITTEN_TO = 0.05
_WHOLE_C, _WHOLE_F = 0.5, 0.5 / 1.8
_WHOLE = 1e-6


def says_the_same(one_c: float, other_c: float) -> bool:
    """Tell whether two temperatures (°C) may be one, as the coarser of them was written.

    73 °F is 22.8 °C, and what a label calls 23 °C; nobody read a gauge to the tenth of a degree.
    """
    return abs(one_c - other_c) < max(_half_a_unit(one_c), _half_a_unit(other_c))


def _half_a_unit(celsius: float) -> float:
    if abs(celsius - round(celsius)) < _WHOLE:
        return _WHOLE_C
    fahrenheit = celsius * 1.8 + 32
    return _WHOLE_F if abs(fahrenheit - round(fahrenheit)) < _WHOLE else WRITTEN_TO
