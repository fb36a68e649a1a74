"""Keep where a picture of a part lies; the picture itself stays where it is."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from msgspec import Struct

from finishlog.asks.look.look_back import look_back
from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.log.entries import Photo
from finishlog.core.log.when import When
from finishlog.errors import UsageFault
from finishlog.picking import pick_zones


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
    file = _file(path)
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
            is_there=_is_there(file),
        )


def _file(path: str) -> Path:
    """Return the whole path; what is no file's name on any system is refused."""
    try:
        return Path(path).expanduser().absolute()
    except RuntimeError:
        raise UsageFault(
            f"{path!r} is in a home that is not known", "write the whole path"
        ) from None


def _is_there(file: Path) -> bool:
    """Tell whether the file is there now; a name that the system cannot hold is not."""
    try:
        return file.is_file()
    except (OSError, ValueError):
        return False
