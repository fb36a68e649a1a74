"""Until when a coat goes on as it is: a film in its recoat window, wood as it was prepared."""

from __future__ import annotations

from datetime import datetime

from msgspec import Struct

from finishlog.core.film.layers import ABRADES
from finishlog.core.log.entries import Target
from finishlog.core.log.words import Operation
from finishlog.core.plan.compiled.clocks import OF_A_FILM, Clocks, last_coat
from finishlog.core.plan.compiled.lag_sums import later_of, sooner_of
from finishlog.core.plan.compiled.story import Deed
from finishlog.core.plan.jobs_that_fit import Hands
from finishlog.core.plan.search.shop import NEVER, Lag
from finishlog.core.rules.wood.prepared import prepared
from finishlog.core.zone.asked import work_asked

# The coat below (None: it lies there already), when its window closes, from when it sands.
Bound = tuple[Deed | None, Lag, Lag]


class Windows(Struct, frozen=True):
    """Finds the window that bounds a coat of a story; those of films on record as of `now`."""

    clocks: Clocks
    hands: Hands
    now: datetime

    def of(self, deed: Deed) -> Bound | None:
        """Return the coat whose window bounds another, when it closes and when it sands."""
        if not deed.is_coat:
            return None
        found: Bound | None = None
        for target in deed.on:
            before = self.clocks.story.before(deed, target)
            coat = last_coat(before, target)
            since = before if coat is None else before[before.index(coat) + 1 :]
            if coat is not None and any(each.operation in ABRADES for each in since):
                continue
            each = self._window_over(deed, target, coat)
            if each is not None:
                found = each if found is None else _sooner(found, each)
        return found

    def _window_over(self, deed: Deed, target: Target, coat: Deed | None) -> Bound | None:
        if coat is None:
            return self._since_prepared(deed, target) or self._logged_window(deed, target)
        closes = self.clocks.closes(deed, target, coat)
        return None if closes is None else (coat, closes, self.clocks.sands(deed, target, coat))

    def _since_prepared(self, deed: Deed, target: Target) -> Bound | None:
        """Return until when the wood is good for its first coat, as it was prepared."""
        clocks, story = self.clocks, self.clocks.story
        planned = story.planned(deed, target)
        state, of = story.zones.then(target, planned), self.hands.product_class(deed.task.product)
        was = prepared(state, of, story.zones.facts) if of is not None else None
        if was is None:
            return None
        for each in reversed(story.before(deed, target)):
            if any(e.act == was.act for e in each.of(target)):
                return each, clocks.origin.down(was.until) - clocks.origin.up(was.since), 0
        return None, clocks.origin.down(was.until), 0

    def _logged_window(self, deed: Deed, target: Target) -> Bound | None:
        clocks = self.clocks
        state = clocks.story.zones.then(target, clocks.story.planned(deed, target))
        closes = clocks.closes_now(deed, state, self.now)
        if closes is None:
            return None
        ready = clocks.ready(state, work_asked(Operation.SCUFF), self.now, OF_A_FILM)
        up = clocks.origin.up(ready) if ready is not None else NEVER
        return None, clocks.origin.down(closes), up


def _sooner(one: Bound, other: Bound) -> Bound:
    """Return which of two windows bounds a coat: of one coat the sooner, else the older one's."""
    if one[0] is other[0]:
        return one[0], sooner_of(one[1], other[1]), later_of(one[2], other[2])
    return min((one, other), key=lambda w: -1 if w[0] is None else w[0].number)
