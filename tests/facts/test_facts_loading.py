"""Facts are read as their files say, and bad data says where it is bad."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.asks.things.classes import class_key
from finishlog.core.finish.classes import FinishClass
from finishlog.core.published.find import find_called, said_carriers
from finishlog.errors import NotFound
from finishlog.facts.compile import compiled
from finishlog.facts.load import COMPILED, load_facts
from finishlog.facts.read import read_facts
from tests.rows import every_row
from tests.spoilt import read_spoilt

FACTS = load_facts()
CLASSES = list(FACTS.classes.values())


def test_an_unknown_class_is_a_key_error():
    with pytest.raises(KeyError):
        FACTS.finish_class("snake-oil")
    with pytest.raises(KeyError):
        FACTS.finish_class("../sources")


def test_asking_twice_gives_the_same_value():
    assert FACTS is load_facts()


def test_the_edition_is_known():
    assert FACTS.version == "2026.12.6"


@pytest.mark.parametrize(
    ("good", "bad", "says"),
    [
        ("low_h = 0.5", "low_h = 5", "stages.touch: 5.0"),
        ("low_h = 0.5", "low_h = -1", "stages.touch.low_h: "),
        ("typical_h = 0.5", "typcial_h = 0.5", "stages.touch: Object contains unknown field"),
        ("typical_h = 0.5\n", "", "stages.touch: Object missing required field `typical_h`"),
        (
            'kind = "closes at a time"',
            'kind = "closes"',
            "window.kind: Invalid enum value",
        ),
        ('source = "cid-a-a-2850"', "source = 3", "stages.touch.source: Expected `str`"),
        ("builds_film = true", "builds_film = 1", "builds_film: Expected `bool`"),
        (
            'note = "At most',
            'remark = "At most',
            "stages.touch: Object contains unknown field",
        ),
        ("[stages.touch]", "[stages.tuoch]", "stages: Invalid enum value 'tuoch'"),
        ("low_h = 0.5", "low_h = true", "stages.touch.low_h: Expected `float`"),
        (
            'methods = ["brush", "spray"]',
            'methods = ["dip"]',
            "methods[0]: Invalid enum value",
        ),
    ],
)
def test_a_bad_class_names_file_and_key(tmp_path: Path, good: str, bad: str, says: str):
    with pytest.raises(ValueError, match=r"waterborne-clear\.toml") as error:
        read_spoilt(tmp_path, "classes/waterborne-clear.toml", good, bad)
    assert says in str(error.value)


def test_a_window_that_melts_in_cannot_close(tmp_path: Path):
    with pytest.raises(ValueError, match=r"waterborne-clear.toml: window: `closes`"):
        read_spoilt(
            tmp_path,
            "classes/waterborne-clear.toml",
            '"closes at a time"',
            '"melts in for ever"',
        )


def test_a_file_that_is_not_toml_is_named(tmp_path: Path):
    with pytest.raises(ValueError, match=r"rags\.toml"):
        read_spoilt(tmp_path, "rags.toml", "[overdue_after_h]", "[overdue_after_h")


@pytest.mark.parametrize(
    ("file", "good", "bad", "says"),
    [
        ("overcoats.toml", 'answer = "wait"', 'answer = "perhaps"', "[0].answer: Invalid enum"),
        ("overcoats.toml", "low_h = 72", "low_h = 720", "[0].wait: 720.0, 168.0, 168.0"),
        (
            "overcoats.toml",
            "\nlifted_by",
            "\nlift_by",
            "[0]: Object contains unknown field `lift_by`",
        ),
        ("overcoats.toml", "[[overcoats]]", "[[overcots]]", "overcots"),
        ("carriers.toml", "b_c = 1642.89", 'b_c = "x"', "ethanol.b_c: Expected `float`"),
        ("sources.toml", "tier = 1", "tier = 4", "tm-43-0139.tier: Invalid enum value 4"),
        ("rags.toml", "[can]", "[cans]", "Object contains unknown field `cans`"),
    ],
)
def test_a_bad_fact_names_its_place(tmp_path: Path, file: str, good: str, bad: str, says: str):
    with pytest.raises(ValueError, match=file) as error:
        read_spoilt(tmp_path, file, good, bad)
    assert says in str(error.value)


def test_what_is_shipped_compiled_is_what_the_files_say():
    """`python -m finishlog.facts.compile` writes it anew."""
    assert Path(COMPILED).read_bytes() == compiled()
    assert load_facts() == read_facts()


def test_a_start_loads_no_reader():
    script = (
        "import sys; from finishlog.facts.load import load_facts; load_facts();"
        "print([m for m in sys.modules if m == 'tomllib' or m.startswith('finishlog.facts.')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "['finishlog.facts.load']"


@every_row(
    ("typed", "means"),
    [
        ("shellac", {"shellac-2lb"}),
        ("Danish oil", {"oil-varnish-blend"}),
        ("BLO", {"boiled-linseed-oil"}),
        ("wax", {"paste-wax"}),
        ("lacquer", {"lacquer-sprayed"}),
        ("hardwax", {"hardwax-oil"}),
        ("oil-polyurethane", {"oil-polyurethane"}),
        (
            "varnish",
            {
                "alkyd-varnish",
                "conversion-varnish",
                "oil-polyurethane",
                "oil-varnish-blend",
                "spar-varnish",
                "waterborne-clear",
                "wiping-varnish",
            },
        ),
        ("water clear", {"waterborne-clear"}),
        ("creosote", set()),
        # What people say of it, with the trade's own meaning (common practice).
        ("spar urethane", {"spar-varnish"}),
        ("tung oil finish", {"oil-varnish-blend", "wiping-varnish"}),
        ("cutting board oil", {"mineral-oil"}),
        ("", set()),
        ("  ", set()),
    ],
)
def test_a_class_is_found_by_what_people_call_it(typed: str, means: set[str]):
    assert set(find_called(typed, CLASSES)) == means
    assert set(FACTS.find_class(typed)) == means


# Common practice: what is called oil-based is thinned with mineral spirits, waterborne with water.
@pytest.mark.parametrize(
    ("typed", "means"),
    [
        ("oil based polyurethane", {"oil-polyurethane"}),
        ("Oil-Based Poly", {"oil-polyurethane"}),
        ("water base poly", {"waterborne-clear", "waterborne-oil-modified"}),
        ("waterborne enamel", {"latex-enamel"}),
        ("oil base enamel", {"oil-enamel"}),
        ("water-based lacquer", set()),
        ("oil-based latex", set()),
    ],
)
def test_what_a_finish_is_based_on_is_never_taken_for_the_other(typed: str, means: set[str]):
    assert set(FACTS.find_class(typed)) == means


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("oil based satin poly", {"oil-polyurethane", "wiping-varnish"}),
        ("water-based stain", {"water-dye"}),
        ("food grade mineral oil", {"mineral-oil"}),
        ("spray laquer", {"lacquer-sprayed"}),
        ("oil", set()),
    ],
)
def test_an_unknown_name_brings_those_that_are_near_and_none_of_another_base(
    typed: str, near: set[str]
):
    with pytest.raises(NotFound) as told:
        class_key(FACTS, typed)
    assert told.value.hint is not None
    offered = told.value.hint.removeprefix("did you mean: ").split(";")[0].split(", ")
    assert near <= set(offered)
    based = said_carriers(typed)
    known = {FACTS.classes[key].carrier for key in offered if key in FACTS.classes}
    assert based is None or known <= based


def test_a_whole_name_means_one_class():
    for of in CLASSES:
        for word in (of.key, of.name, *of.aliases):
            assert find_called(word.upper(), CLASSES) == (of.key,)


@pytest.mark.thorough
@given(st.sampled_from(CLASSES), st.data())
def test_a_beginning_of_a_word_always_finds_its_class_among_others(
    of: FinishClass, data: st.DataObject
):
    word = data.draw(st.sampled_from(of.name.replace(",", "").split()))
    typed = word[: data.draw(st.integers(1, len(word)))]
    found = find_called(typed, CLASSES)
    assert of.key in found or len(found) == 1
