"""Cautions and oily rags: never a false all-clear."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.published.safety_notes import SafetyNote, notes_for
from finishlog.facts.load import load_facts
from tests.rows import every_row

FACTS = load_facts()
NOTES = FACTS.notes
KNOWN = {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}
HAZARDS = sorted({note.applies_to for note in NOTES})


def about(hazard: str) -> str:
    return " ".join(note.text for note in NOTES if note.applies_to == hazard)


def test_every_note_is_short_sourced_and_its_own():
    assert len({note.id for note in NOTES}) == len(NOTES)
    for note in NOTES:
        assert note.source in KNOWN
        assert note.text.endswith(".")
        # Three ways with oily rags in one sentence; the rest is read at a glance.
        assert len(note.text) <= (190 if note.id == "rags-ways" else 126)


def test_everything_defers_to_the_sheet_the_codes_and_licensed_people():
    first = notes_for(NOTES, ["general"], at_most=1)[0].text
    assert all(word in first for word in ("safety data sheet", "local", "licensed"))


# NFPA tip sheet on oily rags.
def test_waterborne_is_never_called_safe_without_a_look_at_the_sheet():
    assert "check the sheet: oil-modified waterborne types exist" in about("waterborne")
    for of in FACTS.classes.values():
        if of.family == "waterborne":
            assert any("oil-modified waterborne types exist" in note for note in of.notes)


# NFPA tip sheet: flat outdoors, or under water in a lidded metal can; 29 CFR 1910.107(g)(3): a
# listed can, emptied daily.
def test_three_ways_with_oily_rags_are_named():
    (ways,) = [note.text for note in NOTES if note.id == "rags-ways"]
    assert "flat in one layer outdoors" in ways
    assert "under water in a lidded metal can" in ways
    assert "oily-waste can and empty it off site the same day" in ways


# Acid on chlorine bleach sets chlorine free, ammonia makes chloramines (from memory).
def test_chlorine_bleach_meets_no_acid_and_no_ammonia():
    bleach = about("bleach")
    assert all(word in bleach for word in ("poison gas", "vinegar", "oxalic", "ammonia"))
    assert "neutralise" not in bleach


# White vinegar and water belong to the alkali-and-peroxide bleach only (common practice).
def test_vinegar_is_for_the_two_part_bleach_alone():
    (said,) = [note.text for note in NOTES if note.id == "bleach-two-part"]
    assert "alkali-and-peroxide bleach alone" in said


# The gas comes first: whoever sees one note of bleach sees that one.
def test_the_first_note_of_bleach_is_the_gas():
    assert "poison gas" in notes_for(NOTES, ["bleach"], at_most=1)[0].text


# What a note must say, in order: 40 CFR 745 and 751, 16 CFR 1303, 21 CFR 175.300, ASTM F963, IARC
# monograph 62, 29 CFR 1910.106 and .107, NIOSH pocket guide, NIOSH alerts, 40 CFR 261.4.
@every_row(
    ("hazard", "words"),
    [
        ("lead", ("1978", "test before", "certified")),
        ("stripper", ("Methylene chloride", "federal rules", "no flame", "like oily rags")),
        ("children", ("90 ppm lead", "toy rules", "fully hard")),
        ("food", ("maker calls suitable", "fully hard", "30 days")),
        ("dust", ("nasal cancer", "at the tool", "1 mg/m³", "P2/P3", "no nuisance mask")),
        ("heat", ("flash point", "open element", "heat gun")),
        ("heater", ("pilot light", "carbon monoxide")),
        ("flammable", ("pilots", "one day's finish", "cabinet", "free liquid", "time limit")),
        ("spray", ("6 m", "quarter of the lower explosive limit", "household fan")),
        ("vapour", ("health limits are far lower", "dizziness", "at the source", "fit-tested")),
        ("nitrocellulose", ("overspray", "do not spark", "no oil or varnish over it")),
        ("isocyanate", ("asthma", "supplied air")),
        ("general", ("extinguisher", "get out and call")),
    ],
)
def test_a_hazard_is_told_whole(hazard: str, words: tuple[str, ...]):
    said = about(hazard)
    assert [word for word in words if word not in said] == []


# Fire-investigation firm's article: a fire is plausible from about one hour after wetting.
def test_rags_are_overdue_after_an_hour():
    assert FACTS.rags.overdue_after_h.value == 1


# Fire-investigation firm's article: a source is plausible until two to three days after wetting;
# county fire officials say two days at least. The longer is used.
def test_rags_may_be_called_stiff_after_three_days_and_not_before():
    assert FACTS.rags.stiff_after_h.value == 72


# Common practice: a gel skins over first, a paste stays wet within.
def test_gels_take_longer_and_pastes_never_count_as_stiff():
    rags = FACTS.rags
    assert rags.stiff_after_gel_h.value > rags.stiff_after_h.value
    assert {"gel-stain", "glaze"} == rags.stiff_after_gel_h.classes
    assert {"paste-filler", "paste-wax"} == rags.never_stiff.classes
    slow = rags.stiff_after_gel_h.classes | rags.never_stiff.classes
    assert all(FACTS.finish_class(key).self_heating for key in slow)


# The rate of reaction about doubles for each 10 °C (fire-investigation firm's article).
def test_the_hour_is_halved_for_each_ten_degrees():
    rags = FACTS.rags
    assert rags.overdue_halves_per_c.value == 10
    assert rags.overdue_reference_c.value == 23
    assert rags.overdue_at_once_from_c.value == 30


# Common practice, and what fires started in: gloves on the ground, a sander's bag, scrapings.
def test_what_counts_as_rags_is_named():
    (said,) = [note.text for note in NOTES if note.id == "rags-what"]
    counted = ("Gloves", "pads", "brushes", "paper", "steel wool", "scrapings", "dust")
    assert [word for word in counted if word not in said] == []
    (first,) = notes_for(NOTES, ["self-heating"], at_most=1)
    assert "even a single one" in first.text


# City fire bulletin: sander bags, up to 30 days after staining.
def test_dust_of_a_film_younger_than_thirty_days_counts_as_rags():
    assert FACTS.rags.film_counts_until_d.value == 30


# 29 CFR 1910.107(g)(3).
def test_a_listed_can_is_emptied_the_same_day():
    assert "same day" in FACTS.rags.can.emptied_by
    assert FACTS.rags.can.source == "osha-1910-107"


def test_the_rags_figures_are_sourced():
    rags = FACTS.rags
    limits = (
        rags.overdue_after_h,
        rags.stiff_after_h,
        rags.stiff_after_gel_h,
        rags.stiff_counts_from_c,
        rags.overdue_halves_per_c,
        rags.overdue_reference_c,
        rags.overdue_at_once_from_c,
        rags.ask_under_water_d,
        rags.film_counts_until_d,
    )
    assert {*(limit.source for limit in limits), rags.can.source} <= KNOWN


def test_each_hazard_is_mentioned_before_one_is_mentioned_twice():
    shown = notes_for(NOTES, ["self-heating", "flammable", "vapour"])
    assert [note.applies_to for note in shown] == ["self-heating", "flammable", "vapour"]
    turned = notes_for(NOTES, ["vapour", "flammable", "self-heating"])
    assert turned == shown
    assert [n.id for n in notes_for(NOTES, ["self-heating"])] == [
        "rags-heat",
        "rags-ways",
        "rags-heap",
    ]


def test_the_most_dangerous_comes_first_and_always_and_the_others_take_turns():
    hazards, said, seen = ["vapour", "flammable", "isocyanate", "self-heating"], set(), set()
    for _ in range(30):
        shown = notes_for(NOTES, hazards, lately=said)
        assert shown[0].id == "isocyanate"
        said |= {note.id for note in shown}
        seen |= set(shown)
    assert seen == {note for note in NOTES if note.applies_to in hazards}


@given(st.lists(st.sampled_from(HAZARDS)), st.integers(0, 6))
def test_never_more_notes_than_asked_and_none_twice(hazards: list[str], at_most: int):
    shown = notes_for(NOTES, hazards, at_most)
    assert len(shown) <= at_most
    assert len(set(shown)) == len(shown)
    assert {note.applies_to for note in shown} <= set(hazards)
    mentioned = len(set(hazards)) if at_most >= len(set(hazards)) else at_most
    assert len({note.applies_to for note in shown}) == mentioned


def test_an_unknown_hazard_brings_no_note():
    assert notes_for([SafetyNote("a", "dust", "Dust.", COMMON_PRACTICE)], ["lead"]) == ()
