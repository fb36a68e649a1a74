"""Look at what a person names, be it a whole project, and be it long put away."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from msgspec.structs import replace

from finishlog.asks.look.look import Look, look
from finishlog.context import Context
from finishlog.core.bench.state import bench_state
from finishlog.core.shop.things import Project, Shop
from finishlog.errors import Ambiguous, NotFound
from finishlog.picking import pick_parts, pick_project
from finishlog.store.log.read_log import read_log
from finishlog.store.things.read_shop import read_shop

if TYPE_CHECKING:
    from sqlalchemy import Connection


def look_back(
    context: Context, connection: Connection, typed: Sequence[str]
) -> tuple[Look, tuple[str, ...]]:
    """Look at the open parts, or, when what was typed is none of them, at those put away too.

    Also return what was typed, with whole projects as their parts.
    """
    seen = look(context, connection)
    try:
        words = with_whole_projects(seen.shop, typed)
        pick_parts(seen.shop, words)
    except Ambiguous:
        raise
    except NotFound:
        return _among_all(context, connection, typed)
    return seen, words


def _among_all(
    context: Context, connection: Connection, typed: Sequence[str]
) -> tuple[Look, tuple[str, ...]]:
    """Look at the projects of what was typed, whether or not they were put away."""
    shop = read_shop(connection, context.clock.now, include_archived=True)
    words = with_whole_projects(shop, typed)
    projects = {part.project for part, _ in pick_parts(shop, words)}
    shop = replace(shop, parts=tuple(p for p in shop.parts if p.project in projects))
    log = read_log(connection, [p.id for part in shop.parts for p in part.pieces])
    bench = bench_state(shop, log, context.facts, context.clock.now, context.clock.zone)
    return Look(context, shop, log, bench), words


def with_whole_projects(shop: Shop, typed: Sequence[str]) -> tuple[str, ...]:
    """Write a project's name as its parts; a part of that name goes first.

    Sample boards are no part of the piece: they stay in the shop, unless there is nothing else.
    """
    return tuple(each for word in typed for each in _spelled_out(shop, word))


def _spelled_out(shop: Shop, word: str) -> tuple[str, ...]:
    if any(sign in word for sign in "/:@*"):
        return (word,)
    if any(part.name.casefold() == word.casefold() for part in shop.parts):
        return (word,)
    project = _project(shop, word)
    if project is None:
        return (word,)
    if project.name.casefold() != word.casefold() and _is_a_part(shop, word):
        return (word,)
    mine = [part for part in shop.parts if part.project == project.id]
    piece = [part for part in mine if not part.is_board]
    return tuple(part.path for part in piece or mine) or (f"{project.name}/*",)


def _project(shop: Shop, word: str) -> Project | None:
    try:
        return pick_project(shop, word)
    except NotFound:
        return None


def _is_a_part(shop: Shop, word: str) -> bool:
    try:
        return bool(pick_parts(shop, [word]))
    except Ambiguous:
        return True
    except NotFound:
        return False
