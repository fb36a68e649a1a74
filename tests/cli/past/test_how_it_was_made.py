"""Finishes found by how they were made, and one laid once more over what is there (invented)."""

from __future__ import annotations

from tests.finisher import Finisher


def found(finisher: Finisher, *words: str) -> set[str]:
    said = " ".join(f"'{word}'" for word in words)
    answer = finisher.tries("2027-01-15 10:00", f"past {said}")
    if answer.code:
        return set()
    told = finisher.asks("2027-01-15 10:00", f"past {said}")["finishes"]
    return {finish["part"].partition("/")[0] for finish in told}


def test_solid_panels_stained_after_assembly_in_damp_air_are_found(finisher: Finisher):
    """Pale strips beside the panels come of all three: the veneered and the stained do not show."""
    finisher.types(
        "2026-07-01 08:00",
        "product new brown --class water-dye",
        "product new top --class waterborne-clear",
        "room new shop",
        "air 78F 40%",
    )
    woods = {"vanity": "maple", "kitchen": "oak", "desk": "'walnut veneer'", "hutch": "cherry"}
    for job, wood in woods.items():
        finisher.types(
            "2026-07-01 08:00",
            f"part new {job}/panel --species {wood} --room shop",
            f"part new {job}/door --of panel:1 --room shop",
        )
    finisher.types("2026-07-01 09:00", "part new dresser/panel --species ash --room shop")
    finisher.types("2026-07-18 09:00", "air 78F 70%", "log hutch/panel brown")
    for job in woods:
        finisher.types("2026-07-20 08:00", f"log {job}/door glue-up")
    finisher.types("2026-07-22 09:00", "air 78F 70%")
    for job in ("vanity", "kitchen", "desk"):
        finisher.types("2026-07-22 09:00", f"log {job}/door brown")
    for job in woods:
        finisher.types("2026-07-24 09:00", "air 78F 45%", f"log {job}/door top --method spray")
    finisher.types("2026-07-24 09:00", "log dresser/panel brown")
    wanted = ("solid panels", "stained after assembly", "rh over 60%")
    assert found(finisher, *wanted) == {"vanity", "kitchen"}
    assert found(finisher, "veneered") == {"desk"}
    assert found(finisher, "stained before assembly") == {"hutch"}
    # The hutch was dyed flat and varnished glued up; the dresser was never glued up here.
    assert "dresser" not in found(finisher, "after assembly") | found(finisher, "before glue-up")
    assert found(finisher, "rh under 60%", "solid") == {"vanity", "kitchen", "hutch", "dresser"}
    assert found(finisher, "over 75%") == set()
    vanity = finisher.reads("2027-01-15 10:00", "past vanity")
    assert "water-soluble dye, 25.6 °C, 70 %" in vanity


def test_a_finish_once_more_stays_on_its_faces_and_melts_in_without_a_scuff(finisher: Finisher):
    """Shellac melts into shellac (common practice); the bare inside is not washed."""
    finisher.types(
        "2026-06-01 08:00",
        "product new seal --class shellac-2lb",
        "product new wax --class paste-wax",
        "part new a/box --species maple --face in --face out",
        "log box@out seal",
    )
    finisher.types("2026-07-01 08:00", "log box@out wax")
    finisher.types("2026-07-02 08:00", "steps new again --over a/box")
    assert finisher.asks("2026-07-02 08:01", "steps show again")["steps"] == [
        "solvent-wipe (wax off)@out",
        "solvent-wipe (wax off)@out",
        "seal@out",
        "wax@out",
    ]
    refused = finisher.tries("2026-07-02 08:02", "steps new none --over a/box@in")
    assert "nothing was done on a/box@in yet" in refused.err


def test_steps_over_a_finish_begin_on_it_and_credit_what_was_done_since(finisher: Finisher):
    """A year-old coat is no coat of the refresh (common practice); one of today is, though the
    steps were given after it. A schedule from bare wood credits what was done before it.
    """
    finisher.types(
        "2026-06-01 08:00",
        "product new oil --class wiping-varnish",
        "part new a/seat --species oak",
        "part new a/leg --species oak",
        "part new a/rail --species oak",
        "air 21C 50%",
    )
    for day in ("02", "04"):
        finisher.types(f"2026-06-{day} 09:00", "log seat leg rail oil --scuffed")
    finisher.types("2026-11-30 08:00", "air 21C 50%", "steps new again --over a/seat")
    finisher.types("2026-11-30 08:10", "part steps a/seat --as again")

    def to_come(now: str, part: str) -> list[str]:
        (group,) = finisher.asks(now, f"on {part}")
        return list(group["to_come"])

    with_scuff = ["scuff", "oil"]
    assert to_come("2026-11-30 08:11", "a/seat") == with_scuff
    assert "scuff" in finisher.reads("2026-11-30 08:12", "ready")
    # Scuffed since the steps were put on record, before they were given.
    finisher.types("2026-11-30 08:20", "log leg scuff", "part steps a/leg --as again")
    assert to_come("2026-11-30 08:21", "a/leg") == ["oil"]
    below = "oil, Thu 4 Jun 09:00 (act 7): lies below, no coat of these steps"
    on = finisher.reads("2026-11-30 08:22", "on seat")
    assert (below in on, "besides" in on) == (True, False), on
    # What is told late was done before, and lies below.
    finisher.types("2026-11-30 08:30", "log seat scuff --at '2026-06-06 09:00'")
    assert to_come("2026-11-30 08:31", "a/seat") == with_scuff
    finisher.types("2026-11-30 09:00", "log seat scuff", "log seat oil")
    assert to_come("2026-11-30 09:01", "a/seat") == []
    # Given once more when all of it is behind: one more pass.
    finisher.types("2027-06-01 09:00", "part steps a/seat --as again")
    assert to_come("2027-06-01 09:01", "a/seat") == with_scuff
    finisher.types(
        "2027-06-01 09:02", "steps new plain oil*3", "part steps a/rail a/seat --as plain"
    )
    assert to_come("2027-06-01 09:03", "a/rail") == ["oil"]
    assert to_come("2027-06-01 09:03", "a/seat") == []
