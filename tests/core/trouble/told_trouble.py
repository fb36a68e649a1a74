"""A story of trouble in one line: a sick part, a sound one beside it, and what went wrong.

`cherry sick and cherry fine; both: shellac-2lb 08:00; fine: check dry +1d; fault blush`

The language is that of `tests/stories/telling`. Beside it: `both:` happens to either part, the
sound one two minutes later; `air 45F 80%` is read in °F; `attic 45F 80%` is a room that is read
before and after too, once a day, as the shop is; `with:gun1` is what a coat went on with; `clean
gun1`. A story ends with what was found on the first part.
"""

from __future__ import annotations

from functools import cache

from msgspec.structs import replace

from finishlog.core.log.entries import Check, Cleaned, Coat
from finishlog.core.published.fault_kinds import Evidence
from finishlog.core.trouble.causes import looked_into
from finishlog.core.trouble.suspect import Suspect
from tests.shop_of import FACTS
from tests.stories.telling import Clause, Teller

_SOON = 2 / 60
# So long before and after it another room is read.
_BEFORE_H = 48.0


def _celsius(word: str) -> str:
    return f"{(float(word[:-1]) - 32) / 1.8:.4f}C" if word[-1:] == "F" else word


class TellerOfTrouble(Teller):
    """Reads one line."""

    reads_every_h = 24.0
    attics: tuple[float, float, float] | None = None

    def _happens(self, clause: str) -> None:
        words = self._at(clause.split())
        if words[0] == "both:":
            for n, name in enumerate(self.parts):
                self.hour += _SOON if n else 0.0
                super()._happens(" ".join((f"{name}:", *words[1:])))
                # The clause moves the clock on where it has no time of its own.
                self.hour -= 5 / 60
            return
        hour = self.hour
        super()._happens(" ".join(words))
        self.hour = hour

    def _coat(self, class_key: str, told: Clause) -> None:
        tools = [w.removeprefix("with:") for w in told.more if w.startswith("with:")]
        notes = [w.removeprefix("note:") for w in told.more if w.startswith("note:")]
        rest = [w for w in told.more if not w.startswith(("with:", "note:"))]
        super()._coat(class_key, Clause(told.on, told.face, rest))
        made = self.story.entries[-1]
        assert isinstance(made, Coat)
        words = " ".join(notes).replace("-", " ")
        self.story.entries[-1] = replace(made, tool=",".join(tools), note=words)

    def _told_clean(self, told: Clause) -> None:
        self.story._happened(Cleaned(**self.story._head(self.hour), tool=told.word))

    def _told_air(self, told: Clause) -> None:
        super()._told_air(Clause(told.on, told.face, [*map(_celsius, told.more)]))

    def _told_attic(self, told: Clause) -> None:
        self.attic = self.attic or self.story.another_room(coldest_night_c=60.0)
        self.attics = (*Clause(told.on, told.face, [*map(_celsius, told.more)]).air, self.hour)

    def _read_on(self) -> None:
        super()._read_on()
        if self.attics:
            celsius, rh, since = self.attics
            hour = since - _BEFORE_H
            while hour <= self.hour + _BEFORE_H:
                self.story.read(hour, celsius, rh, self.attic)
                hour += self.reads_every_h


def told(line: str) -> TellerOfTrouble:
    """Tell it all."""
    teller = TellerOfTrouble(line)
    for clause in teller.clauses:
        teller._happens(clause)
    teller.hour += 1
    teller._read_on()
    return teller


@cache
def suspects(line: str) -> tuple[Suspect, ...]:
    """Return the causes of what was found last on the first part, the likeliest first."""
    teller = told(line)
    of = teller.story.entries[: len(teller.story.entries)]
    zones, log = teller.story.look(teller.hour).zones, teller.story.log(teller.hour)
    last = next(e for e in reversed(of) if getattr(e, "what", None) or isinstance(e, Check))
    (state, *_) = [z for z in zones if z.target in last.targets]
    found = next((f for f in state.faults if f.fault.id == last.id), None)
    if found is None:
        assert isinstance(last, Check), f"nothing of {last!r} stands"
        return looked_into(last, state, log, zones, FACTS)[0]
    return looked_into(found, state, log, zones, FACTS)[0]


def rank(line: str, true: Evidence) -> int | None:
    """Return how many causes come before the true one; None: it is struck out."""
    found = [each.cause.evidence for each in suspects(line)]
    return found.index(true) if true in found else None
