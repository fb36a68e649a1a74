"""What the person's own rules of a product say: their word, the reason, the act that holds it."""

from __future__ import annotations

from finishlog.cli.words.said import Words, measured, text, wanted
from finishlog.core.commands import Do
from finishlog.core.findings import Finding


def _whose(of: Finding) -> str:
    act = text(of, "act")
    return f"your rule (act {act})" if act else "your rule"


def _because(of: Finding) -> str:
    because = text(of, "because")
    return f": {because}" if because else ""


def _as_you_said(of: Finding) -> str:
    act = text(of, "act")
    return f"as you said: {text(of, 'because')}" + (f", act {act}" if act else "")


def _needs(of: Finding) -> str:
    under = text(of, "under")
    where = f" over {under}" if under else " below it"
    return f"{_whose(of)}: it needs {text(of, 'barrier')}{where}{_because(of)}"


def _undo(of: Finding) -> str:
    act = text(of, "act")
    return f"; to take the rule back: {Do.UNDO(act)}" if act else ""


WORDS = {
    "can-not-over": Words(
        lambda f: f"{_whose(f)}: not over {text(f, 'under')}{_because(f)}",
        lambda f: f"take another product, or put between what it goes over{_undo(f)}",
    ),
    "can-needs": Words(_needs, lambda f: f"put on {text(f, 'barrier')} first{_undo(f)}"),
    "can-not-on": Words(
        lambda f: f"{_whose(f)}: not on {text(f, 'wood')}{_because(f)}",
        lambda f: f"take another product, or seal the wood first{_undo(f)}",
    ),
    "can-most-coats": Words(
        lambda f: f"{_whose(f)}: no more coats of it, {measured(f)} are on{_because(f)}",
        lambda f: f"leave it, or take one off{_undo(f)}",
    ),
    "can-coats-a-day": Words(
        lambda f: f"{_whose(f)}: {wanted(f)} a day at most{_because(f)}",
        short=lambda f: f"{wanted(f)} coats a day at most",
    ),
    "can-wait": Words(
        lambda f: f"{_whose(f)}: {wanted(f)} over {text(f, 'under')}{_because(f)}",
    ),
    "as-you-said": Words(lambda f: f"{_as_you_said(f)}; published: {text(f, 'reason')}"),
    "as-you-said-wait": Words(
        lambda f: f"{wanted(f)} over {text(f, 'under')}, {_as_you_said(f)}; published: longer"
    ),
    "as-you-said-window": Words(
        lambda f: f"no scuffing, {_as_you_said(f)}; its class would have it scuffed by now"
    ),
}
