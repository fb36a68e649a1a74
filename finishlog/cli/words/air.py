"""What the rules about the air say to a coat, and about what burns in it."""

from __future__ import annotations

from finishlog.cli.words.said import Words, each_of, measured, number, text, wanted
from finishlog.core.air.heater import WHAT, HeaterKind
from finishlog.core.air.place import CALLED, Fixture, Lives, Opening, PlaceKind
from finishlog.core.commands import Do
from finishlog.core.findings import (
    AIR_UNREAD,
    AT_HOME,
    BLUSH,
    FLAME,
    HEATER_UNTOLD,
    NIGHT_UNTOLD,
    NO_FLAME,
    PLACE_UNTOLD,
    SIZE_UNTOLD,
    SPARKS,
    Finding,
)
from finishlog.core.measure.quantities import apart, celsius, typed_celsius
from finishlog.core.published.chemistry import InAFlame


def _blush(of: Finding) -> str:
    passes = of.value("passes") is not None
    other = (
        f", though {number(of, 'rh'):.0f} % RH passes the {number(of, 'passes'):.0f} % rule"
        if passes
        else ""
    )
    return (
        f"risk of blush: air is only {measured(of)} above its dew point, the rule asks "
        f"{wanted(of)}{other}"
    )


def _night_untold(of: Finding) -> str:
    how = "without its heater" if text(of, "heater") else "at night"
    hours = of.value("first_h")
    first = (
        f"for its first {number(of, 'first_h'):.0f} h"
        if hours is not None
        else ("until it is tack-free")
    )
    return (
        f"how cold {text(of, 'in_room') or 'the room'} gets {how} was not told; {text(of, 'of')} "
        f"needs {wanted(of)} {first}"
    )


def _hot(of: Finding) -> str:
    change = of.value("change_c")
    if change is None:
        trend = "does it rise or fall? read it again in an hour"
    else:
        by = number(of, "change_c")
        trend = f"it {'rises' if by > 0 else 'falls' if by < 0 else 'stays'}"
    return (
        f"{measured(of)} is hot: a film skins over before it has flowed out, and its hours get no "
        f"shorter; {trend}"
    )


def _burns(of: Finding) -> str:
    names = each_of(of, "names") or ("the finish",)
    does = "is poison in a flame" if text(of, "does") == InAFlame.POISON else "burns"
    return f"{' and '.join(names)} {'give' if names[1:] else 'gives'} off vapour that {does}"


def _heater(of: Finding) -> str:
    return f"{WHAT[HeaterKind(text(of, 'kind'))]} heats {text(of, 'in_room')} while {_burns(of)}"


def _where(of: Finding) -> str:
    """Say where it stands: in the room, or in one that vapour comes to."""
    through = text(of, "through")
    by = f", {_LEADS[Opening(through)]}" if through else ""
    return f"in {text(of, 'in_room')}{by}"


_LEADS = {
    Opening.DOOR: "through the door",
    Opening.GAP: "through a gap",
    Opening.DUCT: "through a duct",
}


def _things(of: Finding) -> str:
    return " and ".join(CALLED[Fixture(each)] for each in each_of(of, "what"))


def _flame(of: Finding) -> str:
    return f"{_things(of)} {_where(of)}, while {_burns(of)}"


def _out(of: Finding) -> str:
    what = ",".join(each_of(of, "what"))
    return (
        "before the can is opened put it out and let it cool, then say so: "
        f"{Do.ROOM_EDIT(text(of, 'in_room'), out=what)}; lit again only when the film is tack-free "
        "and the room was aired: no smell is no proof"
    )


_PLACES = {
    PlaceKind.BASEMENT: "is a basement: vapour lies on its floor and rises into the house",
    PlaceKind.ATTACHED: "is built onto the house: vapour goes through its door",
    PlaceKind.DWELLING: "is lived in",
}
_WHO = {
    Lives.CHILD: "a child",
    Lives.PREGNANT: "somebody pregnant",
    Lives.BIRD: "a bird",
    Lives.ASTHMA: "somebody with asthma",
}


