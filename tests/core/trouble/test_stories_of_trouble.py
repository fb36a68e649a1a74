"""The true cause of an invented story comes first, for each failed check and each kind of fault.

When the first set was written 133 of its 187 came first as the program stood, and 46 were of
causes that it did not know. The second was written when those were built: 160 of 171 came first
before anything was mended, at least 9 of 12 by kind of check, and one was left out, by a figure
of the story that the facts hold to be usual. Of the third, written after that, 29 of 30. Of the
fourth, of failed checks alone, 56 of 60, with all that missed among the ten of tacky and one of
those struck out: a primer that was called an oil, an oil under a barrier held to be the same as one
without (its story gave the cause another name), a wipe told late, and a wood that is not known. Of
the fifth, of kinds of fault alone, 77 of 89, before what they missed was built and two were told
right.

Of the sixth, of all, 340 of 380: 24 were not first, 15 struck out and one not read; under 8 of 10
were scratches (6), dust, lap marks, surplus and smears (7). 14 of the 40 were told wrongly, most of
them of a cause that no log can show where the log was silent of what it can; 26 were mended. Of the
seventh, of all again, 377 of 380, at least 9 of 10 of each kind: two were struck out (a thick coat
under a thinner one, and surplus that its solvent had taken off, as it was told), one was not read.
Of the eighth, in which the sick part differs in what did no harm too (can, tool, paper, room), 233
of 236, none struck out: a tool that was merely another one came before what was known to do harm.
Of the ninth, in which the sound part shares what looks harmful, 116 of 116. Of the tenth, of causes
that were asked of a kind for the first time, 79 of 85; two were struck out. Of the eleventh, of all
kinds once more when those were built, 140 of 140; of the twelfth, of two more causes of what stays
soft, 6 of 6; of the thirteenth, of scratches when their steps were judged anew, 20 of 20.

Of the fourteenth, of all kinds, 364 of 380: 7 were not first, 9 struck out; 37 of the 38 kinds had
at least 9 of 10, left-thick 6. Eight were judged to be told wrongly. One is left out (shellac below
brushed lacquer, which suits); three are set right (a catalysed varnish without its hardener, epoxy
that nobody washed, a control that was sealed too); two of left-thick were wiped over their minutes,
which is "not wiped off": "stood longer" is within them; two were carried before the film was fully
hard, where humid air is the name, and are carried later. The other eight were mended. Of what sits
in a coat below, asked beside it, 3 of 18 came first before that was built. Of the fifteenth, told
when it was, 30 of 30: ten of left-thick, twenty of a coat below. Of the sixteenth, of a coat below
in kinds of which that had not been thought, and others, 6 of 11: three were struck out and one was
not first until their causes were asked of what lies below; one, a sheen under wax, is left out, and
is still not first. Of the seventeenth, in which another coat differs in what did no harm, 11 of 11;
one more was left out, for a second control had what it blamed. Who told the sixth and the
fourteenth had not read the code; who told the others had.
"""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from finishlog.core.log.words import FaultKind, Found
from finishlog.core.published.fault_kinds import Evidence
from tests.core.trouble.told_trouble import rank, suspects
from tests.rows import every_row
from tests.shop_of import FACTS

TOLD = tomllib.loads(Path(__file__).with_name("stories_of_trouble.toml").read_text("utf-8"))
SETS = [name for name in TOLD if name not in {"not_yet", "silent"}]
# The first and the latest stand for all of them where a person waits.
DAILY = ("first", "fourteenth", "fifteenth")
KINDS = {kind for told in (TOLD["first"], TOLD["second"]) for kind in told}
# A pass that is written as a failure finds nothing; `other` has no causes by its nature.
CHECKS = {"tacky", "gums", "prints", "smells", "flakes", "softens", "cupped", "sample-soft"}
OF_THE_WOOD = {"glue", "scratches", "snipe"}


def rows(which: str) -> list[tuple[str, str, str]]:
    return [(kind, *row) for kind, told in TOLD[which].items() for row in told]


def test_a_story_is_told_of_every_failed_check_and_of_every_fault_with_causes():
    faults = {f"fault {known.kind.value}" for known in FACTS.faults if known.causes}
    assert {f"check {found}" for found in CHECKS | OF_THE_WOOD} | faults == KINDS
    assert {Found(found) for found in CHECKS | OF_THE_WOOD}
    assert {f"fault {kind.value}" for kind in FaultKind} - faults == {"fault other"}
    for kind in (f"check {found}" for found in CHECKS):
        assert len(TOLD["first"][kind]) >= 10
        assert len(TOLD["second"][kind]) >= 10


@every_row("kind, true, line", [row for which in DAILY for row in rows(which)])
def test_the_true_cause_comes_first_and_is_never_struck_out(kind: str, true: str, line: str):
    _comes_first(kind, true, line)


@pytest.mark.thorough
@every_row("kind, true, line", [row for which in SETS for row in rows(which)])
def test_so_it_does_in_every_set(kind: str, true: str, line: str):
    _comes_first(kind, true, line)


def _comes_first(kind: str, true: str, line: str) -> None:
    assert f"{kind} +" in f"{line} +"
    assert rank(line, Evidence(true)) == 0, [x.cause.words for x in suspects(line)]


@every_row("kind, true, line", rows("not_yet"))
def test_what_is_not_first_yet_is_not_struck_out(kind: str, true: str, line: str):
    assert f"{kind} +" in f"{line} +"
    found = rank(line, Evidence(true))
    assert found is not None
    assert found > 0, "it is first now: it goes to the others"


@every_row("kind, cause, line", rows("silent"))
def test_what_did_no_harm_is_not_shown_as_the_cause(kind: str, cause: str, line: str):
    assert f"{kind} +" in f"{line} +"
    shown = {each.cause.evidence for each in suspects(line) if each.is_shown}
    assert Evidence(cause) not in shown
