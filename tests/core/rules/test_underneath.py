"""May this product go on over what is there: every layer is asked, and the bare wood.

The rules are published figures; the source of each stands beside it in facts/data, and
here.
"""

from __future__ import annotations

import pytest

from finishlog.core.findings import Answer, Level
from finishlog.core.log.words import Found, Operation
from finishlog.core.zone.verdict import MAY_ACT, Verdict
from tests.rows import every_row
from tests.shop_of import (
    BLEND,
    FILLER,
    LACQUER,
    LINSEED,
    SHELLAC,
    STAIN,
    VARNISH,
    WATERBORNE,
    WAX,
    Story,
    hours_until,
    one_coat,
)
from tests.worded_in import because, remedy, sentence

MONTH = 24.0 * 30


def over(*stack: tuple[float, str], species: str | None = None, rh: float = 50.0) -> Story:
    """Tell of a door with coats at these hours, in air that is read all the time."""
    story = Story()
    story.part(species=species)
    for hour, key in stack:
        story.coat(hour, key)
        if key in {STAIN, LINSEED, BLEND, FILLER}:
            story.work(hour + 0.05, Operation.WIPE)
    return story.steady(rh=rh, since=-12.0)


def stop_in(verdict: Verdict) -> list[str]:
    return [sentence(f) for f in verdict.findings if f.level is Level.STOP]


# --- oil stain under waterborne ---------------------------------------------------------------


def test_waterborne_over_oil_stain_waits_three_to_seven_days():
    """Articles on waterborne over oil stain: several days to a week in a warm room; 72 h."""
    story = over((0, STAIN))
    assert story.may(WATERBORNE, 71.9).answer is Answer.DRYING
    assert story.may(WATERBORNE, 72.1).answer is Answer.TEST
    assert story.may(WATERBORNE, 168.1).answer is Answer.GO
    verdict = story.may(WATERBORNE, 30)
    assert (hours_until(verdict.low), hours_until(verdict.high)) == (72, 168)


def test_in_a_cold_room_that_wait_is_longer():
    """By hand: at 13 °C oxidation runs at half its pace, so 144 to 336 h."""
    story = Story()
    story.part()
    story.coat(0, STAIN)
    story.work(0.05, Operation.WIPE)
    story.steady(13, 50, since=-12.0)
    verdict = story.may(WATERBORNE, 30)
    assert hours_until(verdict.low) == pytest.approx(144)
    assert hours_until(verdict.high) == pytest.approx(336)


def test_dewaxed_shellac_between_lets_waterborne_go():
    """Dewaxed shellac between after a day (the same articles); TM 43-0139 for shellac itself."""
    story = over((0, STAIN), (25, SHELLAC))
    assert story.may(WATERBORNE, 26).answer is Answer.DRYING
    assert story.may(WATERBORNE, 50).answer is Answer.GO


def test_a_varnish_between_does_not_count_as_the_barrier():
    story = over((0, STAIN), (25, VARNISH))
    verdict = story.may(WATERBORNE, 80)
    assert verdict.answer is not Answer.GO
    assert any("further down" in sentence(f) for f in verdict.findings)


# --- every layer has its say ------------------------------------------------------------------


def test_of_several_waits_all_must_be_over():
    """A filler may take varnish from 24 h, at the latest after 168 h; the stain on top of it is
    five hours old and needs at least twelve: no test now either."""
    story = over((0, FILLER), (100, STAIN))
    assert story.may(VARNISH, 105).answer is Answer.DRYING
    verdict = story.may(VARNISH, 105)
    assert hours_until(verdict.low) == 112
    assert hours_until(verdict.high) == 168
    assert story.may(VARNISH, 113).answer is Answer.TEST
    assert story.may(VARNISH, 169).answer is Answer.GO


def test_wax_under_anything_stops_even_further_down():
    """Nothing sticks to wax (Lumber and Its Uses)."""
    for key in (SHELLAC, VARNISH, WATERBORNE, LACQUER, LINSEED):
        verdict = over((0, SHELLAC), (60, WAX), rh=40).may(key, MONTH)
        assert verdict.answer is Answer.UNDERNEATH, key
        assert any("wax" in sentence.lower() for sentence in stop_in(verdict))
    buried = over((0, SHELLAC), (60, WAX), (100, SHELLAC)).may(VARNISH, MONTH)
    assert buried.answer is Answer.UNDERNEATH


def test_wax_goes_over_wax():
    story = over((0, SHELLAC), (60, WAX))
    assert story.may(WAX, 85).answer is Answer.TEST, "the shellac below may take 14 days"
    assert story.may(WAX, 340).answer is Answer.GO


