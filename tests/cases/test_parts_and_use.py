"""Questions about faces and parts, what holds a piece up, and who is to sleep in it."""

from __future__ import annotations

import re
from datetime import date, datetime

from tests.cases.question import Question
from tests.finisher import Finisher

FC042 = Question(
    "a top cups after one face was coated a day before the other: what happened, what now",
    shows=(
        "faces are counted apart; one ahead of the other for a day is said",
        "the order: underside, turned, top; and from when it may be turned",
        "that a bare underside is to blame is disputed: a note, not a rule",
    ),
    trap="a coat on Monday and one on Tuesday are two coats on the top",
)


def test_fc042_a_top_that_has_a_coat_on_one_face_may_cup(finisher: Finisher):
    finisher.types(
        "2026-01-12 07:30",
        "product new poly --class oil-polyurethane",
        "steps new each poly@top poly@underside",
        "part new trestle/board --species walnut --face underside:hidden --face top --steps each",
        "shop hours 'mon-sun 7:00-21:00'",
        "air 20C 35%",
    )
    plan = finisher.reads("2026-01-12 07:30", "plan")
    finisher.types("2026-01-12 08:00", "log board --face top")
    waits = finisher.reads("2026-01-12 20:00", "ready")
    with FC042.line(2):
        assert plan.index("board, underside poly") < plan.index("board, top poly")
        assert "board, underside" in waits
        turn = finisher.after(finisher.reads("2026-01-12 20:00", "when board@top"), "turn")
        assert turn == "Tue 14:00"
        assert f"waits for face top (after {turn})" in waits
    finisher.types("2026-01-13 08:00", "air 13C 35%")
    ready = finisher.reads("2026-01-13 08:00", "ready -v")
    with FC042.line(1):
        assert "FACES UNEVEN" not in waits
        assert "top 1 coat, underside uncoated since Mon 08:00 (1 d): it may cup" in ready
    with FC042.line(3):
        assert "note: one trade author holds that a bare underside matters little" in ready
    finisher.types("2026-01-13 08:10", "log board poly --face underside")
    on = finisher.types("2026-01-14 08:00", "on board")
    with FC042.trap:
        assert "board, underside" in on
        assert "board, top" in on
        assert on.count("coat 1") == 2
        assert "coat 2" not in on
    cupped = finisher.types("2026-01-14 08:00", "air 13C 35%", "fault board cupped")
    assert "let air to both, and wait until it lies flat" in cupped


FC050 = Question(
    "a dozen parts, two faces, three coats, before the glue-up: how is it kept straight",
    shows=(
        "a table of parts, faces and coats, and what is missing before the glue-up",
        "glued up only when every member may be clamped and the tape is off",
        "glued together, the members keep their stories",
    ),
    trap="one percentage for the project",
)


def test_fc050_which_face_of_which_part_has_how_many_coats(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "air 23C 50%",
        "product new lacquer --class lacquer-sprayed",
        "steps new clear mask lacquer*3 untape",
        "part new bed/spindles -n 12 --face round --face tenon:joint --steps clear",
        "part new bed/panels -n 2 --face back:hidden --face front --face tongue:joint"
        " --steps clear",
        "part new bed/headboard --of spindles:12 --of panels:2",
        "log spindles panels mask",
        "log spindles lacquer",
        "log panels:1 lacquer --face back",
    )
    grid = finisher.reads("2026-03-02 10:00", "on bed/* --grid")
    with FC050.line(1):
        assert "spindles ×12 round 1 of 3, tape on tenon bare" in grid
        assert "panels:1 back 1 of 3, tape on front 0 of 3, tape on tongue bare" in grid
        assert "panels:2 back 0 of 3, tape on front 0 of 3, tape on tongue bare" in grid
        assert "headboard waits for spindles, panels: coat still to come" in grid
    with FC050.trap:
        assert "%" not in grid
        assert "%" not in finisher.types("2026-03-02 10:00", "on headboard")
    with FC050.line(2):
        early = finisher.types("2026-03-02 10:00", "log headboard glue-up")
        assert "stop: headboard: members are not ready for cauls" in early
    finisher.types("2026-03-02 10:01", "undo")
    finisher.types("2026-03-02 12:30", "log panels:1 lacquer --face front", "log panels:2 lacquer")
    finisher.types("2026-03-02 13:00", "log spindles lacquer")
    finisher.types("2026-03-02 18:00", "air 23C 50%", "log spindles panels lacquer")
    finisher.types("2026-03-03 08:00", "air 23C 50%", "log panels lacquer")
    taped = finisher.reads("2026-03-03 12:00", "on bed/* --grid")
    finisher.types("2026-03-03 12:00", "log spindles panels untape")
    soft = finisher.reads("2026-03-03 12:01", "on headboard")
    finisher.types("2026-03-04 09:00", "air 23C 50%")
    done = finisher.reads("2026-03-04 09:00", "on headboard --grid")
    glued = finisher.types("2026-03-04 09:00", "log headboard glue-up")
    with FC050.line(2):
        assert "headboard waits for spindles, panels: untape still to come" in taped
        assert "waits for panels: clamp not reached (after" in soft
        assert "headboard nothing is missing: every member may be clamped" in done
        assert "stop" not in glued
    after = finisher.reads("2026-03-04 10:00", "on bed/* --grid")
    with FC050.line(3):
        assert "spindles ×12 in headboard round 3" in after
        assert "panels ×2 in headboard back 3 front 3" in after
        spindles = finisher.types("2026-03-04 10:00", "history spindles")
        assert spindles.count("coat lacquer") == 3
        assert "glued up" in spindles
        assert "coat 3 lacquer" in finisher.reads("2026-03-04 10:00", "on headboard")


