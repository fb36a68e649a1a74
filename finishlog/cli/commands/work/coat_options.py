"""Options that say more about one coat: how it went on, what it came from."""

from __future__ import annotations

from typing import Annotated

import typer

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
WetFilm = Annotated[str | None, typer.Option("--film", help="Wet film as measured: 100um, 4mil.")]
FromCan = Annotated[
    str | None,
    typer.Option("--from", metavar="CAN", help="The can or mix it came from; or none."),
]
MixAmounts = Annotated[
    list[str] | None,
    typer.Option("--amount", metavar="PART:AMOUNT", help="Of a mix: flakes:90g; repeat."),
]