def test_lacquer_over_young_varnish_is_stopped():
    """Lacquer solvents wrinkle and lift oil films (article on lacquer and varnish)."""
    verdict = over((0, VARNISH), rh=40).may(LACQUER, 100)
    assert verdict.answer is Answer.UNDERNEATH
    assert any("wrinkle" in sentence for sentence in stop_in(verdict))
    assert any("shellac" in remedy(f) for f in verdict.findings)


def test_lacquer_over_waterborne_is_stopped():
    """It crazes or lifts it (common practice)."""
    assert over((0, WATERBORNE), rh=40).may(LACQUER, 100).answer is Answer.UNDERNEATH


def test_waterborne_over_an_oil_wants_shellac_between():
    """Oil keeps weeping and blisters waterborne (article on waterborne over oil)."""
    assert over((0, BLEND)).may(WATERBORNE, MONTH).answer is Answer.UNDERNEATH
    story = over((0, BLEND), (200, SHELLAC))
    assert story.may(WATERBORNE, 230).answer is Answer.GO


def test_oil_does_not_mend_a_film():
    """Oil cannot soak into a film; it stays gummy on top (common practice)."""
    assert over((0, VARNISH)).may(LINSEED, MONTH).answer is Answer.UNDERNEATH


def test_varnish_over_lacquer_is_a_scuffed_bond():
    """Varnish sits on lacquer and does not bite (common practice)."""
    story = over((0, LACQUER), rh=40)
    assert story.may(VARNISH, 80).answer is Answer.SCUFF
    story.work(81, Operation.SCUFF)
    assert story.may(VARNISH, 82).answer is Answer.GO


def test_a_pair_of_which_nothing_is_published_is_tried_on_a_board():
    """Varnish over catalysed lacquer: no source; never a plain go."""
    verdict = over((0, "lacquer-precatalysed")).may(VARNISH, MONTH)
    assert verdict.answer is Answer.TEST
    assert any("nothing published" in sentence(f) for f in verdict.findings)
    assert any("sample board" in remedy(f) for f in verdict.findings)


def test_a_rule_never_sends_to_a_coat_before_the_lower_coats_own_recoat_time():
    """Shellac under varnish: 1 h by that rule, 2 h by TM 43-0139; the later counts."""
    verdict = over((0, SHELLAC)).may(VARNISH, 0.5)
    assert hours_until(verdict.low) == 2


def test_why_it_stops_comes_with_what_to_do_and_its_source():
    verdict = over((0, VARNISH), rh=40).may(LACQUER, 100)
    stop = next(f for f in verdict.findings if f.level is Level.STOP)
    assert remedy(stop)
    assert stop.source == "lacquer-versus-varnish"


# --- the wood ---------------------------------------------------------------------------------


@every_row("species", ["cocobolo", "rosewood", "teak"])
@every_row("key", [VARNISH, LINSEED, WATERBORNE])
def test_oily_wood_wants_shellac_first(species, key):
    """Article on oily exotics: extractives keep an oxidising finish from curing."""
    story = over(species=species)
    verdict = story.may(key, 0)
    assert verdict.answer is Answer.UNDERNEATH
    assert any("shellac" in remedy(f) for f in verdict.findings)


def test_sealed_with_shellac_oily_wood_takes_varnish():
    story = over((0, SHELLAC), species="cocobolo")
    assert story.may(VARNISH, 25).answer is Answer.GO


def test_shellac_itself_may_go_on_oily_wood():
    assert over(species="cocobolo").may(SHELLAC, 0).answer is Answer.GO


def test_a_zone_of_another_wood_is_asked_by_itself():
    """One wood in the piece stays tacky, the other is dry: zones are judged apart."""
    from finishlog.core.shop.things import Zone

    story = Story()
    part = story.part(
        "box",
        VARNISH,
        species="maple",
        zones={"all round": [Zone(901, "field"), Zone(902, "inlay", "rosewood")]},
    )
    story.steady(since=-12.0)
    by_zone = {z.zone.name: z.verdict.answer for z in story.look(0).zones if z.part == part}
    assert by_zone == {"field": Answer.GO, "inlay": Answer.UNDERNEATH}


def test_cherry_under_stain_wants_a_washcoat():
    """It drinks stain unevenly and goes blotchy (article on blotching, 2004)."""
    found = over(species="cherry").may(STAIN, 0).findings
    (blotchy,) = [f for f in found if "blotchy" in sentence(f)]
    assert blotchy.level is Level.NOTE, "stained as it is every day (common practice)"
    assert "washcoat" in remedy(blotchy)
    assert "sample board" in remedy(blotchy)


def test_wax_on_bare_wood_is_stopped():
    """It sinks in and can hardly be taken out again (Conserve O Gram 7/2)."""
    assert over().may(WAX, 0).answer is Answer.UNDERNEATH


def test_a_wood_that_nobody_described_says_nothing():
    assert over(species="some driftwood").may(VARNISH, 0).answer is Answer.GO


