"""What the checks of some coats teach of others: bounded, never shortening, and not across woods.

Coats and hours are drawn at random. That oil and resin in the wood keep a film soft by themselves,
and that it says nothing of another wood, is common practice; the bound of 3 is our own rule.
"""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.clock.pace import PaceKey
from finishlog.core.clock.pace_posterior import Bracket
from finishlog.core.finish.classes import Method
from finishlog.core.pace.learnt import learn
from finishlog.core.pace.seen import Seen
from finishlog.core.published.species import WoodKind
from tests.examples import examples
from tests.shop_of import FACTS, VARNISH, Story

KEYS = st.builds(
    PaceKey,
    product=st.sampled_from([7, 8]),
    first=st.booleans(),
    method=st.sampled_from([None, Method.BRUSH, Method.WIPE]),
    container=st.sampled_from([None, 3]),
    wood=st.sampled_from(WoodKind),
)
BRACKETS = st.builds(
    lambda label, soft, wider: Bracket(label, label * soft, label * soft * wider),
    st.floats(1, 48),
    st.floats(0.1, 60),
    st.floats(1.01, 50) | st.just(float("inf")),
)


def seen(tells: list[tuple[PaceKey, Bracket]]) -> list[Seen]:
    """Put coats on, one after the other; each tells what was drawn for it."""
    story = Story()
    story.part()
    return [Seen(key.taught(), story.coat(n, VARNISH), told) for n, (key, told) in enumerate(tells)]


TELLS = st.lists(st.tuples(KEYS, BRACKETS), max_size=8)


@examples(60)
@given(TELLS, KEYS)
def test_another_coat_waits_at_most_three_times_as_long_and_never_shorter(tells, asked):
    learnt = learn(seen(tells), FACTS.pace).factor(asked)
    assert learnt is None or 1 <= learnt.factor <= FACTS.pace.carried_factor == 3
    # Its own acts are those of the coats above; this one is another's.
    assert learnt is None or learnt.factor_of(act=-1) == learnt.factor


@examples(60)
@given(TELLS, st.lists(st.tuples(KEYS, BRACKETS), min_size=1, max_size=4), KEYS)
def test_first_coats_on_oily_or_resinous_wood_say_nothing_of_other_wood(tells, more, asked):
    asked = asked._replace(wood=WoodKind.OTHER, first=True)
    wood = (WoodKind.OILY, WoodKind.RESINOUS)
    more = [(k._replace(first=True, wood=wood[n % 2]), told) for n, (k, told) in enumerate(more)]
    without, with_them = (learn(seen(each), FACTS.pace) for each in (tells, [*tells, *more]))
    before, after = without.factor(asked), with_them.factor(asked)
    assert (before and before.factor) == (after and after.factor)
