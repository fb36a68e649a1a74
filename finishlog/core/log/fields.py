"""What a declaration of a kind of entry says of its fields, beside their names and types.

A kind is declared once, in `records`: its columns, its writing and reading, what `amend` may
change and what `history` says of it are derived from what stands here.
"""

from __future__ import annotations

from functools import cache
from types import UnionType
from typing import Annotated, Any, NamedTuple, get_args, get_origin

from msgspec import NODEFAULT, Meta, Struct


class Field(Struct, frozen=True):
    """What a field means. Its bounds, where it has some, are a `msgspec.Meta` beside it."""

    # What it is counted in, as its name ends: c, pct, um, min; or what it counts: reading.
    unit: str = ""
    # The word by which `amend` puts it right; empty: it stays as it was.
    amend: str = ""
    # The table of the thing that it names by its id; of a set: each of them.
    of: str = ""
    # What its column is called, where that does not follow from its name.
    column: str = ""
    indexed: bool = False
    # The name of the thing that another field names: read with it, never written.
    name_of: str = ""


class Declared(NamedTuple):
    """A field of a kind of entry. `type` leaves out that it may be None: that is `optional`."""

    name: str
    type: type
    optional: bool
    default: object
    means: Field
    bounds: Meta | None

    @property
    def column(self) -> str:
        """Name its column; of a thing that is named by its id: `room_id`, `into_piece_id`."""
        of = self.means.of
        named = self.name if not of else f"{of}_id" if self.name == of else f"{self.name}_{of}_id"
        return self.means.column or named


@cache
def fields_of(kind: type[Struct]) -> tuple[Declared, ...]:
    """Return the fields that a kind of entry adds to what every entry has, in their order.

    From its annotations as they stand: a module of kinds does not turn them into text.
    """
    names, defaults = kind.__struct_fields__, kind.__struct_defaults__
    default = dict(zip(names[len(names) - len(defaults) :], defaults, strict=True))
    return tuple(
        _declared(name, annotation, default.get(name, NODEFAULT))
        for name, annotation in kind.__annotations__.items()
        if name in names
    )


def _declared(name: str, annotation: Any, default: object) -> Declared:  # noqa: ANN401
    said: tuple[object, ...] = ()
    if get_origin(annotation) is Annotated:
        annotation, *rest = get_args(annotation)
        said = tuple(rest)
    optional = isinstance(annotation, UnionType)
    plain = get_args(annotation)[0] if optional else annotation
    return Declared(
        name,
        get_origin(plain) or plain,
        optional,
        default,
        next((each for each in said if isinstance(each, Field)), Field()),
        next((each for each in said if isinstance(each, Meta)), None),
    )
