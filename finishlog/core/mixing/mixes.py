"""What is in a mix: ratios, shellac cuts, thinning, amounts for a jar.

A cut is the weight of dry flakes to the volume of alcohol, not of the liquid that comes of it: an
n lb cut is n lb to 1 US gal of alcohol (common practice), 119.8 g/L for each pound. Dissolved
flakes take up room, so a part of a heavy cut holds less than a part of alcohol.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import isclose

from msgspec import Struct
from msgspec.structs import replace

from finishlog.core.finish.classes import Range
from finishlog.core.mixing.containers import MixPart
from finishlog.core.published.keeping import MixingFigures

# Words for what only makes it thinner: it leaves, and nothing of it stays in the film.
_THINNERS = frozenset(
    {
        "thinner", "spirit", "spirits", "alcohol", "ethanol", "water", "turpentine", "naphtha",
        "solvent", "retarder", "reducer", "acetone",
    }
)  # fmt: skip
# Dry resin, which is weighed: heaped, most of it is air.
_FLAKES = frozenset({"flake", "flakes", "buttons", "seedlac"})
# Shellac is dissolved in nothing else: either word tells a cut from powder in water.
_OF_A_CUT = _FLAKES | {"shellac", "alcohol", "ethanol", "meths", "spirits"}


class Dilution(Struct, frozen=True):
    """Parts of alcohol to one part of the stronger cut, by what a cut is taken to mean.

    `by_alcohol`: flakes to alcohol, ours. `by_liquid`: flakes to the mixed liquid, which some
    charts mean. `without_flakes`: as if the flakes took up no room; it is wrong in both.
    """

    by_alcohol: float
    by_liquid: float
    without_flakes: float


def cut_g_per_l(parts: Iterable[MixPart], figures: MixingFigures) -> float | None:
    """Return grams of flakes to a litre of alcohol; None where nothing was weighed or poured.

    None too of what is no shellac: milk paint in water, resin and hardener.
    """
    known = list(parts)
    if not any(_is_of_a_cut(p) for p in known):
        return None
    grams = sum(p.weight_g for p in known if p.weight_g is not None)
    litres = sum(_alcohol_l(p, figures) for p in known)
    if not grams or litres <= 0 or any(p.weight_g is p.volume_ml is None for p in known):
        return None
    return grams / litres


def _is_of_a_cut(part: MixPart) -> bool:
    """Tell flakes, alcohol, and a cut that is thinned: its flakes are known within its volume."""
    dissolved = part.weight_g is not None and part.volume_ml is not None
    return dissolved or not _OF_A_CUT.isdisjoint(_words(part))


def _alcohol_l(part: MixPart, figures: MixingFigures) -> float:
    if part.volume_ml is None:
        return 0.0
    return part.volume_ml / 1000 - (part.weight_g or 0.0) * figures.flakes_l_per_g


def finished_l(flakes_g: float, alcohol_l: float, figures: MixingFigures) -> float:
    """Return about how much liquid (L) flakes and alcohol make."""
    return alcohol_l + flakes_g * figures.flakes_l_per_g


def flakes_and_alcohol(cut: float, jar_l: float, figures: MixingFigures) -> tuple[float, float]:
    """Return the flakes (g) and the alcohol (L) of a cut (g/L) that fill a jar."""
    alcohol = jar_l / (1 + cut * figures.flakes_l_per_g)
    return cut * alcohol, alcohol


def solution(name: str, volume_l: float, cut: float, figures: MixingFigures) -> MixPart:
    """Describe so much (L) of a cut (g/L) as a part: its volume, and the dry flakes in it."""
    grams, _ = flakes_and_alcohol(cut, volume_l, figures)
    return MixPart(name, 1.0, volume_ml=1000 * volume_l, weight_g=grams)


def dilution(have: float, want: float, figures: MixingFigures) -> Dilution:
    """Return how much alcohol thins one part of a cut to a weaker one (both g/L).

    ValueError when the wanted cut is not the weaker.
    """
    if not 0 < want < have:
        raise ValueError("a cut is thinned to a weaker one")
    swollen = 1 + have * figures.flakes_l_per_g
    plain = have / want - 1
    return Dilution(plain / swollen, have / want / swollen - 1, plain)


def shares(parts: Sequence[MixPart]) -> tuple[MixPart, ...]:
    """Set each part's share from its amounts, the smallest being 1; no amounts: as typed."""
    amounts = [p.volume_ml if p.volume_ml is not None else p.weight_g for p in parts]
    known = [a for a in amounts if a is not None]
    if len(known) < len(parts):
        return tuple(parts)
    least = min(known)
    return tuple(replace(p, parts=a / least) for p, a in zip(parts, known, strict=True))


def split(parts: Sequence[MixPart], total_l: float) -> tuple[MixPart, ...]:
    """Give parts that have only shares their volumes out of so much in all (L)."""
    whole = sum(p.parts for p in parts)
    return tuple(replace(p, volume_ml=1000 * total_l * p.parts / whole) for p in parts)


