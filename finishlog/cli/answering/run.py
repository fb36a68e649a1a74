"""What one run of the program has at hand: the clock, the facts, the database, how to answer."""

from __future__ import annotations

import shlex
from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from finishlog import clock, paths
from finishlog.cli.terminal.talk import say
from finishlog.core.log.when import When, at
from finishlog.core.measure.units import Temperature, Units
from finishlog.errors import DatabaseFault, UsageFault

if TYPE_CHECKING:
    from datetime import datetime

    import typer

    from finishlog.asks.look.clock_set_back import NewerAct
    from finishlog.context import Context
    from finishlog.core.published.facts import Facts
    from finishlog.store.database import Database


class Run:
    """Opened once a command; nothing heavy is loaded before it is asked for."""

    def __init__(self, chosen_path: Path | None = None, words: Sequence[str] = ()) -> None:
        self.chosen_path = chosen_path
        self._words = tuple(words)
        # What read the command line; None: not yet.
        self.parser: typer.Context | None = None

    def refuse_contradictions(self) -> None:
        """Refuse an option and its opposite, typed together: which was meant?"""
        typed = frozenset(self._words)
        for each in self.parser.command.params if self.parser else ():
            yes, no = typed & {*each.opts}, typed & {*each.secondary_opts}
            if yes and no:
                raise UsageFault(f"{min(yes)} and {min(no)} say the opposite", "type one of them")

    @cached_property
    def clock(self) -> clock.Clock:
        """The present instant and the shop's zone, read once."""
        return clock.Clock(self._now, clock.shop_zone(self._kept_zone))

    @cached_property
    def _now(self) -> datetime:
        return clock.now()

    @cached_property
    def context(self) -> Context:
        """What the command's act or question is given."""
        from finishlog.context import Context

        return Context(self.database, self.facts, self.clock, self.words, self.units)

    @cached_property
    def _kept(self) -> tuple[Units, str | None]:
        """The units and the zone that were set, if there is a shop to ask."""
        if not self.path.exists():
            return Units(), None
        from finishlog.asks.look.settings import kept

        return kept(self.database)

    @property
    def _kept_zone(self) -> str | None:
        """The zone that was set (`finishlog settings zone`)."""
        try:
            return None if clock.zone_is_given() else self._kept[1]
        except DatabaseFault:
            # What needs the database will say so; a reference page does not.
            return None

    @cached_property
    def facts(self) -> Facts:
        """The published facts."""
        from finishlog.facts.load import load_facts

        return load_facts()

    @cached_property
    def path(self) -> Path:
        """Where the database is."""
        return self.chosen_path or paths.database_path()

    @cached_property
    def database(self) -> Database:
        """The database, brought up to date if it has to be; made by the first thing recorded."""
        from finishlog.store.database import open_database

        try:
            database = open_database(self.path, self._now, make=False)
        except OSError as fault:
            raise DatabaseFault(
                f"{self.path} cannot be opened: {fault.strerror}",
                "set FINISHLOG_DB to a file in a folder that is yours",
            ) from fault
        if database.upgraded is not None:
            backup = database.upgraded.backup_path
            say(f"finishlog: database brought up to date; the old one is kept as {backup}")
        return database

    def close(self) -> None:
        """Let go of the database, if one was opened."""
        if "database" in self.__dict__:
            self.database.close()

    @property
    def has_recorded(self) -> bool:
        """Tell whether this command put something on record."""
        return "database" in self.__dict__ and self.database.has_recorded

    def damage(self) -> str:
        """Say what is damaged in the database; empty: nothing was found, or none was opened."""
        if "database" not in self.__dict__:
            return ""
        from finishlog.store.damage_sqlite import damage

        return damage(self.path)

    def say_what_was_made(self) -> None:
        """Name the database that did not exist before this command."""
        if "database" in self.__dict__ and self.database.was_made:
            say(f"finishlog: a new, empty database was made: {self.path}")

    @property
    def units(self) -> Units:
        """The units that things are typed and shown in; the usual ones where nothing was set."""
        return self._kept[0]

    def units_of(self, text: str) -> Units:
        """The units of a refusal: the person's, where it holds a quantity and they can be read."""
        from finishlog.cli.terminal.spelling import needs_units

        try:
            return self.units if needs_units(text) else Units()
        except DatabaseFault:
            return Units()

    @property
    def temperature(self) -> Temperature:
        """The unit that temperatures are typed and shown in."""
        return self.units.temperature

    @property
    def typed(self) -> tuple[str, ...]:
        """The words that were typed, each for itself."""
        return self._words

    @property
    def words(self) -> str:
        """The words that were typed."""
        return shlex.join(self._words)

    def moment(self, typed: str | None) -> When:
        """Read when something happened; now when nothing was typed, if the clock can tell."""
        if self.newer_act is not None:
            from finishlog.cli.answering.clock_set_back import moment_all_the_same

            return moment_all_the_same(typed, self.newer_act, self.clock)
        if typed is None:
            return at(self.clock.now)
        from finishlog.cli.typed.times.moments import moment

        return moment(typed, self.clock.now, self.clock.zone)

    @cached_property
    def newer_act(self) -> NewerAct | None:
        """The act on record that the clock lies behind, as it was when first asked."""
        if not self.path.exists():
            return None
        from finishlog.asks.look.clock_set_back import newer_than_now

        return newer_than_now(self.context)

    def say_that_the_clock_is_behind(self) -> None:
        """Say beside an answer from the database that it is worked out for an earlier time."""
        try:
            if "database" not in self.__dict__ or self.newer_act is None:
                return
        except DatabaseFault:
            # The answer stands: whoever holds the file now is another's affair.
            return
        from finishlog.cli.answering.clock_set_back import behind

        say(f"finishlog: {behind(self.newer_act, self.clock)}: the answer is of the clock's time")
