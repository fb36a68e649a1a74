"""Every kind of entry has its one wording, and what it declares of its fields holds."""

from __future__ import annotations

from inspect import signature
from string import Formatter

from finishlog.asks.look.entry_words import NO_AND_YES, WORDINGS, deed_words
from finishlog.cli.commands.work.corrections import amend
from finishlog.core.log.entries import (
    AnyEntry,
    Coat,
    ContainerEvent,
    Joined,
    Moved,
    RagsEvent,
    Reading,
)
from finishlog.core.log.fields import Declared, fields_of
from finishlog.core.log.kinds import OF_THE_WORK
from finishlog.core.log.words import ContainerDeed
from tests.rows import every_row

# What a line of the history leaves out, and where it is told.
UNSAID = {
    (Coat, "product"): "its name is said",
    (Coat, "figures"): "they are the coat's, told by `why`",
    (Coat, "wet_film_um"): "told by `past`",
    (Coat, "hands_on_min"): "a plan counts with it",
    (Joined, "into"): "the line is about it",
    (Joined, "members"): "the line is about them",
    (Moved, "pieces"): "the line is about them",
    (Reading, "wet_bulb_c"): "the air that follows from it is said",
    (ContainerEvent, "container"): "the line is about it",
    (ContainerEvent, "note"): "told by `can`",
    (RagsEvent, "item"): "the rags of which coat, told by `leave`",
}

DECLARED = [(kind, field) for kind in OF_THE_WORK.values() for field in fields_of(kind)]


def said(kind: type[AnyEntry]) -> set[str]:
    """Name the fields that the wording of a kind says."""
    return {name for bit in WORDINGS[kind] for _, name, _, _ in Formatter().parse(bit) if name}


@every_row("kind", OF_THE_WORK.values(), ids=OF_THE_WORK)
def test_a_kind_has_one_wording_and_it_says_fields_of_the_kind(kind: type[AnyEntry]):
    assert said(kind) <= {field.name for field in fields_of(kind)}


@every_row(("kind", "field"), DECLARED, ids=[f"{k.__name__}.{f.name}" for k, f in DECLARED])
def test_a_field_is_said_or_told_elsewhere(kind: type[AnyEntry], field: Declared):
    assert (field.name in said(kind)) != ((kind, field.name) in UNSAID)
    if field.name in said(kind) and field.type is bool:
        assert field.name in NO_AND_YES


def test_every_deed_with_a_can_is_told_apart():
    assert len({deed_words(deed) for deed in ContainerDeed}) == len(ContainerDeed)


def test_a_number_ends_in_the_unit_that_it_is_counted_in():
    """Not what counts things: `count`, in readings."""
    for _, field in DECLARED:
        if field.type is float:
            assert field.means.unit in {"c", "pct", "um", "min", "g", "ml"}
            assert field.name.endswith(f"_{field.means.unit}")


def test_a_field_is_amended_by_an_option_of_the_command():
    options = set(signature(amend).parameters) - {"here", "act"}
    where_and_when = {"at", "on", "face"}
    # Said of a coat that was called broken off: `--finished` takes back what `--stopped` says.
    undoes = {"finished"}
    words = {"note": "text", "from_": "container"}
    assert {f.means.amend for _, f in DECLARED if f.means.amend} == {
        words.get(option, option) for option in options - where_and_when - undoes
    }


def test_a_kind_is_not_amended_by_one_word_in_two_fields():
    for kind in OF_THE_WORK.values():
        words = [f.means.amend for f in fields_of(kind) if f.means.amend]
        assert len(words) == len(set(words))
