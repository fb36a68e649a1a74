"""How much to weigh and pour for a mix that is asked for: a ratio, a cut, a thinning, a jar."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.commands import Do
from finishlog.core.mixing.containers import MixPart
from finishlog.core.mixing.mixes import (
    Dilution,
    dilution,
    finished_l,
    flakes_and_alcohol,
    shares,
    solution,
    split,
)
from finishlog.core.published.keeping import POUND_CUT_G_PER_L, MixingFigures

FLAKES, ALCOHOL = "flakes", "alcohol"
# What the numbers of a bare ratio stand for, as labels print it. common practice
OF_A_RATIO = ("base", "hardener", "thinner")
_A_JAR = Do.MIX.option(jar="500ml")


class MixAsked(Struct, frozen=True):
    """A mix as asked for. Cuts in g/L; `jar_l`: what it is to fill; None: not said.

    `cut`: flakes for a cut; `thin_from`, `thin_to`: a cut thinned to a weaker one.
    """

    parts: tuple[MixPart, ...] = ()
    jar_l: float | None = None
    cut: float | None = None
    thin_from: float | None = None
    thin_to: float | None = None


class Recipe(Struct, frozen=True):
    """What to weigh and pour. `dilution` where a cut is thinned; `about_l`: what it makes."""

    parts: tuple[MixPart, ...]
    dilution: Dilution | None = None
    about_l: float | None = None


def of_ratio(numbers: Sequence[float]) -> tuple[MixPart, ...]:
    """Name the parts of a bare ratio, `10:1`; ValueError for more than a label gives."""
    if not 2 <= len(numbers) <= len(OF_A_RATIO):
        raise ValueError("a ratio has two or three numbers")
    return tuple(MixPart(OF_A_RATIO[n], parts) for n, parts in enumerate(numbers))


def recipe(asked: MixAsked, figures: MixingFigures) -> Recipe:
    """Work out the amounts; ValueError says what is missing or does not go together."""
    if asked.thin_to is not None:
        return _thinned(asked, figures)
    parts = _of_a_cut(asked, figures) if asked.cut is not None else _as_typed(asked)
    return Recipe(parts, about_l=_makes(parts, figures))


def _as_typed(asked: MixAsked) -> tuple[MixPart, ...]:
    parts = asked.parts
    if not parts:
        raise ValueError(
            "a mix has parts: base:500ml hardener:50ml, 10:1 or "
            + Do.MIX.option(cut="2lb", jar="500ml")
        )
    measured = [p for p in parts if p.volume_ml is not None or p.weight_g is not None]
    if 0 < len(measured) < len(parts):
        raise ValueError("some parts have amounts and some only shares: type all of one kind")
    if asked.jar_l is None:
        return shares(parts)
    if measured:
        raise ValueError("a jar fills a ratio or a cut; these parts have amounts already")
    return split(parts, asked.jar_l)


def _of_a_cut(asked: MixAsked, figures: MixingFigures) -> tuple[MixPart, ...]:
    """Find the flakes or the alcohol that is missing, or both for a jar."""
    assert asked.cut is not None
    if asked.jar_l is not None and not asked.parts:
        grams, litres = flakes_and_alcohol(asked.cut, asked.jar_l, figures)
    elif len(asked.parts) == 1 and asked.jar_l is None:
        grams, litres = _other_half(asked.parts[0], asked.cut)
    else:
        raise ValueError(f"a cut wants one thing more: {_A_JAR}, alcohol:500ml or flakes:60g")
    return shares(
        (MixPart(FLAKES, 1.0, weight_g=grams), MixPart(ALCOHOL, 1.0, volume_ml=1000 * litres))
    )


def _other_half(part: MixPart, cut: float) -> tuple[float, float]:
    if part.weight_g is not None:
        return part.weight_g, part.weight_g / cut
    if part.volume_ml is not None:
        return cut * part.volume_ml / 1000, part.volume_ml / 1000
    raise ValueError("a cut wants an amount: alcohol:500ml or flakes:60g")


def _thinned(asked: MixAsked, figures: MixingFigures) -> Recipe:
    """Thin a cut for a jar, or with an amount of the stronger one or of the alcohol."""
    if asked.thin_from is None or asked.thin_to is None:
        raise ValueError(f"thinning wants both cuts: {Do.MIX.option(from_='2lb', to='1lb')}")
    by = dilution(asked.thin_from, asked.thin_to, figures)
    strong_l = _strong_l(asked, by.by_alcohol)
    if strong_l is None:
        return Recipe((), by)
    name = f"{asked.thin_from / POUND_CUT_G_PER_L:.2g} lb cut"
    strong = solution(name, strong_l, asked.thin_from, figures)
    alcohol = MixPart(ALCOHOL, 1.0, volume_ml=1000 * strong_l * by.by_alcohol)
    parts = shares((strong, alcohol))
    return Recipe(parts, by, strong_l * (1 + by.by_alcohol))


def _strong_l(asked: MixAsked, alcohol_per_part: float) -> float | None:
    """Return how much (L) of the stronger cut is meant; None when only the ratio is asked."""
    if asked.jar_l is not None and not asked.parts:
        return asked.jar_l / (1 + alcohol_per_part)
    if not asked.parts:
        return None
    if len(asked.parts) > 1 or asked.jar_l is not None or asked.parts[0].volume_ml is None:
        raise ValueError(f"thinning wants one volume: {_A_JAR}, cut:250ml or alcohol:200ml")
    part = asked.parts[0]
    litres = (part.volume_ml or 0.0) / 1000
    return litres / alcohol_per_part if part.name.casefold() == ALCOHOL else litres


def _makes(parts: Sequence[MixPart], figures: MixingFigures) -> float | None:
    """Return about how much liquid (L) it makes; None where something was only given as a share."""
    if any(p.volume_ml is None and p.weight_g is None for p in parts):
        return None
    poured = sum(p.volume_ml for p in parts if p.volume_ml is not None) / 1000
    dry = sum(p.weight_g for p in parts if p.weight_g is not None and p.volume_ml is None)
    return finished_l(dry, poured, figures) if poured else None


def with_products(parts: Sequence[MixPart], known: dict[str, int]) -> tuple[MixPart, ...]:
    """Mark the parts that are products, by their names in small letters."""
    return tuple(replace(p, product=known.get(p.name.casefold())) for p in parts)
