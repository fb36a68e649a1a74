"""Run the migrations on the connection that finishlog.store.upgrade hands over.

No logging set-up here: `fileConfig` would rewire the program's own.
"""

from __future__ import annotations

from alembic import context  # noqa: TID253

from finishlog.store.schema.whole import metadata


def run() -> None:
    """Migrate inside the transaction that the caller opened."""
    connection = context.config.attributes.get("connection")
    if connection is None:
        raise RuntimeError("migrations run through finishlog.store.upgrade, which backs up first")
    # SQLite alters a table by copying it; batch mode does that.
    context.configure(connection=connection, target_metadata=metadata, render_as_batch=True)
    with context.begin_transaction():
        context.run_migrations()


run()