def _at_home(of: Finding) -> str:
    kind, who = text(of, "kind"), [_WHO[Lives(each)] for each in each_of(of, "lives")]
    place = _PLACES.get(PlaceKind(kind), "leads to people") if kind else "leads to people"
    lives = f"; {' and '.join(who)} {'live' if who[1:] else 'lives'} there" if who else ""
    return f"{text(of, 'in_room')} {place}{lives}"


def _out_of_the_house(of: Finding) -> str:
    first = "first they leave the house; " if each_of(of, "lives") else ""
    if text(of, "sprayed"):
        return (
            f"{first}spray outdoors, or in a booth with an exhaust of its own that a licensed "
            "installer set up; no flame, pilot, switch or motor in the mist"
        )
    return f"{first}coat it outdoors; else the door shut and sealed, the air let out to the street"


def _heater_untold(of: Finding) -> str:
    if each_of(of, "what"):
        return (
            f"a heater stands {_where(of)} while {_burns(of)}, and not told of what kind: nothing "
            "that burns or glows"
        )
    if not each_of(of, "names"):
        return f"what heats {text(of, 'in_room')} is not on record"
    return (
        f"a heater is on record in {text(of, 'in_room')} while {_burns(of)}, and not of what kind: "
        "nothing that burns or glows"
    )


