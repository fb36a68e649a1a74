"""A command of the terminal inside a sentence: what to do, as data; only the edge spells it.

A sentence of the core, the acts and the asks holds it as `⟦["whole", "UNDO", ["12"], {}]⟧`: how
much of it is said, what to do, its words and its options (`cli/terminal/spelling`).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import Enum, StrEnum, auto

from msgspec.json import encode

# Begins a command in a text.
TYPES = "⟦"

Option = str | int | Sequence[str]


class Said(StrEnum):
    """How much of a command a sentence says."""

    WHOLE = auto()
    # Without the name of the program.
    WORDS = auto()
    OPTIONS = auto()


class Do(Enum):
    """What a person may be told to do: in a sentence `Do.UNDO(12)` stands for the whole command.

    An option that is True has no value, one with several values is typed so often. `for_` and
    other words of Python lose their line.
    """

    AIR = auto()
    AMEND = auto()
    CAN_CONDEMNED = auto()
    CAN_EDIT = auto()
    CAN_EMPTIED = auto()
    CAN_LIST = auto()
    CAN_NEW = auto()
    CAN_OPENED = auto()
    CAN_RESTORE = auto()
    CAN_TESTED = auto()
    CAN_THROWN_OUT = auto()
    CHECK = auto()
    CLASS_LIST = auto()
    CLEAN = auto()
    FAULT = auto()
    HISTORY = auto()
    LOG = auto()
    LOOK = auto()
    MIX = auto()
    MOISTURE = auto()
    OFF = auto()
    PART_EDIT = auto()
    PART_LIST = auto()
    PART_NEW = auto()
    PART_RESTORE = auto()
    PART_STEPS = auto()
    PAST = auto()
    PHOTO = auto()
    PLAN = auto()
    PRODUCT_EDIT = auto()
    PRODUCT_LABEL = auto()
    PRODUCT_NEW = auto()
    PRODUCT_RESTORE = auto()
    PRODUCT_SAYS = auto()
    PRODUCT_SHEET = auto()
    PROJECT_EDIT = auto()
    PROJECT_RESTORE = auto()
    RAGS = auto()
    RESPIRATOR = auto()
    RESUME = auto()
    REVIEW = auto()
    ROOM_EDIT = auto()
    ROOM_NEW = auto()
    ROOM_NIGHT = auto()
    ROOM_RESTORE = auto()
    ROOM_USUAL = auto()
    RULES = auto()
    SPECIES_LIST = auto()
    SPECIES_SHOW = auto()
    SAFETY = auto()
    STEPS_EDIT = auto()
    STEPS_NEW = auto()
    STEPS_RESTORE = auto()
    SURFACE = auto()
    UNDO = auto()
    WEIGH = auto()

    def __call__(self, *words: object, **options: Option) -> str:
        """Write the whole command into a sentence."""
        return self._write(Said.WHOLE, words, options)

    def words(self, *words: object, **options: Option) -> str:
        """Write it without the name of the program."""
        return self._write(Said.WORDS, words, options)

    def option(self, **options: Option) -> str:
        """Write options of it alone."""
        return self._write(Said.OPTIONS, (), options)

    def options(self, *names: str) -> str:
        """Write a list of its options, none with a value."""
        return ", ".join(self.option(**{name: True}) for name in names)

    def _write(self, said: Said, words: Sequence[object], options: Mapping[str, Option]) -> str:
        plain = {name.rstrip("_"): value for name, value in options.items()}
        held = [said.value, self.name, [*map(str, words)], plain]
        return f"{TYPES}{encode(held).decode()}⟧"