FC055 = Question(
    "a cot: how long after the last coat may a child sleep in it",
    shows=(
        "the last coat of the last part, until it is hard, and no smell",
        "how far the advice runs, and the long end taken for a child",
        "the project says for whom it is",
    ),
    trap="the first part to be ready, or dry to the touch after a day",
)


def test_fc055_a_cot_waits_for_its_last_part_for_the_longest_and_for_no_smell(finisher: Finisher):
    finisher.types(
        "2026-03-02 09:00",
        "product new poly --class oil-polyurethane",
        "project new cot --for child",
        "part new cot/ends -n 2",
        "part new cot/rails -n 2",
        "air 23C 50%",
        "log ends poly",
    )
    finisher.types("2026-03-12 09:00", "air 23C 50%", "log rails poly")
    paper = finisher.reads("2026-03-13 09:00", "handover cot --card")
    child = paper.partition("FOR CHILD ")[2]
    with FC055.line(1):
        ends, rails = (
            finisher.after(finisher.reads("2026-03-13 09:00", f"when {part}"), "fully hard")
            for part in ("ends", "rails")
        )
        assert ends == "Thu 2 Apr"
        assert rails == "Sun 12 Apr"
        assert child.startswith("not before Sun 12 Apr 2026, and not while it smells of anything")
        assert "not smelt since the last coat" in child
    with FC055.line(2):
        assert "advice runs from 1 to 30 days; the longer counts" in child
    with FC055.line(3):
        assert "ask a doctor" in child
        assert "FOR CHILD" not in finisher.types(
            "2026-03-13 09:00", "part new shelf/board", "log board poly", "handover shelf --card"
        )
    with FC055.trap:
        assert "not before Thu 2 Apr" not in child
        assert "safe from" not in paper
        finisher.types("2026-04-20 09:00", "check rails smells")
        late = finisher.reads("2026-04-20 09:01", "handover cot --card")
        assert "no date can be given" in late


FC043 = Question(
    "a batch of tops in two sizes, coated on one side",
    shows=(
        "how many of which size have how many coats on each face",
        "which are uneven, and since when",
        "the other face of one size is logged in one line",
    ),
    trap="two coats counted: finished",
)


