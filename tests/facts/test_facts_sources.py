"""Sources resolve, none is orphaned, units stand in names, and no shop or brand appears."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from typing import Any

import pytest

from finishlog.core.finish.classes import COMMON_PRACTICE, FROM_MEMORY
from finishlog.core.published.sources import Seen, cited
from finishlog.facts.load import load_facts
from finishlog.facts.read import DATA as FOLDER
from tests.rows import every_row

FACTS = load_facts()
FILES = sorted(FOLDER.rglob("*.toml"))
DATA = {str(p.relative_to(FOLDER)): tomllib.loads(p.read_text(encoding="utf-8")) for p in FILES}
UNITS = (
    "_factor",
    "_grit",
    "_share",
    "_h",
    "_min",
    "_c",
    "_d",
    "_pct",
    "_um",
    "_l",
    "_m2_per_l",
    "_per_10c",
    "_log10_pa",
    "_ln",
    "_coats",
    "_ppm",
    "_g_per_mol",
    "_g_per_ml",
    "_m_per_s",
)
BARE = {"value", "low", "high"}
# The core names these two for its stages and its standard air.
STANDARDS_OF_THE_CORE = {
    "astm-d1640": "core/finish/stages.py",
    "astm-d3924": "core/air/psychrometrics.py",
}
PUBLISHED_NAMES = {
    "Wood", "Handbook", "Army", "American", "NIOSH", "PVA", "RH", "US", "CFR", "Europe", "EN",
    "HEPA", "P2", "P3", "N95",
}  # fmt: skip


def leaves(value: Any, key: str = "") -> Iterator[tuple[str, Any]]:
    """Give every value with the key that it stands under."""
    if isinstance(value, dict):
        for inner, one in value.items():
            yield from leaves(one, inner)
    elif isinstance(value, list):
        for one in value:
            yield from leaves(one, key)
    else:
        yield key, value


LEAVES = [(file, *leaf) for file, data in DATA.items() for leaf in leaves(data)]
NAMED = {v for f, k, v in LEAVES if k == "source" or k.endswith("_source")}


def texts_of(file: str) -> list[str]:
    return [value for _, value in leaves(DATA[file]) if isinstance(value, str)]


CITED = {id_ for file in DATA for id_ in cited(texts_of(file))}


def test_every_source_named_exists():
    assert NAMED <= {*FACTS.sources, COMMON_PRACTICE, FROM_MEMORY}


def test_no_source_is_an_orphan():
    used = NAMED | CITED | set(STANDARDS_OF_THE_CORE)
    assert set(FACTS.sources) - used == set()


def test_every_source_in_a_sentence_exists_and_is_marked_as_one():
    assert set(FACTS.sources) >= CITED
    bare = {
        word
        for file in DATA
        for text in texts_of(file)
        for inside in re.findall(r"\(([^()]*)\)", text)
        for word in inside.split(", ")
    }
    assert bare & set(FACTS.sources) == set()


@pytest.mark.parametrize(("source", "module"), list(STANDARDS_OF_THE_CORE.items()))
def test_the_core_names_its_standards(source, module):
    text = (FOLDER.parents[1] / module).read_text(encoding="utf-8")
    assert FACTS.sources[source].title.split(",")[0] in text


def test_a_source_that_was_not_seen_says_memory():
    """ASTM D3924's temperature and the alerts' advice were not seen in a copy."""
    unseen = {key for key, source in FACTS.sources.items() if source.seen is Seen.MEMORY}
    assert unseen == {"astm-d3924", "niosh-isocyanate-alerts"}
    for source in FACTS.sources.values():
        if source.seen is Seen.MEMORY:
            assert "memory" in source.note


def test_a_number_has_its_unit_in_its_name():
    for file, key, value in LEAVES:
        if isinstance(value, int | float) and not isinstance(value, bool):
            assert key.endswith(UNITS) or key in {*BARE, "tier"}, f"{file}: {key}"


def test_a_bare_value_stands_in_a_table_whose_name_has_the_unit():
    def check(data: dict[str, Any], name: str) -> None:
        assert not BARE & set(data) or name.endswith(UNITS), name
        for inner, one in data.items():
            if isinstance(one, dict):
                check(one, inner)
        for reading in data.get("also", []):
            check(reading, name)

    for data in DATA.values():
        check(data, "")


@every_row("file", DATA)
def test_no_web_address_and_no_trade_mark_appears(file):
    web = r"https?:|www\.|\b[a-z0-9-]+\.(com|org|net|info|gov|edu|mil|ca|co|uk|de|io)\b"
    mark = r"[®™©]|\b(Inc|Ltd|LLC|GmbH|Corp|Company|Brand)\b"
    for text in texts_of(file):
        assert not re.search(web, text, re.IGNORECASE)
        assert not re.search(mark, text)


@every_row("file", [file for file in DATA if file != "sources.toml"])
def test_no_name_that_might_be_a_brand_appears(file):
    """Inside a sentence only published handbooks, bodies and units begin with a capital."""
    for text in texts_of(file):
        capitals = set(re.findall(r"(?<![.:?] )(?<!^)\b([A-Z]\w+)", text))
        assert capitals <= PUBLISHED_NAMES, text
