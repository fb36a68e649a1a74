"""Every finish class is whole, ordered and sourced."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations

from msgspec import structs

from finishlog.core.finish.classes import (
    COMMON_PRACTICE,
    FROM_MEMORY,
    Figure,
    FinishClass,
    Limit,
    Mechanism,
    Method,
    Range,
    WindowKind,
)
from finishlog.core.finish.stages import Stage
from finishlog.core.published.find import find_called
from finishlog.core.published.sources import by_ids
from finishlog.facts.load import load_facts
from tests.rows import every_row
from tests.stage_order import NOT_LATER_THAN, implied_by

FACTS = load_facts()
CLASSES = FACTS.classes.values()
KEYS = [c.key for c in CLASSES]
FAMILIES = {
    *("oil", "oil-varnish", "wax"),
    *("shellac", "lacquer", "catalysed", "waterborne"),
    *("stain", "dye", "glaze", "filler", "washcoat"),
    *("paint", "soap", "bleach", "chemical", "unknown", "non-drying-oil"),
    *("putty", "epoxy"),
}
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
ENDS = ("low_h", "typical_h", "high_h")

each_class = every_row("of", CLASSES, ids=KEYS)


def figures_of(of: FinishClass) -> Iterator[Figure]:
    """Give every range of hours of a class, differing readings too."""
    own = [*of.stages.values(), *of.readings.values()]
    for one in [*own, *filter(None, (of.wipe_off_h, of.window.closes, of.pot_life_h))]:
        yield one
        yield from one.also


def limits_of(of: FinishClass) -> list[Limit]:
    return [x for x in structs.astuple(of.limits) if x is not None]


def ranges_of(of: FinishClass) -> Iterator[Range]:
    """Give every quantity of a class that is no time, differing readings too."""
    for one in structs.astuple(of):
        if isinstance(one, Range):
            yield one
            yield from one.also


@each_class
def test_every_figure_names_a_source_that_exists(of):
    named = {figure.source for figure in figures_of(of)}
    named |= {limit.source for limit in limits_of(of)}
    named |= {found.source for found in ranges_of(of)}
    named |= {of.window.source, of.self_heating_source}
    named |= {of.wrinkles_when_late_source} - {None}
    assert named <= KNOWN


@each_class
def test_ranges_are_in_order_and_never_negative(of):
    for figure in figures_of(of):
        assert 0 <= figure.low_h <= figure.typical_h <= figure.high_h


@each_class
def test_amounts_are_in_order_and_a_share_is_at_most_the_whole(of):
    for found in ranges_of(of):
        assert 0 <= found.low <= found.high
    for share in filter(None, (of.solids_vol_pct, of.solids_wt_pct)):
        assert share.high <= 100


@each_class
def test_stages_come_in_their_order_at_either_end_and_in_the_middle(of):
    for end in ENDS:
        for one, other in combinations(of.stages, 2):
            for early, late in ((one, other), (other, one)):
                if early in implied_by([late]) and early is not late:
                    assert getattr(of.stages[early], end) <= getattr(of.stages[late], end), (
                        f"{end}: {early} after {late}"
                    )


def test_the_order_reaches_across_a_stage_that_a_class_lacks():
    assert Stage.TOUCH in implied_by([Stage.PACK])
    assert (Stage.TOUCH, Stage.PACK) not in NOT_LATER_THAN


@each_class
def test_every_class_can_be_dried_recoated_turned_clamped_and_stacked(of):
    wanted = {
        Stage.TOUCH,
        Stage.DUST_FREE,
        Stage.TACK_FREE,
        Stage.TURN,
        Stage.CLAMP,
        Stage.STACK,
        Stage.CURED,
        Stage.RECOAT,
    }
    assert wanted <= set(of.stages)


@each_class
def test_only_a_topcoat_is_packed_closed_used_and_rubbed_out(of):
    last = {Stage.PACK, Stage.CLOSE, Stage.LIGHT_USE}
    assert (last <= set(of.stages)) if of.topcoat else not (last | {Stage.RUB}) & set(of.stages)


@each_class
def test_a_cautious_reading_is_used_and_the_shorter_one_only_shown(of):
    """Where sources differ on a wait, the promise is not shorter than the reading beside it.

    A longer reading may stand beside the promise only with a note that says why.
    """
    for stage, figure in of.stages.items():
        for reading in figure.also:
            assert reading.high_h <= figure.high_h or reading.note, f"{stage}: {reading}"


@each_class
def test_the_window_is_sourced_and_closes_only_where_it_closes(of):
    assert of.window.source in KNOWN
    assert (of.window.closes is not None) == (of.window.kind is WindowKind.CLOSES)


@each_class
def test_a_window_does_not_close_before_recoating_is_promised(of):
    if of.window.closes is not None:
        assert of.window.closes.low_h >= of.stages[Stage.RECOAT].high_h


@each_class
def test_the_limits_of_the_air_are_sourced(of):
    assert of.limits.min_c is not None
    assert of.limits.max_c is not None
    assert of.limits.min_c.value < 23 < of.limits.max_c.value


@each_class
def test_words_belong_to_the_closed_sets(of):
    assert of.family in FAMILIES
    assert of.methods
    FACTS.carrier(of.carrier)


@each_class
def test_notes_say_where_they_come_from(of):
    for text in (of.coats, of.abrade, *of.notes):
        named = re.search(r"\(([^()]*)\)\.?$", by_ids(text))
        assert named, text
        assert set(named[1].split(", ")) <= KNOWN


@each_class
def test_a_hazard_of_a_class_has_a_note_to_show(of):
    assert of.hazards
    assert set(of.hazards) <= {note.applies_to for note in FACTS.notes}


@each_class
def test_what_heats_in_rags_says_so_among_its_hazards(of):
    assert of.self_heating == ("self-heating" in of.hazards)


@each_class
def test_whatever_dries_by_oxidation_heats_in_rags(of):
    """Cautious side of a conflict: one trade writer excepts varnish (fire-services-varnish)."""
    if of.mechanism is Mechanism.OXIDATION:
        assert of.self_heating


@each_class
def test_what_leaves_the_film_fits_how_it_dries(of):
    fits = {
        Mechanism.OXIDATION: {"none", "mineral-spirits"},
        Mechanism.CROSS_LINKING: {"butyl-acetate", "xylene", "water", "none"},
        Mechanism.WATER: {"water"},
        Mechanism.ALCOHOL: {"ethanol"},
        Mechanism.SOLVENT: {"butyl-acetate", "mineral-spirits"},
        Mechanism.SOAKING: {"none"},
    }
    assert of.carrier in fits[of.mechanism]


def test_sprayed_lacquer_is_sprayed_only():
    assert FACTS.finish_class("lacquer-sprayed").methods == (Method.SPRAY,)


def test_no_two_classes_are_called_the_same():
    """What a person types whole, a key, a name or another word for it, is one class's alone."""
    for of in CLASSES:
        for called in (of.key, of.name, *of.aliases):
            assert find_called(called, FACTS.classes.values()) == (of.key,), called


@each_class
def test_the_clock_has_what_it_needs_for_every_mechanism_and_carrier(of):
    if of.mechanism in {Mechanism.OXIDATION, Mechanism.CROSS_LINKING}:
        assert of.mechanism.value in FACTS.rates
    elif of.mechanism not in {Mechanism.WATER, Mechanism.SOAKING}:
        assert FACTS.carrier(of.carrier) is not None


def test_only_what_is_mixed_before_use_has_a_pot_life():
    mixed = {c.key for c in CLASSES if c.pot_life_h}
    assert mixed >= {"lacquer-postcatalysed", "conversion-varnish", "waterborne-two-part"}
    # Pre-catalysed lacquer holds its catalyst in the can: its shelf life is its pot life.
    assert "lacquer-precatalysed" not in mixed
    assert all(c.mechanism is not Mechanism.OXIDATION for c in CLASSES if c.key in mixed)
