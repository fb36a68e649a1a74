"""Every fact that can be on record: a field of a kind of entry, or of a thing that can be told.

A fact is named by what it is of and its field: `coat.method`, `part.species`, `room.heater`. What
the program itself gives, ids and the names read with them, is no fact; nor is what a coat is judged
by, which is its product's label as it was then.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from types import ModuleType
from typing import get_args, get_type_hints

from msgspec import Struct

from finishlog.core.log.fields import fields_of
from finishlog.core.log.kinds import OF_THE_WORK
from finishlog.core.mixing import containers
from finishlog.core.shop import things

_WHERE_THINGS_STAND: tuple[ModuleType, ...] = (things, containers)
# Given by the program, not told by anybody.
_NOT_TOLD = frozenset({"id", "project", "project_name", "has_namesake", "aliases"})


@cache
def facts_on_record() -> tuple[str, ...]:
    """Return every fact by its name, those of entries first, each kind's together."""
    return tuple(dict.fromkeys((*_of_entries(), *_of_things(things.Shop, set()))))


def name_of_thing(kind: type[Struct]) -> str:
    """Name a kind of thing as its facts are called: `mix-part`."""
    return re.sub(r"(?<=[a-z])(?=[A-Z])", "-", kind.__name__).lower()


def _of_entries() -> Iterator[str]:
    for name, kind in OF_THE_WORK.items():
        yield f"{name}.when"
        for field in fields_of(kind):
            if not field.means.name_of and field.means.of != "figure_set":
                yield f"{name}.{field.name}"


def _of_things(kind: type[Struct], seen: set[type[Struct]]) -> Iterator[str]:
    """Yield the facts of a kind of thing, and of the things that it holds."""
    seen.add(kind)
    for name, annotation in get_type_hints(kind).items():
        if name in _NOT_TOLD or name not in kind.__struct_fields__:
            continue
        held = [each for each in _types_in(annotation) if _is_thing(each)]
        if not held:
            yield f"{name_of_thing(kind)}.{name}"
        for each in held:
            if each not in seen:
                yield from _of_things(each, seen)


def _types_in(annotation: object) -> Iterator[type]:
    if isinstance(annotation, type):
        yield annotation
    for each in get_args(annotation):
        yield from _types_in(each)


def _is_thing(kind: type) -> bool:
    stands = {module.__name__ for module in _WHERE_THINGS_STAND}
    return issubclass(kind, Struct) and kind.__module__ in stands
