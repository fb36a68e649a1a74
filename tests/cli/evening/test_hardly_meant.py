"""What is hardly meant: a person is asked first, a script is recorded with a caution by name.

Another step was due, the same coat twice within minutes, a check in the minute of its coat. All
invented.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from run import Finishlog, furnished
from terminal_session import TerminalSession

from finishlog.acts.answers.doubts import SAME_COAT
from finishlog.core.finish.stages import Stage
from tests.shop_of import FACTS

NIGHT = "2026-11-26T21:05:00+00:00"
SOON = "2026-11-26T21:09:00+00:00"


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


def cautions(page: str, words: str) -> list[str]:
    return [x for x in page.splitlines() if x.startswith("caution: ") and words in x]


def test_the_same_coat_within_minutes_is_recorded_with_a_caution_in_a_script(shop: Finishlog):
    shop.did("log", "leg", "seat", "oil", now=NIGHT)
    (caution,) = cautions(shop.did("log", "leg", "oil", now=SOON).out, "the same coat again?")
    assert caution.startswith("caution: leg ×12: oil is on record 4 min from this one")
    assert "finishlog undo" in caution


def test_at_a_terminal_it_is_asked_and_no_records_nothing(shop: Finishlog):
    shop.did("log", "leg", "oil", now=NIGHT)
    before = shop.database.read_bytes()
    with TerminalSession(shop, "log", "leg", "oil", FINISHLOG_NOW=SOON) as session:
        session.answer("4 min from this one: the same coat again? [y/N]", "n")
    assert session.code == 2
    assert "nothing was recorded" in session.screen
    assert shop.database.read_bytes() == before
    with TerminalSession(shop, "log", "leg", "oil", FINISHLOG_NOW=SOON) as session:
        session.answer("the same coat again? [y/N]", "y")
    assert session.code == 0
    assert "coat 2, oil" in session.screen


def test_a_coat_typed_late_beside_one_that_stands_is_asked_about_too(shop: Finishlog):
    shop.did("log", "leg", "oil", "--at", "20:00", now=NIGHT)
    page = shop.did("log", "leg", "oil", "--at", "19:55", now=NIGHT).out
    assert cautions(page, "the same coat again?")


def test_a_second_coat_after_its_time_or_of_another_finish_is_not_asked_about(shop: Finishlog):
    shop.did("log", "leg", "oil", now="2026-11-26T09:00:00+00:00")
    assert "same coat" not in shop.did("log", "leg", "oil", now=NIGHT).out
    assert "same coat" not in shop.did("log", "leg", "sealer", now=SOON).out


def test_a_coat_that_was_taken_off_is_put_on_again_without_a_question(shop: Finishlog):
    shop.did("log", "leg", "oil", now=NIGHT)
    shop.did("off", "leg", "--to", "bare", now="2026-11-26T21:07:00+00:00")
    assert "same coat" not in shop.did("log", "leg", "oil", now=SOON).out


def test_no_class_of_finish_is_recoated_so_soon_that_two_coats_look_like_one():
    """The bound is our own; it must lie below every figure that there is."""
    for of in (each for each in FACTS.classes.values() if not each.fills_spots):
        figure = of.stages.get(Stage.RECOAT)
        assert figure is None or figure.low_h * 3600 >= SAME_COAT.total_seconds(), of.key


def test_a_check_in_the_minute_of_its_coat_is_cautioned_by_name(shop: Finishlog):
    shop.did("log", "leg", "oil", now=NIGHT)
    page = shop.did("check", "leg", "case", "dry", now="2026-11-26T21:05:40+00:00").out
    (caution,) = cautions(page, "in the minute of its coat")
    assert caution.startswith("caution: leg ×12: ")
    later = shop.did("check", "leg", "case", "tacky", now="2026-11-26T23:05:40+00:00").out
    assert "in the minute" not in later


def test_a_pass_long_before_its_time_is_cautioned_proves_nothing_and_opens_nothing(shop: Finishlog):
    """Wiped off, oil feels dry at once (from memory); a failed check is believed at any age."""
    shop.did("log", "leg", "oil", now=NIGHT)
    shop.did("log", "leg", "wipe", now="2026-11-26T21:15:00+00:00")
    when, now = ("when", "leg", "--json"), "2026-11-26T21:30:00+00:00"
    before = shop.did(*when, now=now).document["answer"]["lines"][0]["stages"]
    page = shop.did("check", "leg", "dry", now="2026-11-26T21:25:00+00:00").out
    (caution,) = cautions(page, "dry 20 min after oil went on: that takes")
    assert caution.startswith("caution: leg ×12: ")
    assert "what was wiped off feels dry at once" in caution
    assert "proves" not in page
    assert shop.did(*when, now=now).document["answer"]["lines"][0]["stages"] == before
    assert "went on: that takes" not in shop.did("check", "leg", "tacky", now=now).out
    with TerminalSession(shop, "check", "leg", "dry", FINISHLOG_NOW=now) as session:
        session.answer("Record it all the same? [y/N]", "y")
    assert session.code == 0
    late = shop.did("check", "leg", "dry", now="2026-11-28T21:05:00+00:00")
    assert "went on: that takes" not in late.out


def test_at_a_terminal_such_a_check_is_asked_about(shop: Finishlog):
    shop.did("log", "leg", "oil", now=NIGHT)
    with TerminalSession(shop, "check", "leg", "dry", FINISHLOG_NOW=NIGHT) as session:
        session.answer("A check of that coat? [y/N]", "")
    assert session.code == 2


def test_a_coat_where_another_coat_was_due_is_asked_about_by_the_name_of_the_part(
    shop: Finishlog,
):
    """The case has its sealer; on the doors the sealer is due."""
    shop.did("log", "doors", "sand", now="2026-11-26T08:00:00+00:00")
    words = ("log", "doors", "case", "topcoat")
    (caution,) = cautions(shop.did(*words, now=NIGHT).out, "sealer was due")
    assert caution.startswith("caution: doors ×2: ")
    assert "finishlog log cabinet/doors sealer --at WHEN" in caution
    shop.did("undo", now=NIGHT)
    with TerminalSession(shop, *words, FINISHLOG_NOW=NIGHT) as session:
        session.answer("doors ×2: sealer was due. Record this all the same? [y/N]", "y")
    assert session.code == 0


def test_what_nobody_logs_is_not_asked_about(shop: Finishlog):
    """Sanding before the first coat is due on both doors, and is seldom logged."""
    assert "was due" not in shop.did("log", "doors", "sealer", now=NIGHT).out


def test_one_coat_more_of_the_same_is_a_choice(shop: Finishlog):
    shop.did("part", "new", "cabinet/shelf", now="2026-11-25T09:00:00+00:00")
    shop.did("steps", "new", "two", "sealer", "topcoat", now="2026-11-25T09:00:00+00:00")
    shop.did("part", "steps", "shelf", "--as", "two", now="2026-11-25T09:00:00+00:00")
    shop.did("log", "shelf", "sealer", now="2026-11-25T10:00:00+00:00")
    assert "was due" not in shop.did("log", "shelf", "sealer", now=NIGHT).out


def test_work_outside_the_schedule_is_not_asked_about(shop: Finishlog):
    for word in ("wipe", "solvent-wipe", "denib"):
        assert "was due" not in shop.did("log", "doors", word, now=NIGHT).out


def test_work_of_a_later_step_is_asked_about(shop: Finishlog):
    shop.did("log", "doors", "sand", now="2026-11-26T08:00:00+00:00")
    page = shop.did("log", "doors", "scuff", now=NIGHT).out
    assert cautions(page, "doors ×2: sealer was due")
