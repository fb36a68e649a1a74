"""What lies beside a zone and holds it up: other faces, wet films, joints, edges, glue-ups."""

from __future__ import annotations

from collections.abc import Mapping

from finishlog.cli.words.said import (
    CAUSE,
    REMEDY,
    Words,
    each_of,
    found_so,
    label_hours,
    measured,
    number,
    text,
    wanted,
)
from finishlog.core.commands import Do
from finishlog.core.film.old_finish import name_of
from finishlog.core.findings import NO_FLAME, Finding
from finishlog.core.log.words import FaultKind, Found, Keeping, Operation
from finishlog.core.shop.things import OldFinish
from finishlog.core.zone.kept import ASIDE

_KEEP_OFF = f"or keep this coat off them: {Do.LOG.option(no_edges=True)}"


def _face(of: Finding) -> str:
    doubt = text(of, "doubt")
    return f"face {text(of, 'name')}" + (f", which {doubt}," if doubt else "")


def _missing(of: Finding) -> str:
    pairs = zip(each_of(of, "names"), each_of(of, "counts"), strict=True)
    return ", ".join(
        f"{count} more of {name}" if count != "0" else f"{name} to be glued up"
        for name, count in pairs
    )


_PAST: Mapping[str, str] = {
    Operation.STACK: "stacked",
    Operation.PACK: "packed",
    Operation.STORE: "stored",
    ASIDE: "set aside",
}
_HOW: Mapping[str, str] = {
    Keeping.STICKERS: "on sticks",
    Keeping.STACKED: "one on another",
    Keeping.WRAPPED: "wrapped",
    Keeping.SHUT_IN: "shut in",
    Keeping.STANDING: "standing free",
    Keeping.FLAT: "lying flat",
}
# What the deed says by itself.
_PLAIN = {(Operation.STACK.value, Keeping.STACKED), (Operation.PACK.value, Keeping.WRAPPED)}


def kept_words(deed: str, how: str | None) -> str:
    """Say how a piece is kept: `stacked`, `stacked on sticks`, `stored wrapped`."""
    plain = how is None or (deed, how) in _PLAIN
    return _PAST[deed] if plain else f"{_PAST[deed]} {_HOW[how or '']}"


def _kept(of: Finding) -> str:
    return kept_words(text(of, "deed"), text(of, "how") or None)


