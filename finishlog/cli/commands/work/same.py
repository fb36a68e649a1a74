"""One line for many pieces: what another one got last, on these."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import Asked, settled
from finishlog.cli.answering.run import Run
from finishlog.cli.terminal.talk import ask, at_a_terminal
from finishlog.core.log.when import When
from finishlog.core.shop.same_as import SameAs
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.acts.answers.logged import ToLog


def log_the_same(
    here: Run, typed: SameAs, said: ToLog, *, at_told: bool, verbose: bool
) -> Answered:
    """Settle names and how far it was sanded back, ask when, and record it in one act.

    `said` may say when, and a note; how it went on the other one brings.
    """
    from finishlog.acts.answers.logged import Logged, ToLog
    from finishlog.acts.film.same_as import log_same, parts_meant, same_meant
    from finishlog.cli.pages.evening.log_page import log_page

    if said != ToLog(said.words, said.at, note=said.note):
        raise UsageFault(
            f"the same as {typed.like} brings how it went on with it",
            "log it so, then finishlog amend ACT for what was otherwise",
        )

    def settled_parts(words: tuple[str, ...]) -> SameAs:
        parts_meant(here.context, words)
        return typed.of_parts(words)

    meant = settled(here, typed.parts, settled_parts)
    how = Asked({HOW: meant.instead})

    then: When | None = None

    def read(words: tuple[str, ...]) -> SameAs:
        return replace(meant, like=words[0], but=words[1:])

    def look_first(words: tuple[str, ...]) -> SameAs:
        nonlocal then
        then = same_meant(here.context, read(words))
        return read(words)

    def attempt(words: tuple[str, ...]) -> Logged:
        far = how.options[HOW] or ""
        return log_same(
            here.context,
            read(words),
            at=when,
            note=said.note,
            how="" if far == meant.instead else far,
            sure=how.sure,
        )

    meant = settled(here, (meant.like, *meant.but), look_first)
    when = said.at if at_told else _asked_when(here, then)
    answer = settled(here, (meant.like, *meant.but), attempt, asked=how)
    return Answered(answer, lambda: log_page(answer, here.clock, verbose=verbose))


HOW = "how far"


def _asked_when(here: Run, then: When | None) -> When | None:
    """Ask when it was; None: nobody says, and it is some time since then."""
    if then is None or not at_a_terminal():
        return None
    since = here.clock.happened(then)
    said = ask(f"When? {since} was the other; 14:30 to 15:30, or Enter: some time since")
    return here.moment(said) if said else None
