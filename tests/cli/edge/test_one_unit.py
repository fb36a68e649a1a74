"""A shop that measures in one system reads that system alone, on every screen of an evening.

What is typed here is invented. The two shops live the same evening, each in its own units.
"""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from run import Finishlog

from finishlog.core.measure.quantities import OPENS
from finishlog.facts.load import load_facts

pytestmark = pytest.mark.thorough

FACTS = load_facts()

SETTINGS = """
settings temperature F
settings area ft2
settings volume qt
settings weight 'oz wt'
settings film mil
"""

# A number before it; a unit that is typed without a blank (`63F`) counts as well.
METRIC = re.compile(
    r"°C|\d ?C\b|m²|\bm2\b|µm|\d ?(?:um|g|kg|L|ml|cl|mm|cm|m|g/L)(?![\w/])", re.MULTILINE
)
# Pounds are left out: `2 lb cut` is the trade's name of a cut, also where flakes come in grams.
BY_THE_FOOT = re.compile(
    r"°F|\d ?F\b|ft²|\bft2\b|\d ?(?:oz|oz wt|fl oz|qt|pt|gal|ft|mil|in(?=[,.;:)]|$))"
    r"(?!\w)",
    re.MULTILINE,
)

# One line a command: when it is typed, then its words; `[metric|by the foot]` is what differs.
EVENING = """
20T17:00 room new cellar --night [2C|36F]
20T17:00 room new bench
20T17:00 product new sealer --class shellac-2lb
20T17:00 product new varnish --class alkyd-varnish
20T17:00 product new clear --class waterborne-clear --recoat 3h --window 24h
20T17:00 product new lacquer --class lacquer-sprayed
20T17:00 product new hard --class waterborne-two-part
20T17:00 product new oil --class hardwax-oil
20T17:00 product label varnish --recoat 24h --label-air '[20C|68F] 50%'
20T17:00 steps new clear sand sealer scuff clear*3
20T17:00 steps new varnished sand varnish scuff varnish
20T17:00 steps new sprayed sand lacquer*2
20T17:00 steps new oiled sand oil*2
20T17:00 project new desk --due 'Sat 12 Dec'
20T17:00 part new desk/top --species oak --steps clear --room bench
20T17:00 part new desk/legs -n 4 --species ipe --steps varnished --room bench
20T17:00 part new desk/door --species maple --steps sprayed --room cellar
20T17:00 part new desk/box --species cherry --steps oiled --room bench
20T17:00 part show desk/top
20T17:10 air [9C|48F] 58% --room bench
20T17:10 air [21C|70F] 88% --room cellar
20T17:15 log top sand --grit P180
20T17:16 log legs sand
20T17:17 log door sand
20T17:18 log box sand
20T17:20 ready
20T17:20 why top
20T17:22 why door
20T17:30 log door lacquer
20T17:40 air [21C|70F] 50% --room bench
20T17:45 surface top [9C|48F]
20T17:46 ready
20T17:47 log top sealer
20T17:50 can new can-1 --product varnish --amount [1L|1qt]
20T17:51 can edit can-1 --amount [750ml|0.8qt]
20T17:52 can list
20T17:53 can show can-1
20T17:55 mix sealer 'flakes:[120g|4 oz wt]' 'alcohol:[1L|1qt]'
20T17:56 mix hard 'base:[300ml|10 fl oz]' 'hardener:[30ml|1 fl oz]'
20T17:57 can show mix-1
20T18:00 log legs varnish --from can-1 --film [180um|7mil]
20T18:05 log box oil
20T18:10 moisture top 9%
20T18:12 heat 18:00-22:00 [19C|66F] --room bench
20T18:13 room heating bench 17-23 [19C|66F]
20T18:14 room usual bench 7:[9C|48F] 19:[19C|66F] 23:[12C|54F]
20T18:15 room list
20T18:20 log box wipe
20T21:00 leave
21T08:00 air [4C|39F] 60% --room bench
21T08:10 check legs tacky
21T08:12 why legs
21T08:20 fault top blush
21T08:30 ready
21T08:31 ready --verbose
21T08:32 when desk/top legs door box
21T08:33 on top legs door box
21T08:34 why top legs door box
21T08:40 move door bench
21T09:00 log top clear
21T09:10 leave
22T09:00 air [22C|72F] 50% --room bench
22T09:01 check legs gums
22T09:02 fault legs wrinkle
22T09:05 plan
22T09:10 past oak
22T09:11 past --pairs sealer clear
22T09:12 history
22T09:14 movement red-oak [300mm|12in] --from '[20C|68F] 35%' --to '[22C|72F] 65%'
22T09:15 room show bench
22T09:16 product show varnish
22T09:17 product list
22T09:18 settings
22T09:19 rags
22T09:20 history --act 30
22T09:21 glue list
22T09:22 species list
22T09:23 class list
22T09:30 handover box
"""


