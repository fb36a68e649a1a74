"""What every act and every question is given: where, by what facts, when, and what was typed."""

from __future__ import annotations

from contextlib import AbstractContextManager
from typing import TYPE_CHECKING

from msgspec import Struct

from finishlog.clock import Clock
from finishlog.core.measure.units import Units
from finishlog.core.published.facts import Facts
from finishlog.store.database import Database
from finishlog.store.log.ledger import Ledger

if TYPE_CHECKING:
    from sqlalchemy import Connection


class Context(Struct, frozen=True):
    """One command: the shop's database, the facts, the clock, the words typed, the shop's units."""

    database: Database
    facts: Facts
    clock: Clock
    words: str
    units: Units

    def reading(self) -> AbstractContextManager[Connection]:
        """Read in one transaction: everything read is of the same moment."""
        return self.database.reading()

    def writing(self, verb: str) -> AbstractContextManager[Ledger]:
        """Record what was typed: all of it or, after any exception, nothing."""
        now, zone = self.clock.now, self.clock.zone.key
        return self.database.writing(verb, self.words, now, zone)
