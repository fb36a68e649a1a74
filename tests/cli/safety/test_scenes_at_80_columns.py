"""Scenes in which somebody could be hurt, as a terminal of 80 columns shows them.

Of each: what was done, and the screen that is looked at before harm. The danger stands in its first
rows, before any note and before all work that is offered, and what to do first beside it. Its twin
is done right, and says nothing of it. Shops, names and amounts are invented.

What they rest on: 29 CFR 1910.107 and NFPA's tip sheet (rags), self-heating times of fire
investigators (35 °C, a vehicle, dust), NIOSH Pocket Guide (vapour to a flame or a motor), 40 CFR
745 (lead), 40 CFR 751 (chlorinated stripper), NIOSH alerts 96-111 and 2006-149 (isocyanate); what
bleaches make with acid, and that deep epoxy runs hot, from memory; the rest common practice.
"""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from run import Finishlog

from tests.dangerous_words import wrongly_said

SHOP = """
room new shed --night 17C
room new kitchen --night 17C
room edit shed --has none
air 20C 50% --room shed
product new lac --class lacquer-sprayed
product new varnish --class alkyd-varnish
product new oil --class boiled-linseed-oil
product new duo --class waterborne-two-part
product new acry --class waterborne-clear
product new whitener --class bleach-chlorine
product new brightener --class bleach-oxalic
product new resin --class epoxy-pour
product new tin --class paste-wax
product new soft --class soap
product new seal --class shellac-2lb
product new 'walnut oil' --class tung-oil
steps new lacquered lac lac
steps new varnished varnish varnish
steps new oiled oil oil
steps new acrylic acry acry
steps new two-part duo sand duo
steps new white whitener acry
steps new bright brightener sand acry
steps new painted sand acry
steps new waxed seal tin
steps new soaped soft
part new job/door --species maple --room shed --steps lacquered
part new job/panel --species maple --room shed --steps oiled
part new job/top --species maple --room shed --steps varnished
part new job/shelf --species maple --room shed --steps two-part
part new job/board --species maple --room shed
part new job/lid --species maple --room shed --steps waxed
part new old/chair --old-finish paint --room shed --steps painted
part new old/stool --old-finish varnish --room shed
"""
MONDAY = "2026-05-04"
# In how many rows the danger begins, and what to do first stands.
NAMED_BY, DO_BY = 6, 10
# Behind the work that it is about, where it is a word before the can is opened.
NAMED_WITH_IT_BY = 8
# Where the screen goes on to other things.
WORK = re.compile(r"^(BENCH NOW|MIXED|LEAVE ALONE|STOPPED|safety: )")


@dataclass(frozen=True)
class Scene:
    """`typed`, a line with its hour before it (`+N` days later); the last is looked at.

    `danger` begins in the first rows, `do` says what to do first; `offered`: work stands before it,
    since it is about that work. `right` and `silent`: the twin, and what it does not say.
    """

    name: str
    typed: str
    danger: str
    do: str
    right: str
    silent: str
    offered: bool = False


