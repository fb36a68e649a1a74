"""Options that say more about one coat: how it went on, what it came from."""

from __future__ import annotations

from typing import Annotated

import typer

from finishlog.cli.answering.run import Run
from finishlog.core.log.words import Keeping
from finishlog.core.shop.trade_words import meant
from finishlog.errors import UsageFault

NoEdges = Annotated[bool, typer.Option("--no-edges", help="It was kept off the edges.")]
Passes = Annotated[
    int, typer.Option("--passes", metavar="N", help="So many thin passes in one sitting.")
]
Every = Annotated[
    str | None, typer.Option("--every", metavar="TIME", help="Between two passes: 30min.")
]
OfGlue = Annotated[str | None, typer.Option("--glue", help="Of a glue-up: finishlog glue list.")]
HandsOn = Annotated[str | None, typer.Option("--minutes", help="How long hands were on it: 45.")]
Flooded = Annotated[
    bool | None,
    typer.Option("--flooded/--thin", help="It was flooded on, to be wiped off; or put on thin."),
]
Scuffed = Annotated[
    bool | None, typer.Option("--scuffed/--not-scuffed", help="The film under it was scuffed.")
]
OfAir = Annotated[str | None, typer.Option("--air", metavar="'17C 58%'", help="Of a reading.")]
Stirred = Annotated[
    bool | None,
    typer.Option("--stirred/--not-stirred", help="Its can was stirred right before, or was not."),
]
WithTool = Annotated[
    str | None,
    typer.Option("--with", metavar="TOOL", help="What it went on with: gun1, 'gun1, air line'."),
]
OnlyNow = Annotated[
    bool | None,
    typer.Option("--only-now/--before-too", help="It took until now to be so; or it was before."),
]
WetFilm = Annotated[
    str | None, typer.Option("--film", help="Wet film as measured: 100um, 4mil, a pour 6mm.")
]
Stopped = Annotated[
    str | None,
    typer.Option(
        "--stopped", metavar="COVERED", help="It was broken off, and covers this: 'left half'."
    ),
]
KeptSo = Annotated[
    str | None,
    typer.Option(
        "--kept",
        metavar="HOW",
        help="Of store, stack, pack: stickers, stacked, wrapped, shut-in, standing, flat.",
    ),
]
Finished = Annotated[
    bool, typer.Option("--finished", help="It was not broken off: the whole was coated.")
]
FromCan = Annotated[
    str | None,
    typer.Option("--from", metavar="CAN", help="The can or mix it came from; or none."),
]
Amount = Annotated[
    str | None, typer.Option("--amount", help="How much went on in all: 200ml, 8 fl oz.")
]
MixAmounts = Annotated[
    list[str] | None,
    typer.Option(
        "--amount", metavar="PART:AMOUNT", help="Of a mix: flakes:90g; repeat. Of a coat: 200ml."
    ),
]


def read_amount(typed: str | None, here: Run) -> float | None:
    """Read how much of a finish went on, as ml; None: not said."""
    from finishlog.cli.typed.figures.amounts import volume

    return 1000 * volume(typed, here.units.volume) if typed else None


def kept_as(typed: str | None) -> Keeping | None:
    """Read how something is kept; None: not said."""
    found = meant(Keeping, typed) if typed is not None else ()
    if typed is not None and len(found) != 1:
        known = ", ".join(each.value for each in Keeping)
        raise UsageFault(f"{typed!r} is no way to keep it", f"--kept is one of {known}")
    return Keeping(found[0]) if found else None


def covered(stopped: str | None, *, finished: bool = False) -> str | None:
    """Read what a coat covered that was broken off; empty: it was finished, None: not said."""
    if finished and stopped is not None:
        raise UsageFault("a coat is finished or it was broken off", "say one of the two")
    if stopped is not None and not stopped.strip():
        raise UsageFault("it does not say what was covered", "--stopped 'left half'")
    return "" if finished else stopped and stopped.strip()
