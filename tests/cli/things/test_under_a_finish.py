"""What lies under a finish, through the real commands: ten invented evenings, none in the facts."""

from __future__ import annotations

from tests.finisher import Finisher, said


def test_an_unwashed_seal_is_told_in_the_persons_own_units(finisher: Finisher):
    finisher.types("2026-03-02 08:00", "settings temperature F")
    finisher.types(
        "2026-03-02 08:00",
        "product new seal --class 'penetrating epoxy'",
        "product new clear --class waterborne-clear",
        "part new desk/top --species oak",
        "air 50F 88%",
        "mix seal base:8floz hardener:4floz --name pot",
        "log top seal --from pot",
    )
    log = finisher.reads("2026-03-12 08:00", "air 70F 50%", "log top clear")
    assert "50 °F, 88 % RH as it set" in log
    assert "finishlog log PART rinse" in log


def test_an_old_undercoat_is_sanded_and_a_young_primer_takes_enamel(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new under --class undercoater",
        "product new prime --class 'latex primer'",
        "product new gloss --class oil-enamel",
        "product new paint --class latex-enamel",
        "part new door/old --species poplar",
        "part new door/young --species poplar",
        "air 21C 50%",
        "log old under",
        "log young prime",
    )
    young = finisher.reads("2026-03-03 17:00", "air 21C 50%", "log young paint")
    old = finisher.reads("2026-04-15 08:00", "air 21C 50%", "over under gloss --on poplar")
    late = finisher.reads("2026-04-15 08:00", "log old gloss")
    assert "scuff" in late
    assert "scuff" not in young
    assert "sanded smooth" in old


def test_a_knot_wants_its_blocker_below_a_waterborne_primer_alone(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new prime --class acrylic-primer",
        "product new block --class 'stain blocker'",
        "part new shelf/board --species pine --face field --face knots",
        "air 21C 50%",
    )
    bare = finisher.reads("2026-03-02 08:10", "log board prime --face knots --no-edges")
    finisher.types("2026-03-02 08:11", "undo", "log board block --face knots --no-edges")
    after = finisher.reads("2026-03-02 14:10", "log board prime")
    assert "What is in a knot bleeds through paint" in bare
    assert "bleeds through paint" not in after


def test_tannin_wood_takes_an_oil_primer_and_no_waterborne_one(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new prime --class acrylic-primer",
        "product new oil --class 'oil-based primer'",
        "product new paint --class latex-enamel",
    )
    water = finisher.reads("2026-03-02 08:00", "over bare-wood prime --on 'white oak'")
    oily = finisher.reads("2026-03-02 08:00", "over bare-wood oil --on 'white oak'")
    assert "Tannin bleeds" in water
    assert "Tannin bleeds" not in oily


def test_a_filled_hole_is_told_before_the_stain_and_hides_no_wood(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new putty --class 'latex wood filler'",
        "product new stain --class wiping-stain",
        "part new box/lid --species pine",
        "part new box/side --species pine",
        "air 21C 50%",
        "log lid putty",
        "log side stain",
    )
    finisher.types("2026-03-02 08:08", "log side wipe")
    finisher.types("2026-03-02 12:30", "log lid sand")
    filled = finisher.reads("2026-03-02 13:00", "log lid stain")
    after = finisher.reads("2026-03-04 08:00", "air 21C 50%", "log side putty")
    assert "a filled spot stays light, or goes dark" in filled
    assert "stays light" not in after


def test_nothing_holds_on_a_wax_stick(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new varnish --class alkyd-varnish",
        "product new shellac --class shellac-1lb",
        "product new stick --class 'wax stick'",
        "part new table/top --species cherry",
        "air 21C 50%",
        "log top varnish",
    )
    filled = finisher.reads("2026-04-02 08:00", "air 21C 50%", "log top stick")
    more = finisher.reads("2026-04-03 08:00", "air 21C 50%", "log top varnish --scuffed")
    finisher.types("2026-04-03 08:01", "undo")
    thin = finisher.reads("2026-04-03 08:02", "log top shellac --scuffed")
    assert "stop" not in filled
    assert "Nothing sticks to wax" in more
    assert "the one finish that may hold on a small wax fill" in thin
    assert "stop" not in thin


def test_a_pour_is_counted_in_inches(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "settings film mil",
        "product new resin --class epoxy-pour",
        "product says resin --thickest '1/4 in'",
        "part new slab/void",
        "air 73F 50%",
    )
    steps = finisher.reads("2026-03-02 08:00", "steps new fill 'resin*3/4in'")
    thick = finisher.reads("2026-03-02 08:00", "log void resin --film '1/2 in'")
    assert "3 coats" in steps
    assert "0.5 in of poured epoxy at once, 0.25 in a coat at most" in thick


def test_a_stain_that_was_tacky_for_days_is_tried_before_lacquer(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new stain --class wiping-stain",
        "product new lacquer --class lacquer-sprayed",
        "part new bed/rail --species ash",
        "room new shop --night 20C",
        "room usual shop 0:21C/50%",
        "log rail stain",
    )
    finisher.types("2026-03-02 08:08", "log rail wipe")
    finisher.types("2026-03-05 08:00", "air 21C 50%", "check rail tacky")
    finisher.types("2026-03-08 08:00", "air 21C 50%", "check rail dry")
    log = finisher.reads("2026-03-08 08:10", "log rail lacquer --method spray")
    assert "stain took at least 72 h to be dry" in log


def test_sanding_an_unwashed_fill_is_warned_of_and_washing_is_not(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new fill --class 'thickened epoxy'",
        "part new top/board --species walnut",
        "air 21C 50%",
        "mix fill base:10ml hardener:5ml --name pot",
        "log board fill --from pot",
    )
    sanded = finisher.reads("2026-03-05 08:00", "air 21C 50%", "log board sand")
    finisher.types("2026-03-05 08:01", "undo")
    washed = finisher.reads("2026-03-05 08:02", "log board rinse")
    after = finisher.reads("2026-03-06 08:02", "log board sand")
    assert "fill was not washed, by the log" in sanded
    assert "caution" not in washed
    assert "washed" not in after


def test_three_coats_of_epoxy_in_their_window_are_washed_once(finisher: Finisher):
    finisher.types(
        "2026-03-02 08:00",
        "product new seal --class epoxy-seal",
        "product new varnish --class spar-varnish",
        "part new boat/thwart --species ash",
        "room new shop --night 20C",
        "room usual shop 0:21C/50%",
        "air 21C 50%",
    )
    for n, hour in enumerate(("02 08:10", "02 19:10", "03 08:00")):
        mixed = f"mix seal base:100ml hardener:50ml --name pot{n}"
        lines = ("air 21C 50%", mixed, f"log thwart seal --from pot{n}")
        again = finisher.reads(f"2026-03-{hour}", *lines)
        assert "washed" not in again
    finisher.types("2026-03-12 08:00", "log thwart rinse")
    finisher.types("2026-03-12 12:00", "log thwart sand")
    free = finisher.reads("2026-03-12 13:00", "air 21C 50%", "log thwart varnish")
    (why,) = finisher.whys("2026-03-12 13:00", "thwart")
    assert "caution" not in free
    assert "not washed" not in said(why)