SCENES = (
    Scene(
        "rags overnight: asked as the light goes out",
        "19:30 log panel oil\n19:50 log panel wipe\n21:30 leave",
        "oil: job/panel: open since",
        "water, or can",
        "19:30 log panel oil\n19:50 log panel wipe\n20:10 rags water\n21:30 leave",
        "not yet",
    ),
    Scene(
        "rags overnight: the next evening",
        "19:30 log panel oil\n+1 19:30 ready",
        "OVERDUE, where are they",
        "water, or can",
        "19:30 log panel oil\n20:00 rags spread\n+1 19:30 ready",
        "OVERDUE",
    ),
    Scene(
        "oil at 35 °C",
        "19:10 air 35C 40% --room shed\n19:12 log panel oil",
        "OVERDUE in this warmth",
        "spread flat outdoors, or water, or can",
        "19:10 air 20C 50% --room shed\n19:12 log panel oil",
        "OVERDUE",
    ),
    Scene(
        "lacquer beside a pilot light on record",
        "19:00 room edit shed --has pilot\n19:05 ready door",
        "a pilot light in shed, while",
        "waits for a pilot light in shed to be out",
        "19:00 room edit shed --has pilot\n19:02 room edit shed --out pilot\n19:05 ready door",
        "while nitrocellulose",
    ),
    Scene(
        "lacquer beside a heater on record",
        "19:00 room edit shed --heater paraffin\n"
        "19:01 heat tonight 19:00 till 23:00 20C --room shed\n19:05 ready door",
        "a flame or pilot light heats shed",
        "to be out (after 23:00)",
        "19:00 room edit shed --heater oil-filled\n19:01 heat tonight 19:00 till 23:00 20C"
        " --room shed\n19:05 ready door",
        "heats shed",
    ),
    Scene(
        "a glowing wire, and varnish",
        "19:00 room edit shed --heater infrared\n"
        "19:01 heat tonight 19:00 till 22:00 20C --room shed\n19:05 log top varnish",
        "a glowing wire heats shed",
        "put it out and air the room",
        "19:00 room edit shed --heater infrared\n"
        "19:01 heat tonight 16:00 till 18:00 20C --room shed\n19:05 log top varnish",
        "glowing wire heats",
    ),
    Scene(
        "thinned varnish in a shut room of 40 m³",
        "19:00 room edit shed --size 5x4x2m --exhaust none\n19:01 mix varnish varnish:3"
        " 'mineral spirits:1' --name pot\n19:02 safety shed --of varnish --amount 250ml",
        "NOT ENOUGH AIR",
        "outdoors; less at once",
        "19:00 room edit shed --size 5x4x2m --exhaust none\n"
        "19:02 safety shed --of varnish --amount 20ml",
        "NOT ENOUGH AIR",
    ),
    Scene(
        "laundry bleach where oxalic acid was",
        "19:00 log board brightener\n+1 19:00 part steps board --as white\n+1 19:01 ready board",
        "do not: an acid sets chlorine free from chlorine bleach: poison gas",
        "rinse what is in the wood out with plenty of water",
        "19:00 log board brightener\n+1 19:00 log board rinse\n+3 18:00 air 20C 50% --room shed\n"
        "+3 19:00 part steps board --as white\n+3 19:01 ready board",
        "poison gas",
    ),
    Scene(
        "a two-part finish sprayed without supplied air",
        "19:00 ready shelf",
        "never sprayed without supplied air",
        "gloves, sleeves, goggles",
        "19:00 part steps shelf --as acrylic\n19:01 ready shelf",
        "supplied air",
        offered=True,
    ),
    Scene(
        "the same, said of the act",
        "19:00 log shelf duo --from none --method spray",
        "do not spray duo without supplied air",
        "brush or roll it",
        "19:00 respirator hood --for supplied-air\n19:01 log shelf duo --from none --method spray",
        "do not spray",
    ),
    Scene(
        "sanded three days after a bleach that nobody rinsed",
        "19:00 part steps board --as bright\n19:01 log board brightener\n"
        "+3 19:00 air 20C 50% --room shed\n+3 19:01 ready board",
        "no sanding: brightener is in the wood",
        "rinse with plenty of water",
        "19:00 part steps board --as bright\n19:01 log board brightener\n19:20 log board rinse\n"
        "+3 19:00 air 20C 50% --room shed\n+3 19:01 ready board",
        "no sanding",
    ),
    Scene(
        "an old painted chair, before it is sanded dry",
        "19:00 ready chair",
        "an old paint of unknown age may hold lead",
        "have it tested",
        "19:00 check chair no-lead\n19:01 ready chair",
        "may hold lead",
    ),
    Scene(
        "the same chair, when lead was found",
        "19:00 check chair lead\n19:01 ready chair",
        "lead was found in an old paint",
        "leave it to certified people",
        "19:00 check chair no-lead\n19:01 ready chair",
        "certified people",
    ),
    Scene(
        "a cot handed over early",
        "19:00 project new crib --for child\n19:01 part new crib/rail --room shed\n"
        "19:02 log crib/rail acry\n+3 19:00 handover crib/rail",
        "it is for a child: acry has to be fully hard",
        "keep it here until then",
        "19:00 project new crib --for child\n19:01 part new crib/rail --room shed\n"
        "19:02 log crib/rail acry\n+1 19:00 air 20C 50% --room shed\n+90 19:00 handover crib/rail",
        "keep it here until then",
    ),
    Scene(
        "a cartridge mask of last year",
        "19:00 respirator half --for organic-vapour --at 2025-04-02\n19:01 ready door",
        "half: open for 397 d",
        "put new cartridges in before",
        "19:00 respirator half --for organic-vapour\n19:01 ready door",
        "half: open",
        offered=True,
    ),
    # Ten that no list names.
    Scene(
        "a stripper, and a pilot light in the kitchen next door",
        "19:00 room edit kitchen --has pilot --joined shed:door\n19:01 off stool",
        "a pilot light in kitchen, through the door, while the stripper",
        "put it out and let it cool",
        "19:00 room edit kitchen --has pilot --joined shed:door\n19:01 off stool --scraped",
        "a pilot light in kitchen",
    ),
    Scene(
        "the sander's bag after young varnish",
        "19:00 log top varnish\n19:10 rags water\n+4 19:00 air 20C 50% --room shed\n"
        "+4 19:01 log top sand\n+4 19:40 leave",
        "varnish (dust and sander bag): job/top: open since",
        "into water in a lidded metal can outdoors",
        "19:00 log door lac\n+4 19:00 air 20C 50% --room shed\n+4 19:01 log door sand\n"
        "+4 19:40 leave",
        "sander bag",
    ),
    Scene(
        "a parrot upstairs",
        "19:00 room edit shed --kind basement --lives bird\n19:01 ready door",
        "a bird lives there",
        "first they leave the house",
        "19:00 room edit shed --kind basement --lives bird\n"
        "19:01 part steps shelf --as acrylic\n19:02 ready shelf",
        "a bird lives there",
    ),
    Scene(
        "what hardens, closed for tomorrow",
        "19:00 mix acry acry:10 crosslinker:1 --name pot\n19:30 leave",
        "do not close it tight",
        "do not use it tomorrow",
        "19:00 mix varnish varnish:3 'mineral spirits:1' --name pot\n19:30 leave",
        "do not close it tight",
    ),
    Scene(
        "a tin of wax in turpentine, and its cloth",
        "19:00 log lid seal\n+2 19:00 air 20C 50% --room shed\n+2 19:01 log lid tin\n"
        "+2 19:20 leave",
        "tin: job/lid: open since",
        "into water in a lidded metal can outdoors",
        "19:00 part steps lid --as soaped\n19:01 log lid soft\n19:20 leave",
        "open since",
    ),
    Scene(
        "spraying in a basement beside the motor of a fan",
        "19:00 room edit shed --kind basement --has motor\n19:01 ready door",
        "a motor or switch in shed: it sparks",
        "nothing is switched on or off while the can is open",
        "19:00 room edit shed --has motor\n19:01 ready panel",
        "it sparks",
    ),
    Scene(
        "linseed rags on the seat of the car",
        "19:00 log panel oil\n19:20 rags",
        "in the sun or in a vehicle? then they are overdue at once",
        "spread flat outdoors, or water, or can",
        "19:00 log shelf acry\n19:20 rags",
        "vehicle",
    ),
    Scene(
        "epoxy in a deep cup",
        "19:00 mix resin resin:800ml hardener:400ml --name cup",
        "runs hot, smokes and may burn",
        "mix little, pour it out",
        "19:00 mix acry acry:800ml water:80ml --name cup",
        "runs hot",
        offered=True,
    ),
    Scene(
        "epoxy, before the can is opened",
        "19:00 product new glaze --class epoxy-seal\n19:01 steps new sealed glaze\n"
        "19:02 part steps board --as sealed\n19:03 ready board",
        "deep in the pot it runs hot",
        "nitrile gloves, sleeves, goggles",
        "19:02 part steps board --as acrylic\n19:03 ready board",
        "nitrile",
        offered=True,
    ),
    Scene(
        "walnut oil on a child's bowl",
        "19:00 project new bowl --for child\n19:01 part new bowl/bowl --room shed\n"
        "19:02 steps new nutty 'walnut oil'\n19:03 part steps bowl/bowl --as nutty\n"
        "19:04 ready bowl/bowl",
        "nut oil may harm the allergic",
        "ask who eats or sleeps there",
        "19:00 ready panel",
        "allergic",
        offered=True,
    ),
    Scene(
        "a two-part film sanded by machine the next day",
        "19:00 log shelf duo --from none\n+1 19:00 air 20C 50% --room shed\n"
        "+1 19:01 log shelf sand",
        "isocyanate that has not reacted is in its dust",
        "leave it to harden",
        "19:00 part steps shelf --as acrylic\n19:01 log shelf acry\n"
        "+1 19:00 air 20C 50% --room shed\n+1 19:01 log shelf sand",
        "isocyanate",
    ),
    Scene(
        "laundry bleach and vinegar in one pail",
        "19:00 mix whitener bleach:1 vinegar:1 --name pail",
        "leave now, call from outside",
        "keep everybody out",
        "19:00 mix whitener bleach:1 water:4 --name pail",
        "leave now",
    ),
    # Of other finishes, rooms, units and hours, invented when the screens stood.
    Scene(
        "wet varnish and a pilot light as the light goes out",
        "22:40 log top varnish\n22:50 rags water\n22:51 room edit shed --has pilot\n23:10 leave",
        "a pilot light in shed, while alkyd varnish gives off vapour that burns",
        "put it out now",
        "22:30 room edit shed --has pilot\n22:31 room edit shed --out pilot\n"
        "22:40 log top varnish\n22:50 rags water\n23:10 leave",
        "put it out now",
    ),
    Scene(
        "a hot coil with a fan, in °F",
        "+1 05:50 settings temperature F\n+1 05:51 product new spar --class spar-varnish\n"
        "+1 05:52 steps new s spar\n+1 05:53 part steps top --as s\n"
        "+1 05:54 room edit shed --heater fan\n"
        "+1 05:55 heat 5 May 5:30 till 9 68F --room shed\n+1 05:56 air 68F 50% --room shed\n"
        "+1 05:57 ready top",
        "a hot coil with a fan heats shed",
        "put it out and air the room",
        "+1 05:50 product new spar --class spar-varnish\n+1 05:51 steps new s spar\n"
        "+1 05:52 part steps top --as s\n+1 05:54 room edit shed --heater underfloor\n"
        "+1 05:55 heat 5 May 5:30 till 9 20C --room shed\n+1 05:56 air 20C 50% --room shed\n"
        "+1 05:57 ready top",
        "heats shed",
    ),
    Scene(
        "acid-cured finish sprayed in a garage built onto the house",
        "+1 10:00 product new cv --class conversion-varnish\n"
        "+1 10:01 room edit shed --kind attached --lives child\n+1 10:02 log board cv --from none",
        "shed is built onto the house: vapour goes through its door; a child lives there",
        "first they leave the house",
        "+1 10:00 product new cv --class conversion-varnish\n"
        "+1 10:01 room edit shed --kind outdoors\n+1 10:02 log board cv --from none",
        "lives there",
    ),
    Scene(
        "shellac washed off with alcohol, a stove behind a gap",
        "+1 10:00 log lid seal\n+1 11:00 room edit kitchen --has stove --joined shed:gap\n"
        "+1 11:01 off lid --washed --note 'denatured alcohol'",
        "a stove in kitchen, through a gap, while alcohol gives off vapour that burns",
        "put it out and let it cool",
        "+1 10:00 log lid seal\n+1 11:00 room edit kitchen --has stove --joined shed:gap\n"
        "+1 11:01 off lid --scraped",
        "gives off vapour",
    ),
    Scene(
        "hardwax oil at 96 °F",
        "+1 14:00 settings temperature F\n+1 14:01 product new hw --class hardwax-oil\n"
        "+1 14:02 air 96F 30% --room shed\n+1 14:03 log board hw",
        "OVERDUE in this warmth",
        "spread flat outdoors, or water, or can",
        "+1 14:00 settings temperature F\n+1 14:01 product new hw --class hardwax-oil\n"
        "+1 14:02 air 72F 40% --room shed\n+1 14:03 log board hw",
        "OVERDUE",
    ),
    Scene(
        "a day-old two-part film sanded off to the wood",
        "19:00 log shelf duo --from none\n+1 19:01 off shelf --sanded",
        "isocyanate that has not reacted is in its dust",
        "leave it to harden",
        "19:00 log shelf duo --from none\n+1 19:01 off shelf",
        "isocyanate that has not reacted",
    ),
    Scene(
        "a heat gun on a two-part film of last year",
        "19:00 log shelf duo --from none\n+200 19:01 off shelf --scraped --note 'heat gun'",
        "heat sets isocyanate free from duo, however hard it is",
        "no torch and no heat gun",
        "19:00 log shelf duo --from none\n+200 19:01 off shelf --scraped",
        "heat sets isocyanate free",
    ),
    Scene(
        "laundry bleach on wood that was fumed",
        "19:00 product new fume --class ammonia-fume\n19:01 log board fume\n"
        "+1 19:00 part steps board --as white\n+1 19:01 ready",
        "do not: ammonia and chlorine bleach make chloramine: poison gas",
        "rinse what is in the wood out with plenty of water",
        "19:00 product new fume --class ammonia-fume\n19:01 log board fume\n"
        "+1 18:00 log board rinse\n+4 18:00 air 20C 50% --room shed\n"
        "+4 19:00 part steps board --as white\n+4 19:01 ready",
        "poison gas",
    ),
    Scene(
        "an old door sanded off to the wood",
        "+1 10:00 part new old/gate --old-finish unknown --room shed\n+1 10:01 off gate --sanded",
        "an old finish of unknown age may hold lead",
        "have it tested",
        "+1 10:00 log door acry\n+1 11:00 off door --sanded",
        "may hold lead",
    ),
)


