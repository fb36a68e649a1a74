"""A tired person's line for many pieces, taken apart; and what is no such line."""

from __future__ import annotations

from finishlog.core.shop.same_as import SameAs, same_as
from tests.rows import every_row

SAID = [
    (
        "dors 4-9 same as 3 but 7 sanded back",
        SameAs(("dors:4-9",), "dors:3", ("dors:7",), "sanded back"),
    ),
    ("legs 1, 2 4 like 3", SameAs(("legs:1,2,4",), "legs:3")),
    ("desk/legs:5-8 same as legs:1", SameAs(("desk/legs:5-8",), "legs:1")),
    (
        "doors same as doors:1 except 4 and 5",
        SameAs(("doors",), "doors:1", ("doors:4,5",)),
    ),
    ("rails stiles same as rails 1", SameAs(("rails", "stiles"), "rails:1")),
    ("doors 2-6 same as 1 but not 4", SameAs(("doors:2-6",), "doors:1", ("doors:4",))),
    (
        "doors 2–6 Same As 1 without doors:3 levelled",
        SameAs(("doors:2-6",), "doors:1", ("doors:3",), "levelled"),
    ),
]


@every_row("line, meant", SAID)
def test_it_is_read_as_it_is_said(line: str, meant: SameAs):
    assert same_as(line.split()) == meant
    assert same_as([line]) == meant


@every_row(
    "line",
    ["doors varnish", "same varnish", "doors same", "doors same as", "doors:4-9 sand 180", "same"],
)
def test_what_names_no_other_piece_is_no_such_line(line: str):
    assert same_as(line.split()) is None