def together(old: Sequence[MixPart], added: Sequence[MixPart]) -> tuple[MixPart, ...]:
    """Add what was topped up to what was there, part by part."""
    found = {p.name.casefold(): p for p in old}
    for part in added:
        before = found.get(part.name.casefold())
        found[part.name.casefold()] = _sum(before, part) if before else part
    return shares(tuple(found.values()))


def _sum(one: MixPart, other: MixPart) -> MixPart:
    return replace(
        one,
        parts=one.parts + other.parts,
        volume_ml=_plus(one.volume_ml, other.volume_ml),
        weight_g=_plus(one.weight_g, other.weight_g),
    )


def _plus(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other


def changed(parts: Sequence[MixPart], amended: Sequence[MixPart]) -> tuple[MixPart, ...]:
    """Put amended amounts in the place of those of the same name; KeyError for a new name."""
    by_name = {p.name.casefold(): p for p in amended}
    unknown = by_name.keys() - {p.name.casefold() for p in parts}
    if unknown:
        raise KeyError(by_name[unknown.pop()].name)
    return shares([_amended(p, by_name.get(p.name.casefold())) for p in parts])


def _amended(part: MixPart, by: MixPart | None) -> MixPart:
    if by is None:
        return part
    if part.volume_ml and part.weight_g and by.volume_ml and by.weight_g is None:
        # So much more or less of the same solution.
        grams = part.weight_g * by.volume_ml / part.volume_ml
        return replace(part, volume_ml=by.volume_ml, weight_g=grams)
    return replace(part, parts=by.parts, volume_ml=by.volume_ml, weight_g=by.weight_g)


def ratio_words(parts: Sequence[MixPart]) -> str:
    """Say the shares: `10:1`, `2:1`; empty for fewer than two parts, or weight beside volume."""
    weighed = sum(p.weight_g is not None for p in parts)
    if len(parts) < 2 or 0 < weighed < len(parts):
        return ""
    least = min(p.parts for p in parts)
    return ":".join(f"{_round(p.parts / least):g}" for p in parts)


def _round(share: float) -> float:
    """Take 9.97 for 10: nobody pours more exactly than a fiftieth."""
    return round(share) if isclose(share, round(share), rel_tol=0.02) else round(share, 1)


def is_thinner(part: MixPart) -> bool:
    """Tell whether a part only thins: all of it leaves the film."""
    return part.product is None and not _THINNERS.isdisjoint(part.name.casefold().split())


def flakes_not_weighed(parts: Iterable[MixPart]) -> bool:
    """Tell whether dry flakes were measured by volume or by parts: that says nothing of the cut."""
    return any(p.weight_g is None and _is_flakes(p) for p in parts)


def _is_flakes(part: MixPart) -> bool:
    return not _FLAKES.isdisjoint(_words(part))


def _words(part: MixPart) -> list[str]:
    return part.name.casefold().replace("-", " ").split()


def thinned_pct(parts: Sequence[MixPart]) -> float | None:
    """Return the thinner in per cent of the finish, by volume; None when there is none to tell."""
    thinner = [p for p in parts if is_thinner(p)]
    rest = [p for p in parts if not is_thinner(p)]
    weighed = any(p.weight_g is not None for p in parts)
    if not thinner or not rest or weighed or flakes_not_weighed(parts):
        return None
    return 100 * sum(p.parts for p in thinner) / sum(p.parts for p in rest)


def thinned_solids(solids: Range, parts: Sequence[MixPart]) -> Range | None:
    """Return what stays of a thinned finish, % by volume; None when it is not thinned.

    Solids thinned by p % of their volume fall to solids / (1 + p/100) (volume balance).
    """
    thinned = thinned_pct(parts)
    if thinned is None:
        return None
    by = 1 + thinned / 100
    return Range(solids.low / by, solids.high / by, solids.source, solids.note)


def parts_text(parts: Iterable[MixPart]) -> str:
    """Write the amounts of a mix as they are kept: `flakes:120g; alcohol:1000ml`."""
    return "; ".join(f"{p.name}:{_amount_text(p)}" for p in parts)


def _amount_text(part: MixPart) -> str:
    measured = [(part.volume_ml, "ml"), (part.weight_g, "g")]
    amounts = [f"{value:.7g}{unit}" for value, unit in measured if value is not None]
    return "+".join(amounts) or f"{part.parts:.7g}"


def parts_of_text(text: str) -> tuple[MixPart, ...]:
    """Read what `parts_text` wrote."""
    return shares([_part_of_text(one) for one in text.split("; ")])


def _part_of_text(text: str) -> MixPart:
    name, _, amounts = text.rpartition(":")
    values = {"ml": None, "g": None, "": 1.0} | dict(map(_value, amounts.split("+")))
    return MixPart(name, values[""] or 1.0, None, values["ml"], values["g"])


def _value(amount: str) -> tuple[str, float]:
    unit = next((u for u in ("ml", "g") if amount.endswith(u)), "")
    return unit, float(amount.removesuffix(unit))