def test_covered_wood_has_had_its_say():
    story = over((0, SHELLAC), species="cherry")
    assert not any("blotchy" in sentence(f) for f in story.may(STAIN, 5).findings)


@pytest.mark.parametrize("key", [SHELLAC, VARNISH, WATERBORNE])
def test_in_the_white_a_coat_may_go_on_at_once(key):
    assert over(species="ash").may(key, 0).answer in MAY_ACT


def test_a_film_that_gums_or_is_tacky_stops_whatever_is_to_go_over_it():
    from finishlog.core.log.words import Found

    story = one_coat(VARNISH)
    story.check(60, Found.GUMS)
    for key in (VARNISH, SHELLAC, WATERBORNE):
        assert story.may(key, MONTH).answer is Answer.BLOCKED


def test_what_should_never_have_gone_on_stays_in_sight():
    """Recorded and warned about, it is not forgotten the next day: common practice."""
    story = over((0, WAX))
    later = story.verdict(MONTH)
    assert later.answer is Answer.UNDERNEATH
    assert "bare wood" in because(later)
    story.check(MONTH + 1, Found.HOLDS)
    assert story.verdict(MONTH + 2).answer is not Answer.UNDERNEATH


def test_lacquer_over_young_varnish_stays_stopped_though_it_dries():
    story = over((0, VARNISH), (24, LACQUER))
    assert story.verdict(MONTH).answer is Answer.UNDERNEATH


# --- what lies between shields ----------------------------------------------------------------


@pytest.mark.parametrize("film", [SHELLAC, LACQUER, WATERBORNE, VARNISH])
def test_a_clear_film_over_stain_takes_wax(film):
    """Wax belongs over a sound clear film (Conserve O Gram 7/2), and there it is."""
    story = over((0, STAIN), (200, film), (260, film), rh=40)
    story.work(259, Operation.SCUFF)
    verdict = story.may(WAX, 260 + MONTH)
    assert verdict.answer is Answer.GO
    assert not verdict.findings or not stop_in(verdict)
    assert over((0, STAIN)).may(WAX, MONTH).answer is Answer.UNDERNEATH


def test_what_lies_there_against_the_rule_shields_nothing():
    """Waterborne on fresh linseed oil: the next coat of it is stopped like the first."""
    story = over((0, LINSEED), (30, WATERBORNE))
    assert story.may(WATERBORNE, 40).answer is Answer.UNDERNEATH


def test_a_doubt_that_was_met_is_not_raised_at_every_coat():
    """Waterborne over an alcohol dye may bleed (common practice): asked once, at the first."""
    first = over((0, "alcohol-dye")).may(WATERBORNE, 30)
    assert first.answer is Answer.TEST
    again = over((0, "alcohol-dye"), (30, WATERBORNE)).may(WATERBORNE, 35)
    assert again.answer is Answer.GO


# --- wax needs no tooth -----------------------------------------------------------------------


def test_wax_too_soon_after_waterborne_waits_and_speaks_of_no_wrinkle_and_no_scuff():
    """Its solvent attacks a young film (common practice): the wait is the reason."""
    story = over((24, WATERBORNE), (30, WATERBORNE))
    for hour in (33, 43, 50, 100):
        verdict = story.may(WAX, hour)
        assert verdict.answer is Answer.DRYING, hour
        assert not verdict.scuff_first
        said = " ".join(
            (because(verdict), *(f"{sentence(f)} {remedy(f)}" for f in verdict.findings))
        )
        assert "wrinkl" not in said
        assert "scuff" not in said
    assert story.may(WATERBORNE, 100).answer is Answer.SCUFF, "varnish and paint still want it"


# --- the words of a wood ----------------------------------------------------------------------


@every_row("species", ["pine", "spruce", "fir"])
@every_row("key", [VARNISH, SHELLAC, WATERBORNE, STAIN])
def test_bare_softwood_takes_its_first_coat_and_the_pitch_is_a_word(species, key):
    """Nothing stops pitch, and kiln-dried pine is finished every day (common practice)."""
    verdict = over(species=species).may(key, 0)
    assert verdict.answer is Answer.GO
    assert [f.level for f in verdict.findings if "pitch" in sentence(f)] == [Level.NOTE]


def test_a_solvent_wipe_answers_the_doubt_about_spar_varnish_and_softens_a_stop():
    """Wiped with solvent and coated at once, teak takes spar varnish (common practice)."""
    story = over(species="teak")
    assert story.may("spar-varnish", 1).answer is Answer.TEST
    story.work(0.9, Operation.SOLVENT_WIPE)
    wiped = story.may("spar-varnish", 1)
    assert wiped.answer is Answer.DEADLINE
    assert {f.level for f in wiped.findings} == {Level.NOTE}
    assert Level.CAUTION in {f.level for f in story.may(VARNISH, 1).findings}