WORDS = {
    "warms-under-film": Words(
        lambda f: (
            f"the air rose to {measured(f, 0)}, {apart(number(f, 'rises'))} warmer, "
            f"{'over a wet film' if text(f, 'wet') else 'before this coat'}: the pores of "
            f"{text(f, 'wood')} breathe out, and it bubbles"
        ),
        "coat open pores while the air cools, and look for bubbles while they can be brushed out",
    ),
    "not-among-people": Words(
        "only where nobody lives, eats or sleeps, with its air let out: it gives off vapour for "
        "days"
    ),
    "carried-wet": Words("once it is dust-free; carried before it takes up dust"),
    "kept-warm": Words(
        "kept so all the time by a sealed or water-heated source, with no open rags in the room; "
        f"{NO_FLAME}"
    ),
    "wood-may-sweat": Words(
        f"the wood may still be too cold and sweat: measure it first: {Do.SURFACE()}"
    ),
    AIR_UNREAD: Words(
        lambda f: (
            "the room's air was not read in the last hours"
            + (f", but {measured(f)} ago" if f.measured else "")
        ),
        f"log it: {Do.AIR(typed_celsius(17), '58%')}",
    ),
    "too-cold": Words(
        lambda f: f"{measured(f)} is below the {wanted(f)} that {text(f, 'of')} needs",
        f"warm the room and the part first: {NO_FLAME}",
    ),
    "too-hot": Words(
        lambda f: f"{measured(f)} is above the {wanted(f)} limit for {text(f, 'of')}",
        "wait for a cooler hour",
    ),
    "too-damp": Words(
        lambda f: f"{number_of(f)} % RH is above the {limit_of(f)} % limit for {text(f, 'of')}",
        "dry the air or wait",
    ),
    "humidity-supposed": Words(
        lambda f: (
            f"how damp it is was not read, {number_of(f)} % RH is supposed; {text(f, 'of')} goes "
            f"on up to {limit_of(f)} %"
        ),
        lambda f: f"read it: {Do.AIR(typed_celsius(number(f, 'c')), 'HUMIDITY')}",
    ),
    "near-dew-point": Words(
        lambda f: (
            f"wood at about {measured(f)} is less than {wanted(f)} above the dew point of "
            f"{celsius(number(f, 'dew_c'), 1)}"
        ),
        f"warm the wood or dry the air: {NO_FLAME}",
    ),
    BLUSH: Words(_blush, "spray a sample first, or wait for drier air"),
    "wood-warms-up": Words(
        lambda f: (
            f"the wood came from {measured(f)} less than {number(f, 'within_h'):.0f} h ago: it may "
            f"be too cold yet for {text(f, 'of')}, and sweat"
        ),
        "let the part and the can warm up for some hours, until neither feels cold",
        lambda f: f"the wood is still cold from where it stood: {measured(f)}",
        "the wood to warm up",
    ),
    "wood-too-cold": Words(
        lambda f: (
            f"the wood is about {measured(f)}, colder than the room and than the {wanted(f)} that "
            f"{text(f, 'of')} needs"
        ),
        "let it warm up; to be sure measure it: "
        f"{Do.SURFACE('PART', typed_celsius(15))}; {NO_FLAME}",
    ),
    "cold-night-harms": Words(
        lambda f: (
            f"the room's coldest night is {measured(f, 0)}; {text(f, 'of')} needs {wanted(f)} for "
            f"its first {number(f, 'first_h'):.0f} h"
        ),
        f"keep the heat on tonight, or coat in the morning: {NO_FLAME}",
    ),
    "cold-night-halts": Words(
        lambda f: (
            f"the room goes to {measured(f, 0)} before it is tack-free; {text(f, 'of')} needs "
            f"{wanted(f)}, and stands still"
        ),
        f"keep the heat on, or coat in the morning: {NO_FLAME}",
    ),
    NIGHT_UNTOLD: Words(
        _night_untold,
        lambda f: f"say it once: {Do.ROOM_NIGHT(text(f, 'in_room'), typed_celsius(8))}",
    ),
    "hot": Words(_hot, "thin coats, out of the sun, early in the morning or while it gets cooler"),
    "dew-tonight": Words(
        lambda f: (
            f"dew may fog it before it is tack-free: the room goes to {measured(f)}, the dew point "
            f"of this air is {celsius(number(f, 'dew_c'), 1)}"
        ),
        f"keep it warm until then, or begin early in the day: {NO_FLAME}",
    ),
    "heater": Words(
        _heater,
        "warm the room first, put it out and air the room, then open the can; on again only when "
        "the film is tack-free, or the cloth outside: no smell is no proof",
        waits=lambda f: f"{WHAT[HeaterKind(text(f, 'kind'))]} to be out",
    ),
    FLAME: Words(_flame, _out, waits=lambda f: f"{_things(f)} {_where(f)} to be out"),
    SPARKS: Words(
        lambda f: f"{_things(f)} {_where(f)}: it sparks, while {_burns(f)}",
        "nothing is switched on or off while the can is open, until the film is tack-free",
    ),
    AT_HOME: Words(_at_home, _out_of_the_house),
    PLACE_UNTOLD: Words(
        lambda f: (
            f"what burns or sparks in {text(f, 'in_room')}"
            f"{', and how big it is,' if text(f, 'size') else ''} was not told"
        ),
        lambda f: f"pilot, stove, heater, motor or none: {_place_told(f)}",
    ),
    SIZE_UNTOLD: Words(
        lambda f: f"how big {text(f, 'in_room')} is was not told: what its air comes to is unknown",
        lambda f: f"{Do.ROOM_EDIT(text(f, 'in_room'), size='SIZE')}",
    ),
    HEATER_UNTOLD: Words(
        _heater_untold,
        lambda f: f"{Do.ROOM_EDIT(text(f, 'in_room'), heater='sealed')}, fan, glow or flame",
    ),
}


def _place_told(of: Finding) -> str:
    name = text(of, "in_room")
    told = Do.ROOM_EDIT(name, has="none")
    return f"{Do.ROOM_EDIT(name, has='none', size='SIZE') if text(of, 'size') else told}"


def number_of(of: Finding) -> str:
    """Word a humidity as read."""
    assert of.measured is not None
    return f"{of.measured.value:.0f}"


def limit_of(of: Finding) -> str:
    """Word a limit of humidity."""
    assert of.wanted is not None
    return f"{of.wanted.value:.0f}"
