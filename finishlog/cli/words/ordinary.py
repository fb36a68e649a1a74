"""What stands on no rule of the trade: that nothing is asked, that it is set aside or left."""

from __future__ import annotations

from finishlog.cli.words.said import Words, text

WORDS = {
    "not-asked": Words(""),
    "nothing-against": Words("nothing speaks against it"),
    "set-aside-free": Words(lambda f: "scuff it first" if text(f, "scuff") else "go on"),
    "set-aside-held": Words(
        lambda f: text(f, "needs") + (", then scuff" if text(f, "scuff") else "")
    ),
    "fine": Words("fine"),
    "handed-over": Words("handed over"),
    "kept-board": Words("kept in the shop; its piece was handed over"),
}
