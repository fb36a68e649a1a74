"""What the rules say that are about whoever does the work: first what to do, then why."""

from __future__ import annotations

from finishlog.cli.words.said import Words, each_of, length, number, text
from finishlog.core.commands import Do
from finishlog.core.film.old_finish import name_of
from finishlog.core.findings import Finding
from finishlog.core.log.shown_times import length_words
from finishlog.core.log.words import Filter, Found, MaskKept, RespiratorDeed
from finishlog.core.shop.things import OldFinish

_LEAD_WAY = (
    "wet and by hand, no dry or power sanding, no torch; a HEPA vacuum; children and pregnant "
    "people away"
)
_SUPPLIED = Do.RESPIRATOR("NAME", RespiratorDeed.OPENED, for_=Filter.SUPPLIED_AIR)


def _old(of: Finding) -> str:
    return name_of(OldFinish(text(of, "old")))


def _cartridge(of: Finding) -> str:
    days = "nothing says since when it is open"
    if of.value("days") is not None:
        days = f"open for {number(of, 'days'):.0f} d"
    worn = "" if of.value("worn") is None else f", worn {length_words(length(of, 'worn'))}"
    hung = ", hung in the open" if of.value("kept") == MaskKept.OPEN else ""
    return (
        f"{text(of, 'mask')}: {days}{worn}{hung}; nothing tells what is left of a cartridge"
        f"{_passes(of)}"
    )


def _new_ones(of: Finding) -> str:
    no_proof = "no hours worn and no lack of smell make it good; " if text(of, "old") else ""
    return (
        "put new cartridges in before this coat, and say so: "
        f"{Do.RESPIRATOR(text(of, 'mask'), RespiratorDeed.OPENED)}; {no_proof}after that by their "
        "maker's schedule, and at any smell or taste"
    )


def _passes(of: Finding) -> str:
    passes = each_of(of, "passes")
    return f", and none holds {' or '.join(passes)}" if passes else ""


WORDS = {
    "lead": Words(
        lambda f: f"{_old(f)} of unknown age may hold lead",
        f"have it tested: {Do.CHECK('PART', Found.NO_LEAD)} or {Found.LEAD.value}; until then "
        f"{_LEAD_WAY}",
        lambda f: f"{_old(f)} may hold lead: not tested",
    ),
    "lead-found": Words(
        lambda f: f"lead was found in {_old(f)}: its dust poisons whoever lives with it",
        f"leave it to certified people, or {_LEAD_WAY}; what comes off is hazardous waste",
        "lead was found in it",
        "certified people, or wet work by hand",
    ),
    "isocyanate-sprayed": Words(
        lambda f: (
            f"do not spray {text(f, 'of')} without supplied air: its mist holds isocyanate, which "
            "brings asthma for life, and no cartridge mask is for it unless its sheet says so"
        ),
        f"brush or roll it with its sheet in hand, or take another finish; is supplied air there: "
        f"{_SUPPLIED}",
        "isocyanate is not sprayed without supplied air",
        "supplied air",
    ),
    "isocyanate-heated": Words(
        lambda f: (
            f"heat sets isocyanate free from {text(f, 'of')}: {text(f, 'in_room')} is too hot"
            if text(f, "in_room")
            else f"heat sets isocyanate free from {text(f, 'of')}, however hard it is"
        ),
        lambda f: (
            (
                "let the room cool first, or work in supplied air: "
                if text(f, "in_room")
                else "no torch and no heat gun: a stripper, or wet paper by hand once it is hard; "
                "or supplied air: "
            )
            + _SUPPLIED
        ),
        lambda f: f"no heat on {text(f, 'of')}: isocyanate",
        "supplied air, or no heat",
    ),
    "isocyanate-supplied": Words(
        lambda f: (
            f"{text(f, 'of')} holds isocyanate: the supplied air on, skin and eyes covered, nobody "
            "else in the room or at its door until it is aired"
        ),
    ),
    "by-your-sheet": Words(
        lambda f: (
            f"by your sheet no {' and no '.join(each_of(f, 'less'))} in {text(f, 'of')}, which its "
            "class may have: nothing here warns of it"
        ),
    ),
    "isocyanate-dust": Words(
        lambda f: (
            f"{text(f, 'of')} is not hard yet: isocyanate that has not reacted is in its dust"
        ),
        "leave it to harden, or wet paper by hand, gloves, nobody else there; no dry or power "
        "sanding without supplied air",
        lambda f: f"no dry sanding of young {text(f, 'of')}: isocyanate",
        "the film to harden",
    ),
    "chromate-dust": Words(
        lambda f: (
            f"{text(f, 'of')} is in the wood, rinsed or not: its dust causes cancer, and no paper "
            "gets it out"
        ),
        "no sanding, no scraping: seal it as it is; raised grain is laid down by a sealer",
        lambda f: f"no sanding: {text(f, 'of')} is in the wood",
        "another way than sanding",
    ),
    "chlorinated-indoors": Words(
        lambda f: (
            "chlorinated solvent, out of doors too: it stuns, and no cartridge mask holds it"
            if text(f, "outdoors")
            else f"no chlorinated solvent in {text(f, 'in_room')}: it has killed people in shut "
            "rooms, and no cartridge mask holds it"
        ),
        lambda f: (
            "leave it shut, and take another stripper; "
            + ("" if text(f, "outdoors") else "outdoors only, ")
            + "never alone, where the law lets you have it at all"
        ),
        "no chlorinated solvent in a room",
        "another stripper",
    ),
    "cartridge": Words(
        _cartridge,
        _new_ones,
    ),
}