@pytest.fixture(scope="module", params=["metric", "by the foot"])
def screens(request, tmp_path_factory) -> tuple[str, list[tuple[str, str]]]:
    """Every screen of the evening, by what was typed, in one of the two systems."""
    program = Finishlog(tmp_path_factory.mktemp("shop"))
    which = 0 if request.param == "metric" else 1
    if which:
        for line in SETTINGS.strip().splitlines():
            program.did(*shlex.split(line), now="2026-11-20T16:00:00+00:00")
    seen = []
    for line in EVENING.strip().splitlines():
        told = re.sub(r"\[([^|\]]*)\|([^\]]*)\]", lambda m: m[1 + which], line)
        when, typed = told.split(" ", 1)
        answer = program(*shlex.split(typed), now=f"2026-11-{when}:00+00:00")
        assert answer.code in {0, 1}, (typed, answer)
        seen.append((typed, answer.out + answer.err))
    pages = [
        *(("class", "show", of.key) for of in FACTS.classes.values()),
        *(("species", "show", each.key) for each in FACTS.species),
        *(("glue", "show", each.key) for each in FACTS.glues),
    ]
    now = "2026-11-22T10:00:00+00:00"
    seen += [(" ".join(page), program.did(*page, now=now).out) for page in pages]
    return request.param, seen


def test_no_screen_shows_a_unit_of_the_other_system(screens):
    system, seen = screens
    foreign = BY_THE_FOOT if system == "metric" else METRIC
    found = [
        (typed, line.strip())
        for typed, screen in seen
        for line in screen.splitlines()
        if foreign.search(line)
    ]
    assert found == []


def test_each_system_is_seen_where_it_is_looked_for(screens):
    """The pattern that must find nothing finds the person's own units on many screens."""
    system, seen = screens
    own = METRIC if system == "metric" else BY_THE_FOOT
    assert len([typed for typed, screen in seen if own.search(screen)]) > 30


def test_no_screen_shows_how_a_quantity_is_carried(screens):
    _, seen = screens
    assert [typed for typed, screen in seen if OPENS in screen] == []


def test_the_same_limit_is_said_in_each_shops_degrees(screens):
    """TM 55-1500-345-23: no finish below 50 °F, 10 °C."""
    system, seen = screens
    refused = next(screen for typed, screen in seen if typed == "why top")
    assert ("below the 10 °C" if system == "metric" else "below the 50 °F") in refused


def test_a_document_is_the_same_whatever_its_reader_likes(tmp_path: Path):
    """Its words are in °C, m², L, g and µm, since a script reads them."""
    program = Finishlog(tmp_path)
    for line in (
        "settings temperature F",
        "product new varnish --class alkyd-varnish",
        "part new desk/top --species oak",
        "air 48F 50%",
    ):
        program.did(*shlex.split(line))
    warned = program.did("log", "top", "varnish", "--json").document["answer"]["warnings"]
    assert any("8.9 °C is below the 10 °C" in f["sentence"] for f in warned)
    assert "a factor of 2 per 10 °C" in program.did("why", "top", "--json").out


def test_less_than_a_quart_is_told_in_what_a_cup_is_marked_in(tmp_path: Path):
    """Twelve fluid ounces at 10:1 are 10.9 and 1.09: nobody measures 0.0341 qt."""
    program = Finishlog(tmp_path)
    program.did("settings", "volume", "qt")
    program.did("product", "new", "hard", "--class", "conversion-varnish")
    said = program.did("mix", "hard", "10:1", "--jar", "12 fl oz").out
    assert "10.9 fl oz base, 1.09 fl oz hardener" in said
    assert "qt" not in said
    assert "makes about 2 qt" in program.did("mix", "hard", "10:1", "--jar", "2 qt").out


@pytest.mark.parametrize(
    "words",
    ["air hot", "heat", "heat hot", "room usual shop", "room usual shop x", "room heating shop x"],
)
def test_what_a_refusal_says_to_type_is_in_the_units_of_the_shop(tmp_path: Path, words: str):
    shop = Finishlog(tmp_path, now="2026-11-20T18:00+00:00")
    shop.did("room", "new", "shop")
    metric = shop(*words.split())
    shop.did("settings", "temperature", "F")
    by_the_foot = shop(*words.split())
    assert METRIC.search(metric.out + metric.err)
    assert BY_THE_FOOT.search(by_the_foot.out + by_the_foot.err)
    assert not METRIC.search(by_the_foot.out + by_the_foot.err)
