"""A fault that was made good and comes again is told, with what was the same both times."""

from __future__ import annotations

from finishlog.cli.words.finding_words import remedy, sentence
from finishlog.core.film.faults import StandingFault
from finishlog.core.findings import Finding
from finishlog.core.trouble.again import found_again
from tests.core.trouble.told_trouble import told
from tests.rows import every_row

RUN = "oak sick; spar-varnish brush with:brush1 08:00; fault run +2d"
AGAIN = "spar-varnish brush with:brush1 +1h; fault run +2d"


def again(line: str) -> tuple[Finding, ...]:
    teller = told(line)
    state = teller.story.state(teller.hour)
    fault: StandingFault = state.faults[-1]
    return found_again(fault, state)


def test_a_run_that_was_mended_and_comes_again_says_what_was_the_same():
    (found,) = again(f"{RUN}; mend +3d; {AGAIN}")
    assert sentence(found).startswith("run was found here once before, and mended (act ")
    assert remedy(found) == (
        "the same both times: the product, its tool, how it went on; "
        "do it otherwise this time, and on a scrap of the same wood first"
    )


def test_what_was_done_otherwise_is_not_called_the_same():
    (found,) = again(f"{RUN}; mend +3d; oil-enamel with:brush2 +1h; fault run +2d")
    assert remedy(found).startswith("do it otherwise this time")


@every_row(
    "line",
    [
        RUN,
        f"{RUN}; {AGAIN}",
        f"{RUN}; mend +3d; spar-varnish +1h; fault dust +2d",
        "oak sick; spar-varnish 08:00; fault run @left-edge +2d; mend @left-edge +3d; "
        "spar-varnish +1h; fault run @right-edge +2d",
    ],
)
def test_what_was_not_mended_or_is_another_fault_or_elsewhere_is_no_second_time(line: str):
    assert again(line) == ()
