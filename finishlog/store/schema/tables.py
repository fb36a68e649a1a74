"""Every table by its name, declared when the first of them is asked for.

What a start asks stands in SQL already (`asked`), and to declare the tables would be a tenth of it.
"""

from __future__ import annotations

from sqlalchemy import Table


def __getattr__(name: str) -> Table:
    from finishlog.store.schema import log, rooms, things

    table = next((vars(of)[name] for of in (log, things, rooms) if name in vars(of)), None)
    if not isinstance(table, Table):
        raise AttributeError(f"there is no table {name!r}")
    globals()[name] = table
    return table