def test_fc043_tops_of_two_sizes_with_a_bare_side(finisher: Finisher):
    finisher.types(
        "2026-05-02 08:00",
        "product new catalysed --class conversion-varnish",
        "part new cafe/small -n 19 --species beech --face top --face bottom",
        "part new cafe/large -n 19 --species beech --face top --face bottom",
        "air 22C 50%",
        "log small large catalysed --face top",
    )
    finisher.types("2026-05-02 09:00", "log small large catalysed --face top")
    grid = finisher.reads("2026-05-04 09:00", "on cafe/* --grid")
    with FC043.line(1):
        assert "small ×19 top 2 bottom 0" in grid
        assert "large ×19 top 2 bottom 0" in grid
    uneven = finisher.reads("2026-05-04 09:00", "air 22C 50%", "ready")
    with FC043.line(2):
        for size in ("small", "large"):
            assert f"cafe/{size} ×19 top 2 coats, bottom uncoated since Sat 08:00 (2 d)" in uneven
    logged = finisher.reads("2026-05-04 09:05", "log large catalysed --face bottom")
    after = finisher.reads("2026-05-04 09:06", "on cafe/* --grid")
    with FC043.line(3):
        assert logged.startswith("09:05 large ×19, bottom: coat 1, catalysed")
        assert "on 19 of 19 pieces" in logged
        assert "large ×19 top 2 bottom 1" in after
        assert "small ×19 top 2 bottom 0" in after
    with FC043.trap:
        assert "it may cup; coat bottom soon" in uneven
        assert "every step is behind" not in uneven


FC048 = Question(
    "two woods at two stages: when may each be packed",
    shows=(
        "the hour of packing for each set",
        "a step that was missed moves its own wood alone",
        "foam asks more of a film than dry to the touch",
    ),
    trap="one last coat for the project: one set waits in vain, or the other goes too soon",
)


def test_fc048_each_wood_has_its_own_hour_of_packing(finisher: Finisher):
    finisher.types(
        "2026-05-01 08:00",
        "product new lacquer --class lacquer-sprayed",
        "product new skim --class wiping-varnish",
        "steps new set lacquer*3 skim",
        "part new boxes/pale --species maple --steps set",
        "part new boxes/dark --species walnut --steps set",
        "air 21C 50%",
        "log pale dark lacquer",
    )
    finisher.types("2026-05-01 12:00", "air 21C 50%", "log pale dark lacquer")
    finisher.types("2026-05-01 20:00", "air 21C 50%", "log pale lacquer")
    finisher.types("2026-05-02 08:00", "air 21C 50%", "log pale skim", "log dark lacquer")
    before = finisher.reads("2026-05-02 11:00", "when pale")
    finisher.types("2026-05-02 20:00", "air 21C 50%", "log dark skim")
    now = "2026-05-02 20:01"
    pale, dark = (finisher.reads(now, f"when {part}") for part in ("pale", "dark"))
    with FC048.line(1):
        assert finisher.after(pale, "pack")
        assert finisher.after(dark, "pack")
        sooner, later = (finisher.stage(now, part, "pack")["high"] for part in ("pale", "dark"))
        assert sooner < later
    with FC048.line(2):
        assert finisher.after(before, "pack") == finisher.after(pale, "pack") != ""
        assert finisher.after(pale, "tack-free") != finisher.after(dark, "tack-free")
    card = finisher.reads(now, "handover boxes --card")
    with FC048.line(3):
        assert "dry to the touch is not dry enough to pack: foam, paper and wrap stick" in card
    with FC048.trap:
        assert "pale (maple)" in card
        (line,) = finisher.asks(now, "when pale")["lines"]
        assert line["since"].startswith("2026-05-02T07:00")


FC054 = Question(
    "it felt hard after two days, was used and took a print",
    shows=(
        "three dates: light use, normal use, fully hard, by the air that was logged",
        "a note to hand over",
        "felt hard is no test: smell and thumbnail are offered",
    ),
    trap="one date",
)


def test_fc054_light_use_normal_use_and_hard_are_three_dates(finisher: Finisher):
    finisher.types(
        "2026-05-01 08:00",
        "product new poly --class oil-polyurethane",
        "part new table/top --species oak",
        "air 23C 50%",
        "log top poly",
    )
    finisher.types("2026-05-03 08:00", "air 23C 50%", "log top poly --scuffed")
    finisher.types("2026-05-05 08:00", "air 23C 50%", "log top poly --scuffed")
    finisher.types("2026-05-07 08:00", "air 23C 50%")
    card = finisher.types("2026-05-07 08:00", "handover table --card")
    dates = _not_before(card)
    finisher.types("2026-05-07 08:05", "air 12C 50%")
    colder = _not_before(finisher.types("2026-05-07 08:10", "handover table --card"))
    with FC054.line(1):
        assert dates.keys() == colder.keys() >= {"light use", "normal use", "fully hard"}
        used, normal, hard = (dates[x] for x in ("light use", "normal use", "fully hard"))
        assert date(2026, 5, 7) < used < normal <= hard
        assert all(colder[what] > dates[what] for what in ("light use", "normal use", "fully hard"))
    with FC054.line(2):
        assert card.startswith("CARE CARD: table")
        assert "last coat Tue 5 May 2026" in card
        assert "light use: nothing left on it, nothing hot or wet, no cloth." in card
    for felt in ("hard", "'felt hard'"):
        refused = finisher.tries("2026-05-07 08:00", f"check top {felt}")
        with FC054.line(3):
            assert refused.code == 2
            assert "may still be soft inside" in refused.err
            assert "smell it: no-smell or smells; press a thumbnail: no-print or prints" in (
                " ".join(refused.err.split())
            )
    with FC054.trap:
        assert len(set(dates.values())) > 1


