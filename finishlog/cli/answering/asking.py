"""Ask a person the few things that are missing; a script is refused with the exact command."""

from __future__ import annotations

import re
import shlex
from collections.abc import Callable, Mapping, Sequence
from typing import TypeVar

from finishlog.cli.answering.misread import is_a_time
from finishlog.cli.answering.run import Run
from finishlog.cli.terminal.talk import ask, at_a_terminal, choose
from finishlog.errors import (
    Ambiguous,
    Doubtful,
    FinishlogError,
    MisnamedPart,
    NotFound,
    Unknown,
    UnknownPart,
    UnknownProduct,
    UsageFault,
)

Answer = TypeVar("Answer")

_ANOTHER = "another kind"
_A_NEW_ONE = "none of these: a new product"


class Asked:
    """What an act that records may ask beside its words, and what was answered.

    `options` are values that may be missing or fit several things; `sure`: whether a person was
    asked about what is hardly meant. A script is never asked, and always sure.
    """

    def __init__(self, options: Mapping[str, str | None]) -> None:
        self.options = dict(options)
        self.sure = not at_a_terminal()

    def takes(self, typed: str) -> bool:
        """Tell whether a choice belongs to one of the options: by its name or its value."""
        return any(typed in {name, value} for name, value in self.options.items())

    def choose(self, typed: str, chosen: str) -> None:
        """Put what was chosen in place of an option that was not given, or of its value."""
        for name, value in self.options.items():
            if typed in {name, value}:
                self.options[name] = chosen


def settled(
    run: Run,
    typed: tuple[str, ...],
    attempt: Callable[[tuple[str, ...]], Answer],
    *,
    may_make: bool = False,
    asked: Asked | None = None,
) -> Answer:
    """Try; where something is ambiguous, unknown or hardly meant, ask who is there and try again.

    Only an act that records may put what is unknown on record (`may_make`), and only one that
    reads what was `asked` asks whether it is meant.
    """
    if not all(word.strip() for word in typed):
        raise UsageFault("one of the words is empty", "a variable of the shell that holds nothing?")
    words = typed
    while True:
        try:
            return attempt(words)
        except Ambiguous as fault:
            here = fault.typed in words or (asked is not None and asked.takes(fault.typed))
            if not (at_a_terminal() and here):
                raise
            chosen = choose(f"{fault.message}. Which?", fault.candidates)
            if chosen is None:
                raise
            if asked:
                asked.choose(fault.typed, chosen)
            words = tuple(chosen if word == fault.typed else word for word in words)
        except Doubtful as fault:
            from finishlog.cli.words.finding_words import question

            doubts = " ".join(dict.fromkeys(map(question, fault.doubts)))
            if asked is None or not ask(f"{doubts} [y/N]").lower().startswith("y"):
                raise
            asked.sure = True
        except (MisnamedPart, Unknown) as fault:
            made = _made_for(run, fault, may_make=may_make)
            words = tuple(made if word == fault.name else word for word in words)


def _made_for(run: Run, fault: MisnamedPart | Unknown, *, may_make: bool) -> str:
    """Put on record what is unknown if the person who is there wants it; else the fault stands."""
    if not isinstance(fault, UnknownProduct):
        _refuse_what_is_no_part(run, fault.name)
    if isinstance(fault, MisnamedPart):
        return _meant_by(fault)
    _refuse_what_was_put_away(run, fault)
    if not (may_make and at_a_terminal()):
        raise fault
    make = _make_part if isinstance(fault, UnknownPart) else _make_product
    made = make(run, fault)
    if made is None:
        raise fault
    return made


def _meant_by(fault: MisnamedPart) -> str:
    """Ask which part was meant by a slip of the finger; its pieces and faces stay as typed."""
    head = re.split("[:@]", fault.name, maxsplit=1)[0]
    chosen = choose(f"{fault.message}. Which?", fault.near) if at_a_terminal() else None
    if chosen is None:
        raise fault
    return chosen + fault.name.removeprefix(head)


