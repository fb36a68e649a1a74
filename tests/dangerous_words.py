"""What must never be said: read in facts, in what the program says, and on screens."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

_CHLORINE = re.compile(r"chlorine bleach|hypochlorite|laundry bleach", re.I)
_NEVER_WITH_IT = re.compile(
    r"\b(vinegar|acids?|oxalic|citric|ammonia|peroxide|alcohol|spirits?|acetone|thinner)\b", re.I
)
# Words that keep them apart, or say what comes of it.
_APART = re.compile(
    r"\b(never|not?|nothing|none|poisons?|chloroform|chloramines?|gas|away|apart|wrong|dangerous"
    r"|violent|beside|before|meets?|leaves?|stop)\b",
    re.I,
)
_PRAISE = re.compile(
    r"\b(approved|certified safe|perfectly safe|guaranteed|harmless|non-?toxic|no risk|no danger"
    r"|all[- ]clear|risk-free|foolproof)\b",
    re.I,
)
_DENIED = re.compile(r"\b(no|not|never|nothing|none|nobody|neither|cannot|without|instead)\b", re.I)
_SAFE = re.compile(r"\bsafe(ly|r|st)?\b", re.I)
# A vessel's name is no promise.
_SAFETY_CAN = re.compile(r"\bsafe(ty)? cans?\b", re.I)
_WORN = re.compile(r"\b(masks?|respirators?|cartridges?|gloves|supplied air)\b", re.I)
_PROMISES = re.compile(
    r"\b(proofs?|proves?|protects?|protected|safe|enough|suffices?|sufficient|blocks?"
    r"|holds? (it|all)|keeps? you)\b",
    re.I,
)
# A year of a law holds somewhere: the place stands in the same sentence.
_LAW_YEAR = re.compile(
    r"\b(ban(ned)?|federal|law|rules?|codes?|lead|limit(ed)?)\b.*\b(19|20)\d\d\b"
    r"|\b(19|20)\d\d\b.*\b(ban(ned)?|federal|law|lead)\b",
    re.I,
)
_PLACE = re.compile(r"\b(US|Europe(an)?|EU|Canada|Ontario|UK|United States|ask where you are)\b")


def brings_poison(sentence: str) -> bool:
    """Tell whether it brings chlorine bleach together with what makes it poison."""
    both = _CHLORINE.search(sentence) and _NEVER_WITH_IT.search(sentence)
    return bool(both) and not _APART.search(sentence)


def praises(sentence: str) -> bool:
    """Tell whether it calls something approved, harmless or cleared, and does not deny it."""
    return bool(_PRAISE.search(sentence)) and not _DENIED.search(_PRAISE.sub("", sentence))


def calls_safe(sentence: str) -> bool:
    """Tell whether something is called safe and nothing is denied beside it."""
    text = _SAFETY_CAN.sub("", sentence)
    return bool(_SAFE.search(text)) and not _DENIED.search(text)


def trusts_what_is_worn(sentence: str) -> bool:
    """Tell whether a mask or gloves are taken for proof or enough."""
    both = _WORN.search(sentence) and _PROMISES.search(sentence)
    return bool(both) and not _DENIED.search(sentence)


def dated_law(sentence: str) -> bool:
    """Tell whether a law is given by its year and without its place."""
    return bool(_LAW_YEAR.search(sentence)) and not _PLACE.search(sentence)


WRONG: dict[str, Callable[[str], bool]] = {
    "brings chlorine near what makes it poison": brings_poison,
    "praises": praises,
    "calls something safe": calls_safe,
    "trusts what is worn": trusts_what_is_worn,
}


def sentences(text: str) -> Iterator[str]:
    """Yield the sentences of the lines of a text."""
    for line in text.splitlines():
        yield from (each for each in re.split(r"(?<=[.!?]) ", line) if each)


def wrongly_said(text: str) -> list[str]:
    """Return what a text says that must never be said."""
    return [
        f"{why}: {each}"
        for each in sentences(text)
        for why, is_wrong in WRONG.items()
        if is_wrong(each)
    ]
