"""A word that is no part but something else: where it belongs, as a line to type.

`log topcoat case`, `log case topcoat 19:30`, `log case sand P220`, `history 19`, `why topcoat`: the
parts are what stands before, and what this is can be told by its name.
"""

from __future__ import annotations

import re
import shlex
from typing import TYPE_CHECKING

from finishlog.cli.answering.misread import Typed, is_a_time
from finishlog.core.film.layers import ABRADES
from finishlog.core.log.words import Operation
from finishlog.core.shop.things import ThingKind
from finishlog.core.shop.trade_words import is_said, meant
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.cli.answering.run import Run

_GRIT = re.compile(r"P?\d{2,4}", re.IGNORECASE)
_LAST = {"move": "room", "photo": "file"}
_KINDS = {
    ThingKind.PRODUCT: ("product", "a product"),
    ThingKind.ROOM: ("room", "a room"),
    ThingKind.STEPS: ("steps", "a finishing schedule"),
}


def misplaced(run: Run, word: str) -> UsageFault | None:
    """Say what a word is that is no part, and where it goes; None: it may be a part to come."""
    from finishlog.asks.things.called_so import called_so

    if run.parser is None:
        return None
    typed = Typed(run.typed, run.parser.find_root().command, run.parser)
    said, _ = typed.parsed()
    words = next((each for each in said.values() if isinstance(each, list | tuple)), ())
    if word not in words:
        return None
    at = words.index(word)
    before, after = list(words[:at]), list(words[at + 1 :])
    options = [*typed.options_of(said)]
    kinds = called_so(run.context, word)
    if is_a_time(word):
        return _a_time(typed, [w for w in before if w != "at"], " ".join((word, *after)), options)
    if typed.name == "log" and (ThingKind.PRODUCT in kinds or is_said(Operation, word)):
        return _what_is_not_last(run, typed, before, word, after)
    if word.isdigit():
        of_act = [*before, "--act", word] if "--act" in typed.options else None
        line = typed.line(of_act) if of_act else f"finishlog history --act {word}"
        return UsageFault(f"{word!r} is no part", line)
    if "--to" in typed.options and (word == "bare" or ThingKind.PRODUCT in kinds):
        return UsageFault(f"{word!r} is no part", typed.line([*before, "--to", word, *options]))
    if after and typed.name in _LAST and (ThingKind.ROOM in kinds or "." in word):
        line = typed.line([*before, *after, word, *options])
        return UsageFault(f"the {_LAST[typed.name]} stands last", line)
    for kind, (command, what) in _KINDS.items():
        if kind in kinds:
            shown = shlex.join(["finishlog", command, "show", word])
            return UsageFault(f"{word!r} is {what}, no part", shown)
    return None


def _a_time(typed: Typed, before: list[str], when: str, options: list[str]) -> UsageFault:
    name = typed.first_of("--at", "--due")
    if name is None:
        return UsageFault(f"{when!r} is a time, no part", typed.line([*before, *options]))
    line = typed.line([*before, name, when, *options])
    return UsageFault(f"{when!r} is a time, and goes with {name}", line)


def _what_is_not_last(
    run: Run, typed: Typed, before: list[str], word: str, after: list[str]
) -> UsageFault:
    """Say where a product or a kind of work belongs that has words behind it."""
    from finishlog.asks.things.called_so import called_so

    last = after[-1]
    if before and any(map(is_a_time, after)):
        return _a_time(typed, [*before, word], " ".join(w for w in after if w != "at"), [])
    if before and set(meant(Operation, word)) & ABRADES and _GRIT.fullmatch(last):
        line = typed.line([*before, word, "--grit", last.upper()])
        return UsageFault(f"{last!r} goes with --grit", line)
    if before and (is_said(Operation, last) or ThingKind.PRODUCT in called_so(run.context, last)):
        then = typed.line([*before, last])
        return UsageFault(
            f"{word!r} and {last!r} are two things", f"{typed.line([*before, word])}, then {then}"
        )
    return UsageFault(f"{word!r} stands last", typed.line([*before, *after, word]))