def last_said(
    words: Sequence[str], read: Callable[[str], Answer], command: str
) -> tuple[tuple[str, ...], Answer]:
    """Read the last of some words and return what stands before it; one that stands first is told.

    `command`: what was typed, as it is typed.
    """
    *before, last = words
    try:
        return tuple(before), said(last, read)
    except FinishlogError as fault:
        if is_a_time(last):
            named = [word for word in before if word != "at"]
            line = shlex.join(["finishlog", command, *named, "--at", last])
            raise UsageFault(f"{last!r} is a time, and goes with --at", line) from None
        try:
            read(words[0])
        except FinishlogError:
            raise fault from None
        line = shlex.join(["finishlog", command, *words[1:], words[0]])
        raise UsageFault(f"{words[0]!r} stands last", line) from None


def said(typed: str, read: Callable[[str], Answer]) -> Answer:
    """Read one word of ours; where it may be two things and a person is there, ask which."""
    try:
        return read(typed)
    except Ambiguous as fault:
        chosen = choose(f"{fault.message}. Which?", fault.candidates) if at_a_terminal() else None
        if chosen is None:
            raise
        return read(chosen)


def _refuse_what_was_put_away(run: Run, fault: Unknown) -> None:
    """Say how to have a part back: it is not to be made anew under last year's name."""
    from finishlog.asks.look.meant import put_away_since

    put_away = isinstance(fault, UnknownPart) and put_away_since(run.context, fault.name)
    if put_away:
        path, command = put_away
        raise NotFound(f"{path} was put away", f"to have it back: {command}") from None


def _refuse_what_is_no_part(run: Run, word: str) -> None:
    """Say where a word belongs that is a product, a time, a room: no part is to be made of it."""
    from finishlog.cli.answering.misplaced import misplaced

    better = misplaced(run, word)
    if better is not None:
        raise better from None


def _make_part(run: Run, fault: Unknown) -> str | None:
    from finishlog.acts.things.parts import PartTyped, new_part

    answer = ask(f"There is no part {fault.name!r}. Put it on record now? [y/N]")
    if not answer.lower().startswith("y"):
        return None
    path = fault.name
    if "/" not in path:
        path = f"{ask('Which piece of furniture is it part of?')}/{path}"
    species = ask("Which wood? (Enter: not said)")
    typed = PartTyped(path, species=species or None)
    return new_part(run.context, typed).name


def _make_product(run: Run, fault: Unknown) -> str | None:
    """Offer what is nearly so; a new product is made only when it is asked for.

    Where there is no product yet it is: with what else would anybody begin?
    """
    from finishlog.asks.things.there_is import products

    question = f"There is no product {fault.name!r}"
    if fault.near:
        chosen = choose(f"{question}. Which did you mean?", (*fault.near, _A_NEW_ONE))
        if chosen != _A_NEW_ONE:
            return chosen
    elif products(run.context):
        answer = ask(f"{question}, nor such work. Put a new product on record? [y/N]")
        if not answer.lower().startswith("y"):
            return None
    return _new_product(run, fault.name)


def _new_product(run: Run, name: str) -> str | None:
    from finishlog.acts.things.products import ProductTyped, new_product

    chosen = _choose_class(run, name)
    if chosen is None:
        return None
    typed = ProductTyped(name, chosen, {})
    return new_product(run.context, typed).name


def _choose_class(run: Run, product: str) -> str | None:
    """Ask for the class of a new product: those that its name fits, else by family."""
    question = f"There is no product {product!r}. What kind of finish is it?"
    near = run.facts.find_class(product)
    if near:
        chosen = choose(question, (*near, _ANOTHER))
        if chosen != _ANOTHER:
            return chosen
    families: dict[str, list[str]] = {}
    for of in run.facts.classes.values():
        families.setdefault(of.family, []).append(of.key)
    family = choose(question, tuple(families))
    if family is None:
        return None
    keys = families[family]
    return keys[0] if len(keys) == 1 else choose(f"Which kind of {family}?", tuple(keys))
