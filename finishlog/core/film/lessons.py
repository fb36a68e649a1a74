"""What this shop learnt of a coat on what lies right under it, on a wood: how finishes came out.

A finish is told by its last review, or by a fault that still stands or stood when it was taken off.
A named fault blames what its kind says (`Blames` in facts/data); a failed review without one blames
all that lies on one another in the finish. What an accident explains blames nothing.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import datetime, tzinfo
from typing import ClassVar, NamedTuple

from msgspec import Struct, field

from finishlog.core.film.attempts import what_stays
from finishlog.core.film.faults import StandingFault, puts_colour_back, standing_faults
from finishlog.core.film.old_finish import still_on
from finishlog.core.finish.overcoat import OvercoatAnswer, rule_for
from finishlog.core.log.entries import AnyEntry, Check, Coat, Fault, Review, Stripped
from finishlog.core.log.words import SOFT, Found, Outcome, Test
from finishlog.core.published.facts import Facts
from finishlog.core.published.fault_kinds import Blames
from finishlog.core.shop.things import OldFinish


class Finished(Struct, frozen=True):
    """One zone, and all that reached it in the order of the work."""

    wood: str | None
    is_board: bool
    old_finish: OldFinish | None
    entries: Sequence[AnyEntry]


class Put(NamedTuple):
    """A product on a zone, by class and id."""

    of: str
    product: int | None


class Pair(NamedTuple):
    """A coat on what lies right under it (None: the bare wood), on a wood (empty: not told)."""

    under: Put | None
    over: Put
    wood: str

    @property
    def classes(self) -> tuple[str, str, str]:
        """The pair by its classes."""
        return self.under.of if self.under else "", self.over.of, self.wood


class CameOut(Struct, frozen=True):
    """How one finish came out, as far as one pair in it tells.

    `names`: what lay under, what went over, and the wood, as they were called then; `film`: all of
    it. `what`: the faults, or what a check found; none: the review alone says it, of the whole.
    `quote`: the person's words. `acts`: the fault, the check, the review and the taking off.
    """

    pair: Pair
    names: tuple[str, str, str]
    film: tuple[str, ...]
    outcome: Outcome
    when: datetime
    acts: tuple[int, ...]
    what: tuple[str, ...] = ()
    quote: str = ""
    # What is published of such a pair where it should not be: what to do instead.
    instead: str = ""
    is_off: bool = False
    on_board: bool = False


class Lessons(Struct, frozen=True):
    """How finishes came out here, by the classes of a pair and its wood, oldest first.

    `are_all`: every finish that was spoken of is among them, so that they may be counted.
    """

    none: ClassVar[Lessons]
    by_classes: Mapping[tuple[str, str, str], Sequence[CameOut]] = field(default_factory=dict)
    are_all: bool = True

    @classmethod
    def drawn_from(cls, finishes: Iterable[CameOut], *, are_all: bool = True) -> Lessons:
        """Sort how finishes came out by what is asked after."""
        by_classes: dict[tuple[str, str, str], list[CameOut]] = defaultdict(list)
        for each in sorted(finishes, key=lambda came_out: came_out.when):
            by_classes[each.pair.classes].append(each)
        return cls(by_classes, are_all)

    def of(self, pair: Pair, by: datetime) -> tuple[CameOut, ...]:
        """Return what was known of a pair by a moment.

        Of the same products where there is anything of them, else of their classes.
        """
        alike = [c for c in self.by_classes.get(pair.classes, ()) if c.when <= by]
        return tuple([c for c in alike if c.pair == pair] or alike)

    @property
    def woods(self) -> tuple[str, ...]:
        """Return the woods that it tells of, by their keys."""
        return tuple(sorted({wood for _, _, wood in self.by_classes}))


Lessons.none = Lessons()


def how_they_came_out(
    finished: Iterable[Finished], facts: Facts, zone: tzinfo
) -> tuple[CameOut, ...]:
    """Tell how finishes came out; zones of which one thing was said are one.

    `zone`: where the days are.
    """
    alike = {(of.wood, tuple(e.id for e in of.entries)): of for of in finished}
    told = (each for of in alike.values() for each in _of_one(of, facts, zone))
    return tuple(dict.fromkeys(told))


def _of_one(of: Finished, facts: Facts, zone: tzinfo) -> Iterator[CameOut]:
    """Yield how each finish of a zone came out: those that were taken off, and what is on it."""
    ends = [n for n, entry in enumerate(of.entries) if isinstance(entry, Stripped)]
    for end in (*ends, len(of.entries)):
        entries = of.entries[:end]
        off = of.entries[end : end + 1]
        film = _Film(of, entries, facts)
        told = _told(film, entries, off[0] if off else None, facts)
        if told is not None:
            yield from film.came_out(told, off[0] if off else None, zone)


class _Told(Struct, frozen=True):
    """What tells of a finish, and which of its coats it is about."""

    outcome: Outcome
    coats: Collection[int]
    by: tuple[AnyEntry, ...]
    what: tuple[str, ...] = ()
    quote: str = ""


class _Film:
    """The coats on a zone at a moment, each on what is right under it."""

    def __init__(self, of: Finished, entries: Sequence[AnyEntry], facts: Facts) -> None:
        self.of, self.facts = of, facts
        self.coats = [e for e in what_stays(entries) if isinstance(e, Coat)]
        if any(isinstance(e, Fault) for e in entries):
            self.coats = [c for c in self.coats if not puts_colour_back(c, entries, facts)]
        self.on_wood = still_on(of.old_finish, entries) is None
        self.wood = facts.wood_key(of.wood)

    def place(self, coat: Coat | None) -> int | None:
        """Return which of the coats it is; None: none of them."""
        return next((n for n, each in enumerate(self.coats) if coat and each.id == coat.id), None)

    def run_of(self, n: int) -> int:
        """Return the first of the coats of one class that lie under a coat without a break."""
        while n and _class(self.coats[n - 1]) == _class(self.coats[n]):
            n -= 1
        return n

    def blamed(self, fault: StandingFault) -> set[int]:
        """Return the coats that a fault blames, each with what is right under it."""
        n = self.place(fault.coat)
        if n is None:
            return set()
        match fault.known.blames:
            case Blames.BOND:
                return {n, self.run_of(n)}
            case Blames.COAT_BELOW:
                first = self.run_of(n)
                return {first if self._instead(first) else n} - {0}
            case Blames.WOOD:
                return {0}
            case _:
                return set()

    def _instead(self, n: int) -> str:
        """Return what is published to do instead of a coat on what is right under it."""
        if not n:
            return ""
        under, over = (self.facts.finish_class(_class(c)) for c in self.coats[n - 1 : n + 1])
        row = rule_for(self.facts.overcoats_between(under, over), under, over)
        bad = row is not None and row.answer in {OvercoatAnswer.AVOID, OvercoatAnswer.BARRIER}
        return row.remedy if row is not None and bad else ""

    def met(self) -> set[int]:
        """Return the coats that lie on another finish, or on the wood."""
        return {self.run_of(n) for n in range(len(self.coats))}

    def came_out(self, told: _Told, off: AnyEntry | None, zone: tzinfo) -> Iterator[CameOut]:
        """Yield what is told of each pair; what lies on an old finish tells nothing of the wood."""
        for n in sorted(told.coats):
            coat, under = self.coats[n], self.coats[n - 1] if n else None
            if under is None and not (self.on_wood and self.wood):
                continue
            by = told.by if off is None or told.outcome is not Outcome.FAILED else (*told.by, off)
            yield CameOut(
                pair=Pair(put(under) if under else None, put(coat), self.wood),
                names=(under.product_name if under else "", coat.product_name, self.of.wood or ""),
                film=tuple(dict.fromkeys(each.product_name for each in self.coats)),
                outcome=told.outcome,
                when=by[-1].when.latest.astimezone(zone),
                acts=tuple(dict.fromkeys(each.act for each in by)),
                what=told.what,
                quote=told.quote,
                instead=self._instead(n).rstrip("."),
                is_off=off is not None,
                on_board=self.of.is_board,
            )


def put(coat: Coat) -> Put:
    """Return what a coat put on."""
    return Put(_class(coat), coat.product)


def _class(coat: Coat) -> str:
    return coat.figures.class_key


def _told(
    film: _Film, entries: Sequence[AnyEntry], off: AnyEntry | None, facts: Facts
) -> _Told | None:
    """Return what tells of a finish; None: nobody said how it came out, or it was no fault of it.

    A good review takes back what was found before it; what blames nothing explains a bad one.
    """
    if not film.coats:
        return None
    first = film.coats[0]
    begun = max(n for n, e in enumerate(entries) if e is first or isinstance(e, Stripped))
    since = entries[begun + 1 :]
    review = next((e for e in reversed(since) if isinstance(e, Review)), None)
    wrong = _went_wrong(film, entries, since, off, facts)
    if review is not None and review.outcome is Outcome.GOOD:
        later = since[since.index(review) :]
        wrong = [each for each in wrong if each.by in later]
    failed = [review] if review is not None and review.outcome is Outcome.FAILED else []
    blamed = [each for each in wrong if each.coats]
    if blamed:
        by = sorted((*(each.by for each in blamed), *failed), key=lambda entry: entry.when.order)
        return _Told(
            Outcome.FAILED,
            {n for each in blamed for n in each.coats},
            tuple(by),
            tuple(dict.fromkeys(each.name for each in blamed)),
            failed[0].text if failed else "",
        )
    if review is None or (failed and wrong):
        return None
    coats = film.met() if failed else range(len(film.coats))
    return _Told(review.outcome, coats, (review,), quote=review.text)


class _Wrong(NamedTuple):
    """A fault, or a check that failed; the coats that it blames, and its name."""

    by: Fault | Check
    coats: Collection[int]
    name: str


def _went_wrong(
    film: _Film,
    entries: Sequence[AnyEntry],
    since: Sequence[AnyEntry],
    off: AnyEntry | None,
    facts: Facts,
) -> list[_Wrong]:
    """Return the faults that stand, and what the last check of the film found against it.

    A film that lets go under a knife is as one that peels; one that is soft counts where it was
    taken off for that.
    """
    found = [
        _Wrong(each.fault, film.blamed(each), each.known.name)
        for each in standing_faults(entries, facts)
        if film.place(each.coat) is not None
    ]
    last = len(film.coats) - 1
    bond = {last, film.run_of(last)}
    checks = [e for e in since if isinstance(e, Check)]
    scratch = next((c for c in reversed(checks) if c.test is Test.SCRATCH), None)
    if scratch is not None and scratch.found is Found.FLAKES:
        found.append(_Wrong(scratch, bond, scratch.found.value))
    if off is not None and checks and checks[-1].found in SOFT:
        found.append(_Wrong(checks[-1], bond, checks[-1].found.value))
    return found
