"""Keep where a picture of a part lies; the picture itself stays where it is."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from finishlog.asks.look.look_back import look_back
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Photo
from finishlog.core.log.when import When
from finishlog.errors import UsageFault
from finishlog.picking import pick_zones
from finishlog.store.things.pointed_to import is_there, whole_path


class Pictured(Struct, frozen=True):
    """A picture as recorded. `is_there`: a file lies at the path now."""

    act: int
    at: When
    labels: tuple[str, ...]
    path: str
    text: str
    is_there: bool


def log_photo(
    context: Context, *, parts: Sequence[str], face: str | None, path: str, text: str, at: When
) -> Pictured:
    """Record where a picture lies, as a whole path: the next look may come from elsewhere."""
    if not path.strip():
        raise UsageFault("a photo needs a file", Do.PHOTO("PART", "FILE"))
    file = whole_path(path)
    with context.writing("photo") as ledger:
        seen, typed = look_back(context, ledger.connection, parts)
        picked = pick_zones(seen.shop, seen.bench, typed, face)
        ledger.record(Photo(when=at, targets=picked.targets, path=str(file), note=text))
        return Pictured(
            act=ledger.act_id,
            at=at,
            labels=picked.labels,
            path=str(file),
            text=text,
            is_there=is_there(file),
        )
