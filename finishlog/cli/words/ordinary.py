"""What stands on no rule of the trade: that nothing is asked, that it left, an act's own words."""

from __future__ import annotations

from finishlog.cli.words.said import Words, text

WORDS = {
    "told": Words(lambda f: text(f, "sentence"), lambda f: text(f, "remedy")),
    "not-asked": Words(""),
    "nothing-against": Words("nothing speaks against it"),
    "set-aside-free": Words(lambda f: "scuff it first" if text(f, "scuff") else "go on"),
    "set-aside-held": Words(
        lambda f: text(f, "needs") + (", then scuff" if text(f, "scuff") else "")
    ),
    "goes-with": Words(
        lambda f: f"{text(f, 'parts')}: {text(f, 'answer_is')}", cause="{said}: {short}"
    ),
    "glued-early": Words(
        lambda f: text(f, "part"),
        "look for prints from the cauls when they come off",
        cause="{said}: {short} ({waits})",
    ),
    "answered": Words(
        lambda f: text(f, "answer_is"), lambda f: text(f, "remedy"), cause="{said}: {long}"
    ),
    "fine": Words("fine"),
    "handed-over": Words("handed over"),
    "kept-board": Words("kept in the shop; its piece was handed over"),
}
