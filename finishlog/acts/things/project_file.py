"""A project as it is written by hand in a file: rooms, products, steps, parts.

Only what the file says is compared with what there is; what it leaves out is left alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import datetime

from msgspec import Struct

from finishlog.acts.things.own_rules import SaysTyped
from finishlog.acts.things.parts import PartTyped
from finishlog.acts.things.products import ProductTyped
from finishlog.core.commands import Option
from finishlog.core.published.care import UsedFor
from finishlog.errors import BadData, FinishlogError


class RoomInFile(Struct, frozen=True):
    """A room: how cold its nights get (°C), a note; None: the file does not say."""

    name: str
    coldest_c: float | None = None
    note: str | None = None


class StepsInFile(Struct, frozen=True):
    """A finishing schedule, its steps as they are typed."""

    name: str
    steps: tuple[str, ...]


class SaysInFile(Struct, frozen=True):
    """What a file says of a product beyond its label, and the words of it as options."""

    typed: SaysTyped
    words: Mapping[str, Option]


class ProductInFile(Struct, frozen=True):
    """A product; `given` are the keys that the file has."""

    typed: ProductTyped
    given: frozenset[str]
    says: tuple[SaysInFile, ...] = ()


class PartInFile(Struct, frozen=True):
    """A part, its path the name alone; `given` are the keys that the file has."""

    typed: PartTyped
    given: frozenset[str]


class ProjectFile(Struct, frozen=True):
    """Everything in one file. `project` empty: rooms, products and steps alone."""

    file: str
    project: str = ""
    due: datetime | None = None
    used_for: UsedFor | None = None
    note: str | None = None
    rooms: tuple[RoomInFile, ...] = ()
    products: tuple[ProductInFile, ...] = ()
    steps: tuple[StepsInFile, ...] = ()
    parts: tuple[PartInFile, ...] = ()


@contextmanager
def at_place(file: str, place: str) -> Iterator[None]:
    """Say of a fault where in the file it is: `cabinet.toml: [parts.doors] steps: ...`."""
    try:
        yield
    except BadData:
        raise
    except FinishlogError as fault:
        raise BadData(f"{file}: {place}: {fault.message}", fault.hint) from None
