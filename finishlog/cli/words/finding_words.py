"""A finding in words: its sentence, the same in short, what to do, what it waits for."""

from __future__ import annotations

from collections.abc import Mapping

from finishlog.cli.words import (
    acts,
    air,
    beside,
    cans,
    causes,
    film,
    hazard,
    leaving,
    lessons,
    observed,
    own_rules,
    underneath,
    wood,
)
from finishlog.cli.words.said import CAUSE, REMEDY, Worder, Words
from finishlog.core.findings import Answer, Finding

WORDS: Mapping[str, Words] = {
    **film.WORDS,
    **observed.WORDS,
    **lessons.WORDS,
    **wood.WORDS,
    **air.WORDS,
    **beside.WORDS,
    **hazard.WORDS,
    **underneath.WORDS,
    **cans.WORDS,
    **causes.WORDS,
    **own_rules.WORDS,
    **acts.WORDS,
    **leaving.WORDS,
}


def sentence(of: Finding) -> str:
    """Say what was found, with whose room or act it is where that is not plain."""
    words, cause = words_of(of), of.because_of
    said = _worded(words.sentence, of)
    if cause is not None:
        said = words.cause.format(
            said=said, short=short(cause), long=sentence(cause), waits=waits_for(cause)
        )
    return f"{_whose(of)}{said}"


def remedy(of: Finding) -> str:
    """Say what to do about it; empty: nothing."""
    said = _worded(words_of(of).remedy, of)
    return said.replace(REMEDY, remedy(of.because_of)) if of.because_of else said


def with_remedy(of: Finding) -> str:
    """Say what was found and what to do about it, as one line; a question keeps its mark."""
    return joined(sentence(of), remedy(of))


def question(of: Finding) -> str:
    """Ask the person who is there whether what was found is meant, of what it is about."""
    said = f"{', '.join(of.on)}: {sentence(of)}"
    return said if said.endswith("?") else f"{said}. {_worded(words_of(of).asks, of)}"


def joined(said: str, remedy: str) -> str:
    """Put what to do behind what was said: after a question, or a sentence, as one more."""
    said = said.rstrip(".")
    if not (said and remedy):
        return said or remedy
    if said.endswith("?"):
        return f"{said} {remedy}"
    return f"{said}{'. ' if remedy[0].isupper() else '; '}{remedy}"


def short(of: Finding) -> str:
    """Say what was found in a few words."""
    words = words_of(of)
    said = _worded(words.short or words.sentence, of)
    return f"{said}: {short(of.because_of)}" if of.because_of else said


def barred_by(of: Finding) -> str:
    """Say what keeps a part from being handled."""
    return _worded(words_of(of).bars, of) or short(of)


def waits_for(of: Finding) -> str:
    """Name what has to come first; empty: nothing but time."""
    causes = (of.because_of, *of.besides) if of.because_of else ()
    bars = "; ".join(f"{_whose(each)}{barred_by(each)}" for each in causes)
    return _worded(words_of(of).waits, of).replace(CAUSE, bars)


def plan_reason(of: Finding) -> str:
    """Say why something could not be planned: what it waits for, or in short."""
    waits = waits_for(of)
    if of.answer is Answer.SET_ASIDE:
        return of.answer.value
    return f"waits for {waits}" if waits else short(of)


def words_of(of: Finding) -> Words:
    """Return the words of the rule that found it; KeyError: it has none."""
    return WORDS[of.rule]


def _worded(words: Worder, of: Finding) -> str:
    return words if isinstance(words, str) else words(of)


def _whose(of: Finding) -> str:
    return "".join(f"{each}: " for each in (of.about, of.room) if each)
