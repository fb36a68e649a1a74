"""Cans and mixes as a person uses them: mixed, used, spoiled, corrected, found again."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from run import Answer, Finishlog, furnished

from finishlog import errors


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    """Hand out the invented shop as it was on the evening of the 24th, before the first coat."""
    return _with_clear(furnished(tmp_path, before="2026-11-24T18:20"))


@pytest.fixture
def unused(tmp_path: Path) -> Finishlog:
    """Hand out the invented shop before anything was logged."""
    return _with_clear(furnished(tmp_path, before="2026-11-21"))


def _with_clear(program: Finishlog) -> Finishlog:
    return program.played("product new clear --class waterborne-two-part")


def at(clock: str, day: int = 24) -> str:
    return f"2026-11-{day}T{clock}:00+00:00"


def mixes(shop: Finishlog, now: str) -> dict[str, Any]:
    answer = shop.did("ready", "--json", now=now).document["answer"]
    return {each["name"]: each for each in answer["mixed"]}


def ratio(shop: Finishlog, name: str) -> str:
    return str(shop.did("can", "show", name, "--json").document["answer"]["line"]["ratio"])


def last_act(answer: Answer) -> str:
    return answer.out.splitlines()[-1].removeprefix("act ")


def test_two_parts_by_volume_and_when_they_must_be_used_up(shop: Finishlog):
    said = shop.did("mix", "clear", "base:500ml", "hardener:50ml", now=at("21:00")).out
    assert "mix-1 mixed: clear, 10:1: 500 ml base, 50 ml hardener" in said
    assert "makes about 550 ml" in said
    assert "use it by 23:00" in said
    assert "isocyanate" in said
    (line,) = mixes(shop, at("22:00")).values()
    assert (line["product"], line["ratio"], line["overdue"]) == ("clear", "10:1", False)
    assert mixes(shop, at("23:10"))["mix-1"]["overdue"]
    assert "past its pot life since 23:00" in shop.did("ready", now=at("23:10")).out


def test_a_ratio_fills_a_jar(shop: Finishlog):
    parts = shop.did("mix", "clear", "10:1", "--jar", "330ml", "--json").document["answer"]["parts"]
    assert [(p["name"], p["volume_ml"]) for p in parts] == [("base", 300), ("hardener", 30)]


def test_a_hot_room_shortens_pot_life_and_a_cold_one_lengthens_nothing(shop: Finishlog):
    """UFGS-09971: half for each 10 °C warmer; the class is reckoned at 23 °C, 2 h at the least."""
    shop.did("mix", "clear", "10:1", "--jar", "110ml", now=at("21:00"))
    assert mixes(shop, at("21:30"))["mix-1"]["use_by"] == "2026-11-24T23:00:00Z"
    shop.did("air", "33C", "40%", "--at", "20:50", now=at("21:31"))
    assert mixes(shop, at("21:32"))["mix-1"]["use_by"] == "2026-11-24T22:00:00Z"


def test_the_label_of_the_can_beats_the_class(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", "--use-by", "4h", now=at("18:00"))
    assert mixes(shop, at("21:05"))["mix-1"]["use_by"] == "2026-11-24T22:00:00Z"
    shop.did("can", "edit", "mix-1", "--use-by", "5h")
    assert mixes(shop, at("21:05"))["mix-1"]["use_by"] == "2026-11-24T23:00:00Z"


def test_a_cut_is_said_in_both_units_with_its_definition(shop: Finishlog):
    said = shop.did("mix", "sealer", "flakes:120g", "alcohol:1L").out
    assert "1 lb cut, 120 g/L" in said
    assert "weight of flakes to the volume of alcohol" in said
    said = shop.did("mix", "sealer", "--cut", "2lb", "--jar", "500ml").out
    assert "2 lb cut, 240 g/L: 99.9 g flakes, 417 ml alcohol" in said
    assert "makes about 500 ml" in said


def test_thinning_a_cut_gives_the_ratio_by_each_definition(shop: Finishlog):
    before = shop.database.read_bytes()
    said = shop.did("mix", "sealer", "--from", "2lb", "--to", "1lb", "--tell").out
    assert "to 1 part of the old cut about 5/6 part of alcohol" in said
    assert "charts that take it to the liquid say 2/3 part" in said
    assert "nothing was put on record" in said
    assert shop.database.read_bytes() == before
    said = shop.did("mix", "sealer", "--from", "2lb", "--to", "1lb", "--jar", "500ml").out
    assert "1 lb cut, 120 g/L: 273 ml 2 lb cut" in said
    assert "227 ml alcohol" in said


def test_a_jar_is_thinned_by_its_own_cut(shop: Finishlog):
    shop.did("mix", "sealer", "--cut", "2lb", "--jar", "1L", "--name", "strong", "--batch", "F3")
    shop.did("mix", "sealer", "--from", "strong", "--to", "1lb", "--jar", "300ml", "--name", "weak")
    assert ratio(shop, "weak") == "1 lb cut, 120 g/L"
    said = shop.did("can", "show", "weak").out
    assert "drawn from  strong" in said
    assert "batch F3" in said


def test_thinned_varnish_says_that_a_coat_leaves_less(shop: Finishlog):
    shop.did("product", "new", "varnish", "--class", "alkyd-varnish")
    said = shop.did("mix", "varnish", "varnish:2", "mineral spirits:1").out
    assert "2:1: 2 parts varnish, 1 part mineral spirits" in said
    assert "a coat leaves less" in said


def test_an_ounce_that_does_not_say_which_is_refused(shop: Finishlog):
    answer = shop("mix", "sealer", "flakes:8oz", "alcohol:1qt")
    assert answer.code == errors.USAGE
    assert "8 fl oz or 8 oz wt" in answer.err
    shop.did("settings", "volume", "qt")
    shop.did("settings", "weight", "oz wt")
    said = shop.did("mix", "sealer", "flakes:8 oz wt", "alcohol:1 qt").out
    assert "2 lb cut: 8 oz wt flakes, 1 qt alcohol" in said


def test_the_only_open_mix_is_taken_and_said(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", "--batch", "B9", now=at("20:00"))
    said = shop.did("log", "leg", "clear", now=at("20:30")).out
    assert "coat 1, clear from mix-1, 10:1, batch B9" in said
    shop.did("mix", "clear", "10:1", "--jar", "110ml", now=at("20:40"))
    which = shop("log", "door-stop", "clear", now=at("20:45"))
    assert which.code == 3
    assert "--from mix-1 or --from mix-2" in which.err
    assert "from mix-2" in shop.did("log", "door-stop", "--from", "mix-2", now=at("20:46")).out
    assert "from mix" not in shop.did("log", "seat", "clear", "--from", "none").out


def test_a_coat_of_before_the_mixing_does_not_come_from_it(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", now=at("20:00"))
    assert "from mix" not in shop.did("log", "leg", "clear", "--at", "19:00", now=at("20:30")).out
    said = shop.did("log", "leg", "--from", "mix-1", "--at", "19:10", now=at("20:31")).out
    assert "nothing on record says that mix-1 was mixed by then" in said


def test_past_its_pot_life_it_is_recorded_with_a_stop(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", now=at("18:00"))
    said = shop.did("log", "leg", "clear", now=at("21:00")).out
    assert "coat 1, clear from mix-1" in said
    assert "stop: mix-1 is past its pot life by 1 h" in said
    assert "stop: mix-1" not in shop.did("log", "seat", "clear", "--at", "19:00").out


def test_topping_up_is_recorded_and_keeps_the_old_age(shop: Finishlog):
    shop.did("mix", "clear", "base:300ml", "hardener:30ml", "--name", "pot", now=at("20:00"))
    said = shop.did(
        "mix", "clear", "base:100ml", "hardener:10ml", "--name", "pot", now=at("21:00")
    ).out
    assert "pot topped up: clear, 10:1" in said
    assert "use it by 22:00" in said
    assert "the age of the first mixing counts" in said
    shown = shop.did("can", "show", "pot").out
    assert "400 ml base" in shown
    shop.did("undo", now=at("21:02"))
    shown = shop.did("can", "show", "pot").out
    assert "300 ml base" in shown
    assert "topped up" not in shown


def test_a_mix_is_undone_and_redone_like_any_act(shop: Finishlog):
    act = last_act(shop.did("mix", "clear", "10:1", "--jar", "110ml", "--name", "pot"))
    undo = shop.did("undo", "--json").document["answer"]["act"]
    assert mixes(shop, at("21:10")) == {}
    assert "UNDONE" in shop.did("history").out
    shop.did("undo", str(undo))
    assert list(mixes(shop, at("21:10"))) == ["pot"]
    shop.did("undo", act)
    assert "pot mixed" in shop.did("mix", "clear", "10:1", "--jar", "110ml", "--name", "pot").out


def test_an_emptied_pot_lends_its_name_to_the_next(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", "--name", "pot", now=at("18:00"))
    shop.did("log", "leg", "clear", now=at("18:10"))
    said = shop.did("can", "emptied", "pot", now=at("19:00")).out
    assert "local waste rules" in said
    shop.did("mix", "clear", "10:1", "--jar", "110ml", "--name", "pot", now=at("20:00"))
    assert mixes(shop, at("20:05"))["pot"]["made_at"] == "2026-11-24T20:00:00Z"
    assert "from pot-2026" in shop.did("on", "leg").out


def test_the_cut_was_wrong_and_no_date_of_a_coat_moves(shop: Finishlog):
    """Flakes measured by volume: the cut was weaker than meant; what was done stays done."""
    act = last_act(shop.did("mix", "sealer", "flakes:120g", "alcohol:1L", now=at("18:00")))
    shop.did("log", "leg", "sealer", now=at("18:10"))
    before = shop.did("when", "leg", "--json").document["answer"]["lines"]
    said = shop.did("amend", act, "--amount", "flakes:90g").out
    assert "mix-1: 0.75 lb cut, 90 g/L, was 1 lb cut, 120 g/L" in said
    assert "coats from it keep their dates: stools/leg ×12" in said
    assert shop.did("when", "leg", "--json").document["answer"]["lines"] == before
    assert "0.75 lb cut" in shop.did("on", "leg").out
    history = shop.did("history").out
    assert f"AMENDED by act {int(act) + 2}" in history
    assert "parts: 90 g flakes, 1 L alcohol, was 120 g flakes, 1 L alcohol" in history
    shop.did("undo", str(int(act) + 2))
    assert ratio(shop, "mix-1") == "1 lb cut, 120 g/L"


def test_the_time_of_mixing_is_amended_and_its_end_follows(shop: Finishlog):
    act = last_act(shop.did("mix", "clear", "10:1", "--jar", "110ml", "--use-by", "4h"))
    shop.did("amend", act, "--at", "19:00")
    assert mixes(shop, at("21:10"))["mix-1"]["use_by"] == "2026-11-24T23:00:00Z"


def test_an_amount_of_a_part_that_is_not_in_it_is_refused(shop: Finishlog):
    act = last_act(shop.did("mix", "sealer", "flakes:120g", "alcohol:1L"))
    answer = shop("amend", act, "--amount", "water:90ml")
    assert answer.code == errors.USAGE
    assert "its parts: flakes, alcohol" in answer.err
    coat = last_act(shop.did("log", "leg", "clear", "--from", "none"))
    assert "no amounts to amend" in shop("amend", coat, "--amount", "flakes:90g").err


def test_a_coat_came_from_another_can_after_all(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", now=at("20:00"))
    act = last_act(shop.did("log", "leg", "clear", now=at("20:10")))
    shop.did("can", "new", "can-2", "--product", "clear", "--batch", "C4")
    shop.did("amend", act, "--from", "can-2")
    assert "clear from can-2, batch C4" in shop.did("on", "leg").out
    shop.did("amend", act, "--from", "none")
    assert "clear from" not in shop.did("on", "leg").out


def test_an_amendment_of_a_coat_keeps_where_it_came_from(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml", now=at("20:00"))
    act = last_act(shop.did("log", "leg", "clear", "--minutes", "20", now=at("20:10")))
    shop.did("amend", act, "--at", "20:05")
    assert "clear from mix-1" in shop.did("on", "leg").out


def test_waterborne_that_froze_is_stopped_until_it_is_tested(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat", "--opened", "1 Nov")
    said = shop.did("can", "frozen", "can-1", "--at", "yesterday").out
    assert "stop: can-1 froze" in said
    assert "finishlog can tested can-1" in said
    ready = shop.did("ready", "--json").document["answer"]["cans"]
    assert [(c["name"], c["findings"][0]["level"]) for c in ready] == [("can-1", "stop")]
    assert "stop: can-1 froze" in shop.did("log", "doors", "topcoat").out
    shop.did("can", "tested", "can-1", "--note", "no curds, hard next day")
    assert shop.did("ready", "--json").document["answer"]["cans"] == []
    assert "froze" not in shop.did("log", "doors", "topcoat", "--from", "can-1").out


def test_what_came_from_a_can_that_is_condemned_is_named(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat", "--opened", "now")
    shop.did("log", "doors", "topcoat", "--from", "can-1")
    said = shop.did("can", "condemned", "can-1", "--note", "skinned over").out
    assert "stop: can-1 is marked: do not use: skinned over" in said
    assert "coats from it: cabinet/doors ×2" in said
    assert "do not use" in shop.did("can", "list").out


def test_old_shellac_wants_the_drop_on_glass(shop: Finishlog):
    shop.did("can", "new", "flask", "--product", "sealer", "--jar", "--opened", "1 May 2026")
    said = shop.did("log", "leg", "sealer", "--from", "flask").out
    assert "flask was opened 207 d ago" in said
    assert "91 to 365 d, others say 182 d" in said
    assert "drop on glass" in said
    assert "about 15 min" in said
    listed = shop.did("can", "list").out
    assert "drop on glass" in listed


def test_a_can_that_holds_something_else_is_recorded_with_a_caution(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat", "--opened", "now")
    said = shop.did("log", "leg", "sealer", "--from", "can-1").out
    assert "caution: can-1 holds topcoat, not sealer" in said
    assert "coat 1, sealer from can-1" in said


def test_from_alone_says_what_went_on(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat", "--opened", "now")
    said = shop.did("log", "leg", "--from", "can-1").out
    assert "coat 1, topcoat from can-1" in said


def test_layers_from_mixes_of_very_different_age_are_cautioned(unused: Finishlog):
    unused.did("product", "new", "hard", "--class", "conversion-varnish")
    unused.did("mix", "hard", "10:1", "--jar", "550ml", "--name", "wed", now=at("09:00", 18))
    unused.did("log", "leg", "hard", "--from", "wed", now=at("09:00", 19))
    unused.did("mix", "hard", "10:1", "--jar", "550ml", "--name", "fri", now=at("09:00", 20))
    said = unused.did("log", "leg", "hard", "--from", "fri", now=at("09:30", 20)).out
    assert "went on from a mix 24 h old" in said


def test_past_shows_from_which_mix_and_batch(shop: Finishlog):
    shop.did("mix", "sealer", "flakes:240g", "alcohol:1L", "--batch", "F7")
    shop.did("log", "seat", "sealer")
    assert "from mix-1, 2 lb cut, 240 g/L, batch F7" in shop.did("past", "cherry").out


def test_the_name_of_a_can_changes_and_the_old_one_finds_it(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat")
    shop.did("can", "rename", "can-1", "big-can")
    assert "from big-can" in shop.did("log", "leg", "--from", "can-1").out
    assert "name: big-can, was can-1" in shop.did("history").out


def test_history_says_what_befell_a_can(shop: Finishlog):
    shop.did("can", "new", "big can", "--product", "topcoat", "--opened", "now")
    shop.did("can", "frozen", "big can")
    lines = shop.did("history", "--json").document["answer"][-2:]
    assert [(x["parts"], x["said"]) for x in lines] == [
        (["big can"], "opened"),
        (["big can"], "frozen"),
    ]


def test_an_edit_shows_what_it_was(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat", "--batch", "A1", "--amount", "1L")
    shop.did("can", "edit", "can-1", "--batch", "A2", "--amount", "750ml")
    history = shop.did("history").out
    assert "batch: A2, was A1" in history
    assert "amount: 750 ml, was 1 L" in history


def test_what_was_put_away_stays_with_its_coats(shop: Finishlog):
    shop.did("can", "new", "can-1", "--product", "topcoat", "--batch", "A1")
    shop.did("log", "leg", "--from", "can-1")
    shop.did("can", "archive", "can-1")
    assert "can-1" not in shop.did("can", "list").out
    assert "can-1" in shop.did("can", "list", "--archived").out
    assert "topcoat from can-1, batch A1" in shop.did("on", "leg").out
    assert "stools/leg ×12" in shop.did("can", "show", "can-1").out
    shop.did("can", "restore", "can-1")
    assert "can-1" in shop.did("can", "list").out


def test_a_mix_that_still_hardens_is_not_put_away(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml")
    answer = shop("can", "archive", "mix-1")
    assert answer.code == errors.USAGE
    assert "finishlog can emptied mix-1" in answer.err


def test_a_mix_emptied_a_month_ago_leaves_the_lists_by_itself(unused: Finishlog):
    unused.did("mix", "sealer", "flakes:120g", "alcohol:1L", now=at("18:00", 20))
    unused.did("can", "emptied", "mix-1", now=at("18:00", 21))
    assert "mix-1" in unused.did("can", "list").out
    unused.did("mix", "sealer", "flakes:120g", "alcohol:1L", now="2026-12-24T18:00:00+00:00")
    listed = unused.did("can", "list", now="2026-12-24T18:01:00+00:00").out
    assert "mix-1" not in listed
    assert "mix-2" in listed


def test_safety_notes_of_mixing_come_once_an_evening(shop: Finishlog):
    shop.did("product", "new", "lacquer", "--class", "lacquer-postcatalysed")
    first = shop.did("mix", "lacquer", "20:1", "--jar", "500ml", now=at("19:00", 26)).out
    assert "safety: " in first
    assert "spray" not in first
    assert "flame" in first
    again = shop.did("mix", "lacquer", "20:1", "--jar", "500ml", now=at("20:00", 26)).out
    assert "safety: " not in again
    words = ("log", "leg", "lacquer", "--method", "brush", "--from", "mix-2")
    assert "flame" not in shop.did(*words, now=at("20:05", 26)).out


def test_chlorine_bleach_is_mixed_with_nothing_but_water(shop: Finishlog):
    shop.did("product", "new", "bleach", "--class", "bleach-chlorine")
    assert "stop" not in shop.did("mix", "bleach", "bleach:1", "water:1", "--tell").out
    said = shop.did("mix", "bleach", "bleach:1", "vinegar:1", "--tell").out
    assert "stop: do not: an acid sets chlorine free" in said
    assert "if it is done: leave now, call from outside" in said


def test_leaving_names_what_is_mixed(shop: Finishlog):
    shop.did("mix", "clear", "10:1", "--jar", "110ml")
    assert "mix-1" in shop.did("leave").out


REFUSED = [
    (["mix", "clear"], "a mix has parts"),
    (["mix", "clear", "base"], "no part of a mix"),
    (["mix", "clear", "base:0", "hardener:1"], "a part of nothing"),
    (["mix", "clear", "base:1", "base:1"], "stands there twice"),
    (["mix", "clear", "base:500ml", "hardener:1"], "all of one kind"),
    (["mix", "clear", "10:1:1:1"], "two or three numbers"),
    (["mix", "clear", "10:1", "--jar", "500g"], "is a weight, not a volume"),
    (["mix", "sealer", "--cut", "2lb"], "one thing more"),
    (["mix", "sealer", "--from", "2lb"], "add --to 1lb"),
    (["mix", "sealer", "--from", "1lb", "--to", "2lb", "--jar", "1L"], "weaker"),
    (["mix", "sealer", "--from", "2lb", "--to", "1lb"], "how much of it?"),
    (["mix", "sealer", "--cut", "2lb", "--to", "1lb", "--jar", "1L"], "one of the two"),
    (["mix", "clear", "10:1", "--use-by", "30m"], "minutes or months"),
    (["mix", "clear", "10:1", "--at", "tomorrow 9:00"], "still to come"),
    (["mix", "clear", "10:1", "--name", "none"], "no container"),
    (["can", "new", "a/b", "--product", "topcoat"], "cannot name"),
    (["can", "new", "can-1", "--product", "topcoat", "--amount", "8oz"], "8 fl oz"),
    (["can", "edit", "can-1"], "nothing to change"),
]


@pytest.mark.parametrize(("words", "why"), REFUSED, ids=lambda v: " ".join(v)[:60])
def test_refused_with_one_line_and_nothing_changed(shop: Finishlog, words: list[str], why: str):
    before = shop.database.read_bytes()
    answer = shop(*words)
    assert answer.code == errors.USAGE, answer
    assert answer.out == ""
    (line,) = answer.err.splitlines()
    assert why in line
    assert shop.database.read_bytes() == before


@pytest.mark.parametrize(
    "words",
    [
        ["can", "show", "nothing"],
        ["can", "frozen", "nothing"],
        ["log", "leg", "topcoat", "--from", "nothing"],
        ["mix", "sealer", "--from", "nothing", "--to", "1lb", "--jar", "1L"],
        ["mix", "paint", "10:1"],
    ],
)
def test_no_such_can(shop: Finishlog, words: list[str]):
    answer = shop(*words)
    assert answer.code == errors.NO_SUCH_THING
    assert len(answer.err.splitlines()) == 1
