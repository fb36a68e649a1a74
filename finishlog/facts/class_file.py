"""Read one finish class from its file under classes/."""

from __future__ import annotations

from dataclasses import dataclass

from finishlog.core.finishes import (
    FinishClass,
    Limits,
    Mechanism,
    Method,
    RecoatWindow,
    WindowKind,
)
from finishlog.core.stages import Stage
from finishlog.facts.table import Table, figure, limit, read

LIMITS = ("min_c", "max_c", "max_rh_pct", "warm_first_h", "blush_rh_pct", "blush_dew_gap_c")


@dataclass(frozen=True, slots=True)
class ClassFile:
    """A finish class and the other names that people have for it."""

    finish: FinishClass
    aliases: tuple[str, ...]


def read_class(path: str, key: str) -> ClassFile:
    """Read one class; ValueError names file and key of what is wrong in it."""
    table = read(path)
    found = ClassFile(
        finish=FinishClass(
            key=key,
            name=table.text("name"),
            family=table.text("family"),
            mechanism=table.choice("mechanism", Mechanism),
            carrier=table.text("carrier"),
            builds_film=table.flag("builds_film"),
            stages={_stage(table, word): figure(t) for word, t in table.named("stages").items()},
            window=_window(table.table("window")),
            limits=_limits(table.table("limits")),
            methods=table.choices("methods", Method),
            self_heating=table.flag("self_heating"),
            self_heating_source=table.text("self_heating_source"),
            hazards=table.words("hazards"),
            topcoat=table.flag("topcoat"),
            wipe_off_h=figure(table.table("wipe_off_h")) if "wipe_off_h" in table else None,
            coats=table.text("coats"),
            abrade=table.text("abrade"),
            notes=table.words("notes"),
            readings={word: figure(t) for word, t in table.named("readings").items()},
        ),
        aliases=table.words("aliases"),
    )
    table.nothing_else()
    return found


def _stage(table: Table, word: str) -> Stage:
    try:
        return Stage(word)
    except ValueError:
        raise table.bad(f"stages.{word}", "is no stage") from None


def _window(table: Table) -> RecoatWindow:
    kind = table.choice("kind", WindowKind)
    if ("closes" in table) != (kind is WindowKind.CLOSES):
        raise table.bad("closes", "belongs to a window that closes, and to no other")
    found = RecoatWindow(
        kind=kind,
        source=table.text("source"),
        closes=figure(table.table("closes")) if "closes" in table else None,
        note=table.text("note", ""),
    )
    table.nothing_else()
    return found


def _limits(table: Table) -> Limits:
    found = Limits(**{word: limit(table.table(word)) for word in LIMITS if word in table})
    table.nothing_else()
    return found
