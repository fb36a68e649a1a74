"""The one JSON envelope: versioned, sorted, without colour.

`{"answer": {...}, "command": "ready", "finishlog": 1, "now": "2026-11-24T21:05:00Z"}`. Instants
are UTC, durations and temperatures carry their unit in the key.
"""

from __future__ import annotations

import sys
from collections.abc import Mapping
from datetime import UTC, date, datetime
from enum import Enum

from msgspec import Struct
from msgspec.json import encode, format

from finishlog.cli.terminal.page import OBEYED
from finishlog.cli.terminal.spelling import spelt
from finishlog.cli.words.finding_words import barred_by, remedy, sentence, short, waits_for
from finishlog.core.findings import Finding

VERSION = 1

# What a terminal would obey is written as its number; outside of strings none of it occurs.
_ESCAPED = {sign: f"\\u{sign:04x}" for sign in OBEYED if sign >= 0x7F}


def show_json(command: str, now: datetime, answer: object) -> None:
    """Print one document on stdout."""
    document = {
        "finishlog": VERSION,
        "command": command,
        "now": _plain(now),
        "answer": _plain(answer),
    }
    plain = (sys.stdout.encoding or "utf-8").lower().replace("-", "") == "utf8"
    text = _pretty(document) if plain else _in_ascii(document)
    sys.stdout.write(f"{text.translate(_ESCAPED)}\n")


def _pretty(document: object) -> str:
    # A text of a kind of its own is a text.
    return format(encode(document, order="sorted", enc_hook=str.__str__), indent=2).decode()


def _in_ascii(document: object) -> str:
    """Write it for a reader of nothing more; loaded where one asks."""
    from json import dumps

    return dumps(document, indent=2, sort_keys=True)


def _plain(value: object) -> object:
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat().replace("+00:00", "Z")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, str):
        # A document is the same whatever units its reader likes.
        return spelt(value)
    if isinstance(value, Finding):
        return _finding(value)
    if isinstance(value, Struct):
        return _struct(value)
    if isinstance(value, Mapping):
        return {str(_plain(key)): _plain(each) for key, each in value.items()}
    if isinstance(value, tuple | list | set | frozenset):
        return [_plain(each) for each in value]
    return value


def _struct(value: Struct) -> dict[str, object]:
    """Return the fields of a value; what binds is worded, with what it waits for."""
    fields = {name: getattr(value, name) for name in value.__struct_fields__}
    because = fields.get("because")
    if isinstance(because, Finding):
        if "binds" in fields:
            fields["waits_for"] = waits_for(because)
        fields["because"] = short(because)
    if "blocked" in fields:
        fields["blocked"] = barred_by(fields["blocked"]) if fields["blocked"] else ""
    if isinstance(fields.get("caution", ""), Finding | None):
        fields["caution"] = sentence(fields["caution"]) if fields["caution"] else ""
    if "fitness" in fields:
        fields["fitness"] = [(what, sentence(how)) for what, how in fields["fitness"]]
    return {name: _plain(each) for name, each in fields.items()}


def _finding(of: Finding) -> dict[str, object]:
    """Return a finding in words, with the rule that found it and the figures it rests on."""
    return {
        "acts": list(of.acts),
        "answer": of.answer.value if of.answer else None,
        "get_out": of.get_out,
        "level": of.level.value,
        "measured": _plain(of.measured),
        "on": list(of.on),
        "remedy": _plain(remedy(of)),
        "rule": of.rule,
        "sentence": _plain(sentence(of)),
        "source": of.source,
        "wanted": _plain(of.wanted),
    }
