"""Read one finish class from its file under classes/."""

from __future__ import annotations

from finishlog.core.finish.classes import (
    Figure,
    FinishClass,
    Limits,
    Mechanism,
    Method,
    Range,
    RecoatWindow,
    WindowKind,
)
from finishlog.core.finish.stages import Stage
from finishlog.facts.find import ClassNames
from finishlog.facts.table import Table, between, figure, limit, read, read_top

LIMITS = ("min_c", "max_c", "max_rh_pct", "warm_first_h", "blush_rh_pct", "blush_dew_gap_c")
RANGES = (
    "shelf_opened_d",
    "spread_m2_per_l",
    "wet_film_um",
    "solids_vol_pct",
    "solids_wt_pct",
    "dry_film_limit_um",
)


def read_class(path: str, key: str) -> FinishClass:
    """Read one class; ValueError names file and key of what is wrong in it."""
    table = read(path)
    found = FinishClass(
        key=key,
        name=table.text("name"),
        aliases=table.words("aliases"),
        family=table.text("family"),
        mechanism=table.choice("mechanism", Mechanism),
        carrier=table.text("carrier"),
        builds_film=table.flag("builds_film"),
        needs_tooth=table.flag("needs_tooth") if "needs_tooth" in table else True,
        stages={_stage(table, word): figure(t) for word, t in table.named("stages").items()},
        window=_window(table.table("window")),
        limits=_limits(table.table("limits")),
        methods=table.choices("methods", Method),
        self_heating=table.flag("self_heating"),
        self_heating_source=table.text("self_heating_source"),
        wrinkles_when_late_source=table.text("wrinkles_when_late_source", "") or None,
        hazards=table.words("hazards"),
        topcoat=table.flag("topcoat"),
        wipe_off_h=_hours(table, "wipe_off_h"),
        coats=table.text("coats"),
        abrade=table.text("abrade"),
        notes=table.words("notes"),
        readings={word: figure(t) for word, t in table.named("readings").items()},
        pot_life_h=_hours(table, "pot_life_h"),
        **_ranges(table),
    )
    table.nothing_else()
    return found


def read_names(path: str, key: str) -> ClassNames:
    """Read what a class is called, and no figure of it."""
    top = read_top(path)
    return ClassNames(key, top.text("name"), top.words("aliases"))


def _stage(table: Table, word: str) -> Stage:
    try:
        return Stage(word)
    except ValueError:
        raise table.bad(f"stages.{word}", "is no stage") from None


def _hours(table: Table, word: str) -> Figure | None:
    return figure(table.table(word)) if word in table else None


def _ranges(table: Table) -> dict[str, Range]:
    return {word: between(table.table(word)) for word in RANGES if word in table}


def _window(table: Table) -> RecoatWindow:
    kind = table.choice("kind", WindowKind)
    if ("closes" in table) != (kind is WindowKind.CLOSES):
        raise table.bad("closes", "belongs to a window that closes, and to no other")
    found = RecoatWindow(
        kind=kind,
        source=table.text("source"),
        closes=_hours(table, "closes"),
        note=table.text("note", ""),
    )
    table.nothing_else()
    return found


def _limits(table: Table) -> Limits:
    found = Limits(**{word: limit(table.table(word)) for word in LIMITS if word in table})
    table.nothing_else()
    return found
