"""What the rules about the wood say: its kind, its water, what was put into it."""

from __future__ import annotations

from finishlog.cli.words.said import Words, each_of, length, number, text
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.log.shown_times import length_words


def _on_wood(of: Finding) -> str:
    return f"on {text(of, 'wood')}: {text(of, 'reason')}"


def _remedy(of: Finding) -> str:
    return text(of, "remedy")


def _bleach_dust(of: Finding) -> str:
    names = each_of(of, "names")
    are = "is" if len(names) == 1 else "are"
    return (
        f"no sanding: {' and '.join(names)} {are} in the wood, no rinse is on record, and the dust "
        "is poison"
    )


def _too_wet(of: Finding) -> str:
    assert of.measured is not None
    moisture, days = of.measured.value, int(number(of, "days"))
    reasons = [f"over the {of.wanted.value:g} % to finish at"] if of.wanted else []
    if of.value("settles") is not None:
        settles = number(of, "settles")
        reasons.append(f"{moisture - settles:.1f} points over the {settles:.1f} % of this air")
    when = f", measured {days} d ago" if days > 0 else ""
    return f"wood at {moisture:.3g} % moisture{when}: {', '.join(reasons)}"


WORDS = {
    "wood": Words(_on_wood, _remedy),
    "iron": Words(_on_wood, _remedy),
    "not-solvent-wiped": Words(
        "oily wood: not wiped with solvent",
        "wipe it right before the coat, and log it: solvent-wipe",
    ),
    "oil-is-back": Words(
        lambda f: f"wiped with solvent {length_words(length(f, 'ago'))} ago: the oil is back",
        "wipe it again right before the coat, and log it: solvent-wipe",
    ),
    "dust-of-bleach": Words(
        _bleach_dust,
        "rinse with plenty of water, let it dry, log it: rinse; was it sanded dry: out of the "
        "dust, rinse eyes and skin, ask a doctor",
    ),
    "bleach-over-bleach": Words(
        lambda f: f"{text(f, 'of')} is still in the wood: no rinse is on record since",
        "rinse with plenty of water and dry a day or more between two bleaches",
    ),
    "wood-too-wet": Words(
        _too_wet,
        "it would dry on under the finish: let it stand in the room, air on all sides, and "
        f"measure again: {Do.MOISTURE('PART', '10%')}",
    ),
    "wood-wetted": Words("the wood is wet"),
}
