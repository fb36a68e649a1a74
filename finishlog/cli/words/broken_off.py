"""What is said of a coat that was broken off: what lies there, and how it is evened out."""

from __future__ import annotations

from finishlog.cli.words.said import Words, number, text
from finishlog.core.commands import Do
from finishlog.core.findings import Finding
from finishlog.core.log.words import FaultKind

_WET_EDGE = {
    "scuffed": "once it is dry scuff all of it level, the edge first, then coat the whole face",
    "melted": "once it is dry coat the whole face: it melts in; a ridge is scuffed level first",
    "wetted": "finish it before its edge sets, or wipe all of it even; once it is dry the same "
    "again over the whole face wets it",
}
_DRY_EDGE = {
    **_WET_EDGE,
    "scuffed": "scuff all of it level, the edge first, then coat the whole face",
    "melted": "coat the whole face: it melts in; a ridge is scuffed level first",
    "wetted": "the same again over the whole face wets it, and is wiped even; under another coat "
    "its edge shows for good",
}


def _even_it_out(of: Finding) -> str:
    """Say how what was broken off is evened out, and what to type where it was not so."""
    how, act = text(of, "how"), f"{number(of, 'act'):.0f}"
    after = f"finished after all: {Do.AMEND(act, finished=True)}"
    if not text(of, "wet"):
        mark = Do.FAULT("PART", FaultKind.LAP_MARK)
        return f"{_DRY_EDGE[how]}; a mark that stays: {mark}; {after}"
    off = f"take it off while it is wet: {Do.OFF('PART', to='COAT', washed=True)}"
    leave = "" if how == "wetted" else "do not go back into it, it drags: "
    return f"{leave}{_WET_EDGE[how]}; or {off}; {after}"


WORDS = {
    "broken-off": Words(
        lambda f: f"{text(f, 'of')} was broken off: what lies on {text(f, 'covered')} is no coat",
        _even_it_out,
        lambda f: f"{text(f, 'of')} broken off: even it out",
    ),
    "edge-first": Words("it was broken off: scuff its edge level first"),
}
