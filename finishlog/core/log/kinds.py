"""The kinds of entries there are, by what the log calls them."""

# No `from __future__ import annotations`: the fields of an entry are read as they are declared.
from typing import Annotated, get_args

from finishlog.core.log.entries import AnyEntry, Entry
from finishlog.core.log.fields import Field


class Promise(Entry, frozen=True, kw_only=True, tag="promise"):
    """A plan that the person means to keep. Nothing records one yet."""

    text: str


class TakenBack(Entry, frozen=True, kw_only=True, tag="withdrawal"):
    """An earlier act taken back."""

    withdraws: Annotated[int, Field(of="act", column="act_id")]


def kind_of(kind: type[Entry]) -> str:
    """Name a kind of entry as the log does."""
    return str(kind.__struct_config__.tag)


# What the log of the work holds, by kind; and all that the database knows, in its order.
OF_THE_WORK: dict[str, type[AnyEntry]] = {kind_of(kind): kind for kind in get_args(AnyEntry)}
KINDS: dict[str, type[Entry]] = {
    **OF_THE_WORK,
    **{kind_of(kind): kind for kind in (Promise, TakenBack)},
}
