"""What the rules about the wood say: its kind, its water, what was put into it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta

from finishlog.cli.words.said import Words, each_of, length, measured, number, text, wanted
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import Found, Operation, Stripping
from finishlog.core.measure.quantities import weighed
from finishlog.core.rules.wood.weighed import Trend

# Nearer readings stand still: a meter tells no more (common practice).
_STILL = 0.5


def _on_wood(of: Finding) -> str:
    wood = text(of, "wood")
    return f"on {wood}: {text(of, 'reason')}" if wood else text(of, "reason")


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
    went = f"; {_went(of)}" if of.value("over") is not None else ""
    return f"wood at {moisture:.3g} % moisture{when}: {', '.join(reasons)}{went}"


def _went(of: Finding) -> str:
    """Say how two readings follow each other."""
    change, over = number(of, "change"), length_words(length(of, "over"))
    if abs(change) < _STILL:
        return f"it stood still for {over}"
    return f"it {'fell' if change < 0 else 'rose'} {abs(change):.1f} points in {over}"


def _waits(of: Finding) -> str:
    least = f" to {of.wanted.value:g} %" if of.wanted else ""
    return f"the wood to dry{least}: {_too_wet(of)}"


def _moves(of: Finding) -> str:
    moves = of.value("moves")
    return "" if moves is None else f", {number(of, 'moves'):.1f} % of a flat-sawn width"


def _other_air(of: Finding) -> str:
    was, will = number(of, "was"), number(of, "will")
    return (
        f"{text(of, 'room')} makes wood {was:.1f} %, this room {will:.1f} %: "
        f"{abs(will - was):.1f} points to go{_moves(of)}"
    )


def _since_when(of: Finding) -> str:
    """Say over how long, as people count it: 3 weeks, 10 days."""
    days = round(length(of, "over") / timedelta(days=1))
    if days >= 14 and days % 7 == 0:
        return f"{days // 7} weeks"
    return f"{days} day{'' if days == 1 else 's'}"


def _grams(of: Finding) -> str:
    least, most = weighed(number(of, "least")), weighed(number(of, "most"))
    return most if least == most else f"{least} to {most}"


def _weight_falls(of: Finding) -> str:
    days = number(of, "days")
    said = f"it lost {number(of, 'fell'):.1f} % in all, last {weighed(number(of, 'last'))}"
    return f"{said}, weighed {days:.0f} d ago" if days else said


def _weight_told(of: Finding) -> str:
    trend = Trend(text(of, "trend"))
    if trend is Trend.STEADY:
        return f"weight stable: {_grams(of)} over {_since_when(of)}, it follows the room's air"
    if trend is Trend.RISES:
        return f"weight up to {weighed(number(of, 'last'))}: it takes up damp from the air"
    over = length(of, "over") >= timedelta(days=1)
    return f"weighed {_grams(of)}{f' over {_since_when(of)}' if over else ''}"


_PREPARED: Mapping[str, str] = {
    Operation.SAND: "sanded",
    Operation.SCUFF: "scuffed",
    Operation.DENIB: "denibbed",
    Operation.LEVEL: "levelled",
    Operation.SHAPE: "cut",
    Operation.SOLVENT_WIPE: "wiped with solvent",
    Stripping.STRIP: "stripped",
    Stripping.SAND_THROUGH: "sanded off",
    Stripping.SCRAPE: "scraped off",
    Stripping.WASH: "washed off",
}


def prepared_words(deed: str, grit: str = "") -> str:
    """Say how bare wood was prepared: `sanded P150`."""
    return f"{_PREPARED[deed]}{f' {grit}' if grit else ''}"


def _prepared(of: Finding) -> str:
    return prepared_words(text(of, "deed"))


WORDS = {
    "wood": Words(_on_wood, _remedy),
    "oily-wood-below": Words(
        lambda f: f"{text(f, 'of')} lies {_on_wood(f)[:1].lower()}{_on_wood(f)[1:]}",
        "press a thumbnail into it, or sand a spot: "
        f"{Do.CHECK('PART', Found.NO_PRINT)} or {Do.CHECK('PART', Found.POWDER)}; if it stays "
        "tacky, wash it off and lay a barrier first",
        lambda f: f"{text(f, 'of')} on {text(f, 'wood')} may stay soft",
    ),
    "iron": Words(_on_wood, _remedy),
    "iron-to-come": Words(
        lambda f: f"{text(f, 'over')} comes next: {_on_wood(f)}",
        _remedy,
        lambda f: f"no steel wool before {text(f, 'over')}",
    ),
    "no-steel-wool": Words(
        "scuff with a synthetic pad or paper, no steel wool: its iron rusts and turns dark"
    ),
    "on-the-wood": Words(_on_wood, _remedy),
    "not-solvent-wiped": Words(
        "oily wood: not wiped with solvent",
        "wipe it right before the coat, and log it: solvent-wipe",
    ),
    "oil-is-back": Words(
        lambda f: (
            f"wiped with solvent {length_words(length(f, 'ago'))} ago, good for {wanted(f)}: the "
            "oil is back"
        ),
        "wipe it again right before the coat, and log it: solvent-wipe",
    ),
    "dust-of-bleach": Words(
        _bleach_dust,
        f"rinse with plenty of water, say so ({Do.LOG('PART', Operation.RINSE)}) and let it dry; "
        "if it was sanded dry: out of the dust, rinse eyes and skin, ask a doctor",
    ),
    "bleach-shut-in": Words(
        lambda f: (
            f"{text(f, 'of')} lies under the film, and no rinse is on record: what is left of it "
            "may bloom, spoil its colour or let it go"
        ),
        f"scratch a hidden spot; if it holds: {Do.CHECK('PART', Found.HOLDS)}; if it does not, "
        "take it off and rinse the wood",
        lambda f: f"{text(f, 'of')} under the film was not rinsed",
    ),
    "bleach-not-rinsed": Words(
        lambda f: (
            f"{text(f, 'of')} is in the wood, and no rinse is on record: what is left of it spoils "
            "the finish, and its hours count from the rinse"
        ),
        f"rinse it as its sheet says, let it dry, log it: {Do.LOG('PART', 'rinse')}; if it was "
        "rinsed: log it with its time",
        lambda f: f"no rinse on record after {text(f, 'of')}",
        "the rinse",
    ),
    "bleached-skin": Words(
        lambda f: (
            f"sanded with {text(f, 'coarse')} since it was bleached: that goes through the skin "
            "that is light, and dark wood shows"
            if text(f, "coarse")
            else "bleached wood is light a skin deep"
        ),
        lambda f: (
            "look for dark patches in a good light; bleach again before any colour or finish"
            if text(f, "coarse")
            else f"a pass or two by hand, P{number(f, 'grit'):g} or finer"
        ),
        "the bleached skin may be sanded through",
    ),
    "bleach-over-bleach": Words(
        lambda f: f"{text(f, 'of')} is still in the wood: no rinse is on record since",
        "rinse with plenty of water and dry a day or more between the two",
    ),
    "wood-too-wet": Words(
        _too_wet,
        "it would dry on under the finish: let it stand in the room, air on all sides, and "
        f"measure again: {Do.MOISTURE('PART', '10%')}",
        waits=_waits,
    ),
    "weight-falls": Words(
        lambda f: f"still losing weight: {_weight_falls(f)}",
        f"no turning, glue or finish yet: weigh it again in a week: {Do.WEIGH('PART', '640g')}",
        "still losing weight",
        lambda f: f"the wood to stop losing weight: {_weight_falls(f)}",
    ),
    "weight-told": Words(
        _weight_told,
        lambda f: (
            f"weights that stay alike for {number(f, 'days'):g} d tell that it is dry: weigh it "
            "again in a week"
            if Trend(text(f, "trend")) is Trend.SOON
            else ""
        ),
    ),
    "moisture-trend": Words(lambda f: f"wood at {measured(f)} moisture: {_went(f)}"),
    "moisture-old": Words(
        lambda f: (
            f"measured at {measured(f)} {number(f, 'days'):.0f} d ago; this air makes it "
            f"{number(f, 'settles'):.1f} %"
        ),
        f"measure again: {Do.MOISTURE('PART', '10%')}",
    ),
    "wood-too-dry": Words(
        lambda f: (
            f"wood at {measured(f)} moisture, and this air makes it {number(f, 'settles'):.1f} %: "
            f"it will swell{_moves(f)}"
        ),
        "leave panels room to move",
    ),
    "moved-in-store": Words(
        lambda f: (
            f"{'shrunk' if text(f, 'shrank') else 'swollen'} since it was last worked, "
            f"{number(f, 'days'):.0f} d ago: its air ({' and '.join(each_of(f, 'rooms'))}) took it "
            f"from {number(f, 'was'):.1f} to {number(f, 'will'):.1f} %{_moves(f)}"
        ),
        lambda f: (
            (
                "look for bare tongues at panels, open joints, a cupped top"
                if text(f, "shrank")
                else "look for tight panels, doors and drawers that stick, a cupped top"
            )
            + f" ({Do.CHECK('PART', 'flat')}); measure it before the next coat or glue: "
            f"{Do.MOISTURE('PART', '8%')}"
        ),
        lambda f: (
            f"its air took the wood from {number(f, 'was'):.1f} to {number(f, 'will'):.1f} %: "
            "measure it"
        ),
    ),
    "from-other-air": Words(
        _other_air,
        lambda f: (
            f"let it stand here {number(f, 'days'):g} d, air on all sides, or measure it: "
            f"{Do.MOISTURE('PART', '10%')}"
        ),
    ),
    "look-first": Words(
        "colour shows what bare wood hides, and no look at it is on record",
        "wipe it with spirit under a light from the side (glue, scratches, snipe?): "
        f"{Do.LOOK('PART', 'clean')}, or {Do.LOOK('PART', 'glue', where='left edge')}",
        "look it over first",
    ),
    "sanded-long-ago": Words(
        lambda f: f"{_prepared(f)} {measured(f)} ago: before this coat that holds {wanted(f)}",
        "go over it lightly by hand with the last paper, wipe the dust off, log it: sand",
        lambda f: f"{_prepared(f)} too long ago: {measured(f)}, it holds {wanted(f)}",
    ),
    "glue-face-old": Words(
        lambda f: (
            f"{text(f, 'face')} was last worked {measured(f)} ago: for glue that holds {wanted(f)}"
            + (" on oily wood" if text(f, "oily") else "")
        ),
        lambda f: (
            "plane, scrape or sand it lightly, wipe it"
            + (" with solvent" if text(f, "oily") else "")
            + ", and glue at once: "
            f"{Do.LOG('PART', 'sand', face='FACE')}"
        ),
        lambda f: f"{text(f, 'face')} worked {measured(f)} ago: freshen it for the glue",
    ),
    "grain-raised": Words(
        lambda f: f"the grain is raised ({text(f, 'by')}), and no sanding is on record since",
        "once it is dry, cut the fuzz lightly with the last paper, and log it: sand",
        "raised grain",
    ),
    "last-grit": Words(
        lambda f: (
            f"last sanded with P{number(f, 'grit'):g}; usual before this coat "
            f"P{number(f, 'low'):g} to P{number(f, 'high'):g}: "
            + ("it takes colour, or grips, less" if text(f, "finer") else "its scratches may show")
        )
    ),
    "wood-wetted": Words("the wood is wet", waits="the wood to dry"),
}