def lines(typed: str) -> Iterator[tuple[str, list[str]]]:
    """Yield each line's time and its words."""
    for line in typed.splitlines():
        words = shlex.split(line)
        days = int(words.pop(0)) if words[0].startswith("+") else 0
        month, day = divmod(3 + days, 30)
        hour = words.pop(0)
        yield f"2026-{5 + month:02}-{day + 1:02}T{hour}:00+01:00", words


def look(shop: Finishlog, typed: str) -> list[str]:
    """Type it; return the rows of the last screen."""
    *before, (now, asked) = lines(typed)
    for then, words in before:
        assert wrongly_said(shop.did(*words, now=then).out) == []
    return shop.screen(*asked, now=now)


def row_of(rows: list[str], words: str) -> int | None:
    """Return the row in which some words begin, wherever they wrap."""
    text = "".join(" ".join(row.split()) + " " for row in rows)
    at = text.find(words)
    ends = 0
    for n, row in enumerate(rows):
        ends += len(" ".join(row.split())) + 1
        if 0 <= at < ends:
            return n + 1
    return None


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now=f"{MONDAY}T18:30:00+01:00").played(SHOP)


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_the_danger_stands_in_the_first_rows_and_what_to_do_first(shop: Finishlog, scene: Scene):
    rows = look(shop, scene.typed)
    shown = "\n".join(rows)
    assert max(map(len, rows)) <= 80, shown
    danger, do = row_of(rows, scene.danger), row_of(rows, scene.do)
    assert danger is not None, shown
    assert danger <= (NAMED_WITH_IT_BY if scene.offered else NAMED_BY), shown
    assert do is not None, shown
    assert do <= DO_BY, shown
    work = next((n for n, row in enumerate(rows, 1) if WORK.match(row)), len(rows) + 1)
    assert scene.offered or danger < work, shown
    assert wrongly_said(" ".join(shown.split())) == []


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_done_right_it_is_not_said(shop: Finishlog, scene: Scene):
    assert scene.silent not in " ".join(" ".join(look(shop, scene.right)).split())


def test_the_reader_of_rows_finds_words_that_wrap():
    assert row_of(["a b", "  c   d", "e"], "b c d") == 1
    assert row_of(["a b", "  c   d", "e"], "d e") == 2
    assert row_of(["a b"], "x") is None
