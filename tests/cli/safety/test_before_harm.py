"""Ten evenings, each answered before anybody is hurt, and what to do stands in the answer.

Shops, names and dates are invented. Each scene is typed as a person types it; its last command is a
question, or the act that is being done, and the answer names the remedy. Its twin is done right.
The others stand in `test_scenes_at_80_columns`.
What they rest on: 29 CFR 1910.107 and NFPA's tip sheet (rags), 40 CFR 745 (lead), 40 CFR 751
(methylene chloride), NIOSH alerts 96-111 and 2006-149 (isocyanate); what chlorine bleach makes with
acid, ammonia and alcohol, from memory.
"""

from __future__ import annotations

import re
import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new shed --night 17C
air 20C 50% --room shed
product new whitener --class bleach-chlorine
product new brightener --class bleach-oxalic
product new duo --class waterborne-two-part
product new acry --class waterborne-clear
product new lac --class lacquer-brushed
product new oil --class tung-oil
product new varnish --class alkyd-varnish
product new shel --class shellac-2lb
steps new oiled oil oil
steps new lacquered lac lac
steps new duoed duo duo
steps new bleached whitener shel
part new job/board --species oak --room shed
part new job/panel --species oak --room shed --steps oiled
part new job/door --species oak --room shed --steps lacquered
part new job/shelf --species oak --room shed --steps duoed
part new job/leg --species maple --room shed --steps bleached
part new old/chair --old-finish paint --room shed
part new old/stool --old-finish varnish --room shed
"""


@dataclass(frozen=True)
class Scene:
    """What is typed, `+DAYS` before it later than the first; what is said; the twin, in silence."""

    name: str
    typed: str
    says: tuple[str, ...]
    right: str
    silent: str


SCENES = (
    Scene(
        "a bleach where ammonia was",
        "note board 'fumed with ammonia'\n+1 log board whitener",
        ("stop:", "chloramine"),
        "note board 'fumed with ammonia'\n+1 log board rinse\n+2 log board whitener",
        "chloramine",
    ),
    Scene(
        "a bleach where acid was",
        "log board brightener\n+1 log board whitener",
        ("leave now", "chlorine"),
        "log board brightener\n+1 log board rinse\n+3 log board whitener",
        "leave now",
    ),
    Scene(
        "sanded three days after a bleach that was not rinsed",
        "log board brightener\n+3 log board sand",
        ("stop: ", "no sanding: brightener is in the wood"),
        "log board brightener\nlog board rinse\n+3 log board sand",
        "no sanding",
    ),
    Scene(
        "an old painted chair sanded dry",
        "log chair sand",
        ("stop: chair: an old paint", "have it tested", "no dry or power sanding"),
        "check chair no-lead\nlog chair sand",
        "have it tested",
    ),
    # Five that no list names.
    Scene(
        "shellac over laundry bleach that nobody rinsed",
        "log leg whitener\n+2 log leg shel",
        ("stop:", "chloroform"),
        "log leg whitener\nlog leg rinse\n+2 log leg shel",
        "chloroform",
    ),
    Scene(
        "a torch on an old varnish",
        "off stool --scraped --note 'heat gun, dry'",
        ("may hold lead", "have it tested", "no torch"),
        "check stool no-lead\noff stool --scraped --note 'heat gun, dry'",
        "may hold lead",
    ),
    Scene(
        "an old stripper from the back of the shelf",
        "off stool --note 'dichloromethane stripper'",
        ("stop: no chlorinated solvent in shed", "leave it shut"),
        "off stool --note 'alcohol'",
        "chlorinated",
    ),
    Scene(
        "tung oil thinned with turpentine beside a stove",
        "room edit shed --heater kerosene\nmix oil oil:4 turpentine:1 --name thin\n"
        "heat tonight 19:00 till 23:00 20C --room shed\nlog panel oil --from thin",
        ("stop: ", "a flame or pilot light heats shed"),
        "room edit shed --heater oil-filled\nmix oil oil:4 turpentine:1 --name thin\n"
        "heat tonight 19:00 till 23:00 20C --room shed\nlog panel oil --from thin",
        "heats shed",
    ),
    Scene(
        "a two-part film sanded the next day",
        "log shelf duo --from none\n+1 log shelf sand",
        ("no dry or power sanding without supplied air", "has not reacted"),
        "log shelf duo --from none\n+1 log shelf mask",
        "has not reacted",
    ),
    Scene(
        "oil whose rags have no place to go: said before the can is opened",
        "ready panel",
        ("BEFORE YOU OPEN IT", "a lidded metal can with water in it stands there"),
        "ready board",
        "BEFORE YOU OPEN IT",
    ),
)


def play(shop: Finishlog, lines: str) -> str:
    """Type it; return what the last line answers."""
    said = ""
    for line in lines.splitlines():
        days, words = 0, shlex.split(line)
        if words[0].startswith("+"):
            days, words = int(words[0]), words[1:]
        month, day = divmod(3 + days, 30)
        now = f"2026-{5 + month:02}-{day + 1:02}T19:30:00+00:00"
        said = shop.did(*words, now=now).out
    return said


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-05-04T19:00:00+00:00").played(SHOP)


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_it_is_said_before_harm(shop: Finishlog, scene: Scene):
    said = re.sub(r"\s+", " ", play(shop, scene.typed))
    assert [words for words in scene.says if words not in said] == [], said


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_done_right_nothing_of_it_is_said(shop: Finishlog, scene: Scene):
    assert scene.silent not in re.sub(r"\s+", " ", play(shop, scene.right))


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_what_may_hurt_stands_before_the_notes(shop: Finishlog, scene: Scene):
    """The danger is read first: no safety note, and no advice of the work, comes before it."""
    said = play(shop, scene.typed)
    first = min((said.find(words) for words in scene.says if words in said), default=-1)
    assert first < said.find("safety: ") or "safety: " not in said, said
