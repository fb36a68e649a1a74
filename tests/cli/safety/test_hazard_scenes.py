"""Ten evenings on which somebody could be hurt, and their twins on which all is done right.

Shops, names and amounts are invented. A scene is what is typed; what must be seen stands in the
answer to its last command, before anything else that it says of the work.
"""

from __future__ import annotations

import shlex
from dataclasses import dataclass
from pathlib import Path

import pytest
from run import Finishlog

SHOP = """
room new cellar --night 60F
air 68F 50% --room cellar
settings temperature F
settings volume 'fl oz'
product new sunburst --class bleach-chlorine
product new deckwash --class bleach-oxalic
product new duo --class bleach-two-part
product new jet --class water-dye --note "steel wool in vinegar"
product new spar --class spar-varnish
product new conv --class conversion-varnish
product new lac --class lacquer-brushed
product new acry --class waterborne-clear
product new tungo --class tung-oil
product new shine --class paste-wax
part new bar/counter --species jatoba --room cellar
part new bar/rail --species beech --room cellar
part new bar/shelf --species cocobolo --room cellar
"""


@dataclass(frozen=True)
class Scene:
    """What was done; what the last answer must say; what it must not say in the twin."""

    name: str
    typed: str
    says: tuple[str, ...]
    right: str
    silent: tuple[str, ...]


SCENES = (
    Scene(
        "a dye of iron and vinegar over laundry bleach",
        "log counter sunburst\nlog counter jet",
        ("leave now, call from outside",),
        "log counter sunburst\nlog counter rinse\nlog counter jet",
        ("leave now",),
    ),
    Scene(
        "a mix of a mix of bleach goes into the oxalic",
        "mix sunburst bleach:1 water:9 --name pail\nmix acry pail:1 water:1 --name tub\n"
        "mix deckwash tub:3 oxalic:1",
        ("leave now, call from outside",),
        "mix sunburst bleach:1 water:9 --name pail\nmix deckwash oxalic:1 water:15",
        ("leave now", "stop:"),
    ),
    Scene(
        "peroxide stirred into tung oil",
        "mix tungo 'tung oil:8 fl oz' 'hydrogen peroxide:1 fl oz'",
        ("leave now", "catch fire by themselves"),
        "mix tungo 'tung oil:8 fl oz' 'mineral spirits:1 fl oz'",
        ("leave now", "stop:"),
    ),
    Scene(
        "gasoline in the wax",
        "mix shine wax:2 gasoline:1",
        ("stop: petrol", "outdoors"),
        "mix shine wax:2 turpentine:1",
        ("stop:",),
    ),
    Scene(
        "lacquer thinner in spar varnish",
        "mix spar spar:4 'lacquer thinner:1'",
        ("stop: lacquer thinner is no thinner for this",),
        "mix lac lac:4 'lacquer thinner:1'",
        ("stop:",),
    ),
    Scene(
        "a crosslinker in the acrylic, the lid on it for tomorrow",
        "mix acry acry:16 'XL crosslinker:1'\nleave",
        ("do not close it tight, do not use it tomorrow",),
        "mix acry acry:16 water:1\nleave",
        ("do not close it tight", "hardens"),
    ),
    Scene(
        "both halves of a bleach in one jar",
        "mix duo 'part a:1' 'part b:1'\nleave",
        ("NEVER CLOSE IT",),
        "mix spar spar:4 naphtha:1\nleave",
        ("NEVER CLOSE IT",),
    ),
    Scene(
        "dry sanding of oxalic acid that was never rinsed",
        "log rail deckwash\nlog rail sand",
        ("no sanding: deckwash is in the wood", "stop: "),
        "log rail deckwash\nlog rail rinse\nlog rail sand",
        ("no sanding", "leave now"),
    ),
    Scene(
        "spar varnish in a cellar with a kerosene heater on",
        "room edit cellar --heater kerosene\nheat tonight 8pm till 11pm 68F --room cellar\n"
        "log rail spar",
        ("stop: ", "a flame or pilot light heats cellar"),
        "room edit cellar --heater oil-filled\nheat tonight 8pm till 11pm 68F --room cellar\n"
        "log rail spar",
        ("heats cellar",),
    ),
    Scene(
        "acid-cured finish with a brush, at the bench",
        "log shelf conv",
        ("formaldehyde",),
        "log shelf acry",
        ("formaldehyde", "isocyanate"),
    ),
    Scene(
        "dust of a rosewood, and a toy made of it",
        "part new 'gifts/toy boat' --species cocobolo\nlog 'toy boat' sand",
        ("rashes or asthma", "P2/P3, N95 or better"),
        "log shelf mask",
        ("rashes", "P2/P3"),
    ),
)


def play(shop: Finishlog, lines: str) -> str:
    """Type it; what is logged is a day later each time."""
    said, day = "", 4
    for line in lines.strip().splitlines():
        words = shlex.split(line)
        logs = words[0] == "log"
        said = shop.did(*words, now=f"2026-05-{day:02}T19:30:00+00:00" if logs else shop.now).out
        day += logs
    return said


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return Finishlog(tmp_path, now="2026-05-04T19:00:00+00:00").played(SHOP)


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_the_danger_is_said(shop: Finishlog, scene: Scene):
    said = play(shop, scene.typed)
    assert [words for words in scene.says if words not in said] == [], said
    if "leave now" in scene.says[0]:
        assert said.startswith("stop: leave now, call from outside")


@pytest.mark.parametrize("scene", SCENES, ids=lambda s: s.name)
def test_done_right_no_alarm_is_raised(shop: Finishlog, scene: Scene):
    said = play(shop, scene.right)
    assert [words for words in scene.silent if words in said] == [], said
