"""The wood itself: moisture, surface, movement."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from finishlog.cli.answering.answer import Answered
from finishlog.cli.answering.asking import last_said, settled
from finishlog.cli.answering.command import command
from finishlog.cli.answering.options import At, FaceOption, Where, one_face
from finishlog.cli.answering.run import Run
from finishlog.core.log.words import Found, Test
from finishlog.core.shop.trade_words import is_said, several_words
from finishlog.errors import UsageFault

if TYPE_CHECKING:
    from finishlog.acts.air.moisture import Moist
    from finishlog.acts.air.surface import Surface
    from finishlog.cli.answering.run import Run

_LOOK = "look doors clean, or look doors glue --where 'left edge'"

# `-2C` is a temperature.
_SETTINGS = {"surface": {"ignore_unknown_options": True}}


def moisture(
    here: Run,
    words: Annotated[
        list[str] | None,
        typer.Argument(metavar="[PART]... [MOISTURE]", help="Parts, then what the meter shows."),
    ] = None,
    air: Annotated[
        str | None,
        typer.Option("--air", metavar="'20C 50%'", help="Only tell what wood settles at in it."),
    ] = None,
    face: FaceOption = None,
    at: At = None,
) -> Answered:
    """Log how moist the wood of parts is, against what it settles at in the room's air."""
    from finishlog.acts.air.moisture import log_moisture
    from finishlog.cli.pages.shop.wood_page import moisture_page
    from finishlog.cli.typed.figures.measures import moisture as read_moisture

    typed = tuple(words or ())
    if air is not None:
        if typed or face or at:
            raise UsageFault(
                "--air asks what wood settles at, and logs nothing", "leave the rest out"
            )
        return _settles(here, air)
    if len(typed) < 2:
        raise UsageFault("a moisture needs a part and percent", "finishlog moisture doors 11%")
    named, percent = last_said(typed, read_moisture, "moisture")
    when = here.moment(at)

    def attempt(parts: tuple[str, ...]) -> Moist:
        return log_moisture(
            here.context, parts=parts, face=one_face(face), moisture_pct=percent, at=when
        )

    answer = settled(here, named, attempt)
    return Answered(answer, lambda: moisture_page(answer, here.clock))


def weigh(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="PART... WEIGHT", help="A piece, or several together, then 642g, 1 lb 6 oz."
        ),
    ],
    at: At = None,
) -> Answered:
    """Log what a piece weighs: weights that stand still for weeks tell that the wood is dry."""
    from finishlog.acts.air.weigh import Weighed, log_weight
    from finishlog.cli.pages.shop.wood_page import weigh_page
    from finishlog.cli.typed.figures import amounts

    if len(words) < 2:
        raise UsageFault("a weight needs a part and what it weighs", "finishlog weigh bowl 642g")
    typed = several_words(words, lambda word: word[:1].isdigit() and " " in word)
    named, grams = last_said(typed, lambda word: amounts.weight(word, here.units.weight), "weigh")
    when = here.moment(at)

    def attempt(parts: tuple[str, ...]) -> Weighed:
        return log_weight(here.context, parts=parts, weight_g=grams, at=when)

    answer = settled(here, named, attempt)
    return Answered(answer, lambda: weigh_page(answer, here.clock))


def _settles(here: Run, typed: str) -> Answered:
    from finishlog.asks.things.wood_air import wood_air
    from finishlog.cli.pages.shop.wood_page import settles_page
    from finishlog.cli.typed.figures.measures import air as read_air

    answer = wood_air("", read_air(typed, here.temperature))
    return Answered(answer, lambda: settles_page(answer))


def look(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(
            metavar="PART... SEEN", help="Parts, then clean, or glue, scratches or snipe."
        ),
    ],
    face: FaceOption = None,
    where: Where = "",
    at: At = None,
) -> Answered:
    """Log a look at bare wood, wiped with spirit, under a light from the side: before colour."""
    from finishlog.acts.film.check import Checked, found_word, log_check, test_word
    from finishlog.cli.pages.evening.log_page import check_page

    if len(words) < 2:
        raise UsageFault("a look needs a part and what was seen", f"finishlog {_LOOK}")
    typed = several_words(words, lambda word: is_said(Found, word))
    parts, seen = last_said(typed, found_word, "look")
    test, when = test_word(Test.LOOK, seen), here.moment(at)

    def attempt(named: tuple[str, ...]) -> Checked:
        return log_check(
            here.context,
            parts=named,
            face=one_face(face),
            found=seen,
            test=test,
            place=where,
            at=when,
        )

    answer = settled(here, parts, attempt, may_make=True)
    return Answered(answer, lambda: check_page(answer, here.clock))


def surface(
    here: Run,
    words: Annotated[
        list[str],
        typer.Argument(metavar="PART... TEMPERATURE", help="Parts, then how warm they are: 14C."),
    ],
    face: FaceOption = None,
    at: At = None,
) -> Answered:
    """Log how warm the wood itself is; for two hours coats are judged by it."""
    from finishlog.acts.air.surface import log_surface
    from finishlog.cli.pages.shop.wood_page import surface_page
    from finishlog.cli.typed.figures.measures import temperature

    if len(words) < 2:
        raise UsageFault("a surface needs a part and degrees", "finishlog surface doors 14C")
    named, celsius = last_said(words, lambda word: temperature(word, here.temperature), "surface")
    when = here.moment(at)

    def attempt(parts: tuple[str, ...]) -> Surface:
        return log_surface(
            here.context, parts=parts, face=one_face(face), temperature_c=celsius, at=when
        )

    answer = settled(here, named, attempt)
    return Answered(answer, lambda: surface_page(answer, here.context))


def movement(
    here: Run,
    wood: Annotated[str, typer.Argument(metavar="SPECIES", help="ash, cherry, red-oak.")],
    width: Annotated[str, typer.Argument(metavar="WIDTH", help="300mm, 9.15in.")],
    start: Annotated[
        str,
        typer.Option("--from", metavar="MOISTURE", help="8%, or the air it stands in: '20C 35%'."),
    ],
    end: Annotated[
        str, typer.Option("--to", metavar="MOISTURE", help="11%, or another air: '22C 65%'.")
    ],
    radial: Annotated[
        bool, typer.Option("--radial", help="Quarter-sawn; else flat-sawn is taken.")
    ] = False,
) -> Answered:
    """Tell how much a width of wood moves from one moisture, or one season's air, to another."""
    from finishlog.asks.things.movement import movement as answer_movement
    from finishlog.cli.pages.shop.wood_page import movement_page
    from finishlog.cli.typed.figures.amounts import width as read_width
    from finishlog.cli.typed.figures.measures import moisture_or_air

    unit = here.temperature
    width_mm, length = read_width(width)
    answer = answer_movement(
        here.facts,
        wood,
        width_mm,
        moisture_or_air(start, unit),
        moisture_or_air(end, unit),
        radial=radial,
    )
    return Answered(answer, lambda: movement_page(answer, here.facts.sources, length))


def register(app: typer.Typer) -> None:
    """Add the commands of this group."""
    for each in (look, moisture, weigh, surface, movement):
        command(app, each.__name__, settings=_SETTINGS.get(each.__name__))(each)