WORDS = {
    "other-face": Words(
        lambda f: f"{_face(f)} must bear turning first{label_hours(f)}",
        short=lambda f: f"{_face(f)} must bear turning first",
        waits=lambda f: _face(f).rstrip(","),
    ),
    "failed-beside": Words(
        lambda f: (
            f"face {text(f, 'face')} is of the same film, and a {text(f, 'test')} check found "
            f"{found_so(f)}"
        ),
        lambda f: f"test this one too, and log it: {Do.CHECK('PART', text(f, 'passes'))}",
        lambda f: f"face {text(f, 'face')} of the same film: {text(f, 'found')}",
    ),
    "dust-on-wet": Words(
        lambda f: f"dust would settle in the wet film of {text(f, 'name')} to be dust-free",
        waits=lambda f: f"{text(f, 'name')} to be dust-free",
    ),
    "in-cauls": Words(lambda f: f"in cauls: {text(f, 'glue')}", waits="the joint"),
    "no-stress-yet": Words(lambda f: f"{text(f, 'glue')} bears no stress yet", waits="the joint"),
    "joint-swollen": Words(
        "the wood is still swollen by the glue: a joint levelled now sinks", waits="the joint"
    ),
    "cold-joint": Words(
        lambda f: (
            f"the joint met {measured(f, 0)} while it set; {text(f, 'glue')} wants {wanted(f)}"
        ),
        "try whether it holds before anything is put on it",
    ),
    "glued-on-finish": Words(
        lambda f: (
            f"glued up with {' and '.join(each_of(f, 'coats'))} on a glue face: the joint may let "
            "go at any time"
        ),
        lambda f: (
            "best part it and glue bare wood; else try it by hand. It holds: "
            f"{Do.CHECK('PART', Found.HOLDS, face='FACE')}; it opens: "
            f"{Do.FAULT('PART', FaultKind.OPEN_JOINT)}"
        ),
        lambda f: f"{' and '.join(each_of(f, 'coats'))} on a glue face: does the joint hold?",
    ),
    "glue-too-cold": Words(
        lambda f: f"{text(f, 'glue')} below {wanted(f)} does not hold",
        f"warm the room, the wood and the glue first: {NO_FLAME}",
    ),
    "glue-wants-warm-wood": Words(
        lambda f: f"{text(f, 'glue')} wants wood of {wanted(f)}",
        f"leave the clamps on longer, or warm the wood: {NO_FLAME}",
    ),
    "edge-holds-up": Words(
        lambda f: f"what goes on the face runs over {text(f, 'edge')} too",
        _KEEP_OFF,
        lambda f: text(f, "edge"),
        lambda f: text(f, "edge"),
    ),
    "edge-asks": Words(lambda f: text(f, "edge")),
    "edge-to-scuff": Words(lambda f: f"{text(f, 'edge')} must be scuffed first", _KEEP_OFF),
    "goes-with-faces": Words("goes with its faces"),
    "unpack-first": Words(
        lambda f: f"{_kept(f)} for {measured(f)}, in {' and '.join(each_of(f, 'rooms'))}",
        lambda f: (
            "take it out, let it stand free"
            + (", and look for prints first" if f.value("film") else "")
        ),
    ),
    "kept-too-young": Words(
        lambda f: (
            f"{_kept(f)} before {text(f, 'of')} could bear it, {measured(f)} after it"
            + (f", {wanted(f)} by its label" if f.wanted else "")
            + ": it may print or stick"
        ),
        f"look at it, and log what you find: {Do.CHECK('PART', 'no-print')}",
    ),
    "look-again": Words(
        lambda f: (
            f"{_kept(f)}, and not looked at for {measured(f)}, every {wanted(f)}: "
            f"{text(f, 'reason')}"
        ),
        lambda f: f"{text(f, 'remedy')}; log what you find: {Do.CHECK('PART', text(f, 'found'))}",
        lambda f: f"{_kept(f)}: look at it",
    ),
    "no-air": Words(
        lambda f: (
            f"{_kept(f)} for {measured(f)} while {text(f, 'of')} was young: it hardens by moving "
            "air, and its hours there are the clock's alone"
        ),
        f"let air move round it, and try it: {Do.CHECK('PART', 'no-print')}",
        lambda f: f"{text(f, 'of')} had no moving air for {measured(f)}",
    ),
    "inside-closed": Words(
        lambda f: f"{text(f, 'of')} smells for months where no air moves: inside drawers and cases",
        "shellac, wax or bare wood there",
    ),
    "film-in-runner": Words(
        lambda f: (
            f"it slides: a film of {text(f, 'of')} drags in its runner, wears to dust and sticks "
            "when it is warm"
        ),
        "leave it bare and wax it, or one thin coat of shellac under the wax",
        "film where it slides",
    ),
    "shuts-while-soft": Words(
        lambda f: (
            f"it {text(f, 'meets')} against another face: {text(f, 'of')} that is dry and not yet "
            "hard sticks to it, for weeks"
        ),
        "leave it open, or felt, paper or a little wax between, until it is fully hard",
        lambda f: f"it {text(f, 'meets')} against another face, and is not fully hard",
    ),
    "tape-left": Words(
        lambda f: f"tape has been on for {measured(f)}; it comes off whole within {wanted(f)}",
        f"take it off, slowly and flat over itself, and log it: {Do.LOG('PART', 'untape')}",
    ),
    "tape-on-young-film": Words(
        lambda f: f"the tape went over {text(f, 'of')} before that could bear it",
        "pull it slowly, away from the edge, and look for prints",
    ),
    "moisture-apart": Words(
        lambda f: (
            f"{text(f, 'wetter')} at {number(f, 'wet'):.3g} %, {text(f, 'drier')} at "
            f"{number(f, 'dry'):.3g} %: {measured(f)} apart, and the joint bears {wanted(f)}"
        ),
        "let both stand in one room, and measure again before the glue",
    ),
    "members-missing": Words(
        lambda f: f"not all members exist: {_missing(f)}",
        short="not all members exist",
        waits=_missing,
    ),
    "members-not-ready": Words(
        "members are not ready for cauls", REMEDY, waits=CAUSE, cause="{said}: {long}"
    ),
    "members-to-test": Words(
        "test first what goes into cauls", REMEDY, waits=CAUSE, cause="{said}: {long}"
    ),
    "member-aside": Words("set aside"),
    "member-step": Words(lambda f: f"{text(f, 'step')} still to come"),
    "member-taped": Words("tape to come off"),
    "clamp-by-label": Words("clamp by label time only: the air was not measured"),
    "members-ready": Words("every member may be clamped"),
    "old-on-joint": Words(
        lambda f: (
            f"{name_of(OldFinish(text(f, 'old')))} may lie on its glue face: glue needs bare wood"
        ),
        f"scrape it back to bare wood, and log it: {Do.OFF('PART', face='FACE', scraped=True)}",
        "an old finish may lie on its glue face",
    ),
    "dirty-joint": Words(
        "finish on a glue face: glue needs bare wood",
        "scrape it back to bare wood",
        bars="finish on a glue face",
    ),
}