def _not_before(card: str) -> dict[str, date]:
    """Read the dates of a care card, by what each is for."""
    rows = card.partition("NOT BEFORE\n")[2].partition("THE DATES")[0].splitlines()
    read = (re.fullmatch(r"  (.*?)  +\w{3} (\d+ \w{3} \d{4})", row) for row in rows)
    return {
        what: datetime.strptime(f"{found[2]} +0000", "%d %b %Y %z").date()
        for found in read
        if found
        for what in found[1].split(", ")
    }


FC102 = Question(
    "rubber feet and vinyl mats on lacquer: from when",
    shows=(
        "two lists on the card: not before a date, and never",
        "what is never is told by the finish and the use, not by its age",
    ),
    trap="fully hard on such a day: use it normally",
)


def test_fc102_what_never_may_lie_on_it_has_no_date(finisher: Finisher):
    finisher.types(
        "2026-05-02 08:00",
        "product new lacquer --class lacquer-sprayed",
        "product new soap --class soap",
        "project new office",
        "project new soaped",
        "part new office/desk",
        "part new soaped/table",
        "air 22C 50%",
        "log desk lacquer",
        "log soaped/table soap",
    )
    # Another finish and another use: without them nobody sees what the list goes by.
    finisher.types(
        "2026-05-02 08:00",
        "project new breadboard --for food",
        "part new breadboard/top",
        "log breadboard/top lacquer",
    )
    pages = [
        finisher.types(now, "handover office --card")
        for now in ("2026-05-02 09:00", "2026-05-30 09:00", "2028-05-02 09:00")
    ]
    never = [page.partition("NEVER")[2].partition("CARE\n")[0] for page in pages]
    old = "2028-05-02 09:00"
    soaped, board = (
        finisher.types(old, f"handover {name} --card").partition("NEVER")[2].partition("CARE\n")[0]
        for name in ("soaped", "breadboard")
    )
    with FC102.line(1):
        assert "NOT BEFORE" in pages[0]
        assert never[0].startswith(", HOWEVER OLD IT IS")
        assert "soft plastic or rubber (vinyl mats, rubber feet)" in never[0]
        assert "felt or cotton between" in never[0]
        assert not re.search(r"\b20\d\d\b", never[0])
    with FC102.line(2):
        assert never[0] == never[1] == never[2]
        assert "they dissolve lacquer" in never[0]
        assert "they dissolve lacquer" not in soaped
        assert "knives and the dishwasher" in board
        assert "knives" not in never[2]
    with FC102.trap:
        for page in pages:
            assert "rubber" not in page.partition("NOT BEFORE")[2].partition("NEVER")[0]
            assert "use normally" not in page


FC098 = Question(
    "end grain glued on a face that was oiled twenty years ago: two joints open, how is it kept",
    shows=(
        "a glue face is kept bare: any coat on it is said, however old, at the coat and after",
        "the joints with the same history, by name, also those that still hold",
        "before the glue-up: what is taped, what is not bare",
    ),
    trap="coated before it was glued: in order",
)


