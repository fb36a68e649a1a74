"""Facts are read when asked for, and bad data says where it is bad."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishlog.facts.find import ClassNames, find_class
from finishlog.facts.load import HERE, Facts

FACTS = Facts()
NAMES = FACTS.class_names()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copy = tmp_path / "facts"
    shutil.copytree(HERE, copy, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    return copy


def spoil(path: Path, good: str, bad: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert good in text
    path.write_text(text.replace(good, bad, 1), encoding="utf-8")


def test_an_unknown_class_is_a_key_error():
    with pytest.raises(KeyError):
        FACTS.finish_class("snake-oil")
    with pytest.raises(KeyError):
        FACTS.finish_class("../sources")


def test_asking_twice_gives_the_same_value():
    assert FACTS.finish_class("shellac-2lb") is Facts().finish_class("shellac-2lb")
    assert FACTS.overcoats is Facts().overcoats


def test_the_edition_is_known():
    assert FACTS.version == "2026.11.4"


def test_a_class_is_read_without_reading_the_others(folder: Path):
    spoil(folder / "classes" / "paste-wax.toml", "low_h", "low_h =")
    assert Facts(str(folder)).finish_class("shellac-2lb").name.startswith("dewaxed shellac")


@pytest.mark.parametrize(
    ("good", "bad", "says"),
    [
        ("low_h = 0.5", "low_h = 5", "stages.touch.low_h: 5.0"),
        ("typical_h = 0.5", "typcial_h = 0.5", "stages.touch.typical_h: missing"),
        ('kind = "closes at a time"', 'kind = "closes"', "window.kind: 'closes' is none of"),
        ('source = "cid-a-a-2850"', "source = 3", "stages.touch.source: must be a text"),
        ("builds_film = true", "builds_film = 1", "builds_film: must be true or false"),
        ('note = "At most', 'remark = "At most', "stages.touch.remark: is not known here"),
        ("[stages.touch]", "[stages.tuoch]", "stages.tuoch: is no stage"),
        ("low_h = 0.5", "low_h = true", "stages.touch.low_h: must be a number"),
        ('methods = ["brush", "spray"]', 'methods = ["dip"]', "methods: 'dip' is none of"),
    ],
)
def test_a_bad_class_names_file_and_key(folder: Path, good: str, bad: str, says: str):
    spoil(folder / "classes" / "waterborne-clear.toml", good, bad)
    with pytest.raises(ValueError, match=r"waterborne-clear\.toml") as error:
        Facts(str(folder)).finish_class("waterborne-clear")
    assert says in str(error.value)


def test_a_window_that_melts_in_cannot_close(folder: Path):
    spoil(folder / "classes" / "waterborne-clear.toml", '"closes at a time"', '"melts in for ever"')
    with pytest.raises(ValueError, match=r"waterborne-clear.toml: window.closes"):
        Facts(str(folder)).finish_class("waterborne-clear")


def test_a_file_that_is_not_toml_is_named(folder: Path):
    (folder / "rags.toml").write_text("overdue", encoding="utf-8")
    with pytest.raises(ValueError, match=r"rags\.toml"):
        _ = Facts(str(folder)).rags


def test_a_bad_rule_names_its_place(folder: Path):
    spoil(folder / "overcoats.toml", 'answer = "wait"', 'answer = "perhaps"')
    with pytest.raises(ValueError, match=r"overcoats.toml: rules\[0\].answer: 'perhaps'"):
        _ = Facts(str(folder)).overcoats


def test_a_wait_whose_ends_are_turned_round_is_refused(folder: Path):
    spoil(folder / "overcoats.toml", "wait_low_h = 72", "wait_low_h = 720")
    with pytest.raises(ValueError, match=r"rules\[0\].wait_low_h"):
        _ = Facts(str(folder)).overcoats


def test_naming_the_facts_reads_nothing_and_loads_no_reader():
    script = (
        "import sys; from finishlog.facts.load import Facts; Facts();"
        "print([m for m in sys.modules if m == 'tomllib' or m.startswith('finishlog.facts.')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "['finishlog.facts.load']"


@pytest.mark.parametrize(
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
        ("", set()),
        ("  ", set()),
    ],
)
def test_a_class_is_found_by_what_people_call_it(typed: str, means: set[str]):
    assert set(find_class(typed, NAMES)) == means
    assert set(FACTS.find_class(typed)) == means


def test_a_key_is_found_without_reading_a_class(folder: Path):
    for path in (folder / "classes").iterdir():
        path.write_text("", encoding="utf-8")
    assert Facts(str(folder)).find_class("paste-wax") == ("paste-wax",)


def test_a_whole_name_means_one_class():
    for of in NAMES:
        for word in (of.key, of.name, *of.aliases):
            assert find_class(word.upper(), NAMES) == (of.key,)


@given(st.sampled_from(NAMES), st.data())
def test_a_beginning_of_a_word_always_finds_its_class_among_others(
    of: ClassNames, data: st.DataObject
):
    word = data.draw(st.sampled_from(of.name.replace(",", "").split()))
    typed = word[: data.draw(st.integers(1, len(word)))]
    found = find_class(typed, NAMES)
    assert of.key in found or len(found) == 1


def test_what_a_class_is_called_is_read_without_its_figures(folder: Path):
    spoil(folder / "classes" / "paste-wax.toml", "low_h", "low_h =")
    assert Facts(str(folder)).class_names() == NAMES
    assert [(n.key, n.name, n.aliases) for n in NAMES] == [
        (of.key, of.name, of.aliases) for of in FACTS.classes()
    ]