def test_fc098_glue_on_an_oiled_face_stays_in_sight_and_names_the_others(finisher: Finisher):
    begun = "2026-01-10 10:00"
    old = finisher.reads(
        begun,
        "product new oil --class boiled-linseed-oil",
        "part new boards/slices -n 8 --face side:joint --face end",
        "log slices oil --face side --at '2006-01-10 10:00'",
    )
    grid = finisher.reads(begun, "part new boards/board -n 2 --of slices:4", "on boards/* --grid")
    glued = finisher.reads(begun, "log board:1 glue-up")
    finisher.types(begun, "log board:2 glue-up", "part new boards/frame -n 2 --face tenon:joint")
    with FC098.line(1):
        assert "slices side is a glue face: glue needs bare wood; scrape it back" in old
        assert "stop: board: members are not ready for cauls: slices: finish on a glue" in glued
        assert "part it before the glue sets, and scrape every such face back" in glued
    with FC098.line(3):
        assert "slices ×8 side NOT BARE: 1 end 0" in grid
        assert "board ×2 waits for slices: finish on a glue face" in grid
        finisher.types(begun, "part new boards/tray --of frame:2", "log frame mask --face tenon")
        taped = finisher.reads(begun, "on boards/* --grid")
        assert "tray waits for frame: tape to come off" in taped
    later = finisher.reads("2026-01-20 10:00", "ready")
    with FC098.trap:
        assert "board ×2 coats done; clamp is blocked: oil on a glue face: does the joint" in later
        assert "pack blocked: oil on a glue face" in finisher.reads(
            "2026-01-20 10:00", "when board:2"
        )
        assert "fully hard" not in later
    opened = finisher.reads("2026-02-10 10:00", "fault board:1 open-joint")
    with FC098.line(2):
        assert "the log finish, wax or oil on the glue face: oil on slices:1-4, side" in opened
        assert "the same board:2, slices side in board: oil on the glue face" in opened
        assert "so too every other joint with the same history, also those that" in opened
        assert "tray" not in opened


FC099 = Question(
    "finished before or after assembly, shellac and then an oil mix, in a shop of 55 °F",
    shows=(
        "tape, coats, tape off, glue, then the outside: each waits for the one before",
        "a film under an oil that has to soak in is questioned before anything is coated",
        "the house is offered as a place to dry",
    ),
    trap="a list of coats",
)


def test_fc099_panels_are_finished_flat_and_the_outside_after_the_glue_up(finisher: Finisher):
    begun = "2026-01-10 10:00"
    finisher.types(
        begun,
        "product new sealer --class shellac-2lb",
        "product new mix --class oil-varnish-blend",
        "room new shop",
        "room new house",
        "air 55F 40% --room shop",
        "air 68F 40% --room house",
        "shop hours 'mon-sun 8:00-20:00'",
        "steps new plain sealer mix*2",
    )
    faces = "--species 'red oak' --face inside --face outside --face tongue:joint"
    bare = finisher.reads(begun, f"part new trial/panel {faces} --steps plain")
    checked = finisher.reads(begun, "steps check plain --on 'red oak'")
    with FC099.line(2):
        assert "2 mix after 3 h" in checked
        assert "over dewaxed shellac, 2 lb cut: A blend cannot soak into a film" in checked
        assert "do: Use wiping varnish over a film" in checked
    with FC099.line(1):
        assert "tongue to be kept bare: mask before the first coat, untape before the" in bare
    finisher.types(
        begun,
        "steps new flat mask mix@inside mix@inside untape glue-up mix@outside mix@outside",
        f"part new unit/panels -n 4 {faces} --steps flat",
        "part new unit/case --of panels:4",
    )
    plan = finisher.reads(begun, "plan unit -v")
    with FC099.line(1):
        order = ("mask unit/panels", "panels ×4, inside mix 2", "untape unit/", "glue-up unit/case")
        places = [plan.index(step) for step in order]
        assert places == sorted(places)
        outside = plan.index("case, panels outside mix 1 of 2")
        assert places[-1] < outside < plan.index("case, panels outside mix 2 of 2")
        assert "panels ×4, outside mix" not in plan
    finisher.types(begun, "log panels mask", "log panels mix --face inside")
    finisher.types("2026-01-10 10:10", "log panels wipe --face inside")
    why = finisher.reads("2026-01-10 10:11", "why panels@inside")
    with FC099.line(3):
        assert "sooner in house, 20 °C, 40 %, from now: after" in why
        assert "only where nobody lives, eats or sleeps" in why
    with FC099.trap:
        early = finisher.reads("2026-01-10 10:12", "log case glue-up")
        assert "stop: case: members are not ready for cauls" in early
        # What was left of the members' steps goes on on the case, and is not lost.
        inside, outside = finisher.reads("2026-01-14 09:00", "on case").split("unit/case, panels o")
        assert "coat 1 mix" in inside
        assert "to come mix@inside, untape now" in inside
        assert "to come untape, mix@outside, mix@outside" in outside
