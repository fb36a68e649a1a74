"""Questions about how thick a film gets."""

from __future__ import annotations

from tests.cases.question import Question
from tests.finisher import Finisher

FC082 = Question(
    "how many more coats of a catalysed finish may go on, by its dry film in all",
    shows=(
        "the dry film on each face so far, less what was scuffed off; what was stripped is gone",
        "a warning where the next coat would pass what the finish bears",
        "a thinned batch leaves less",
    ),
    trap="coats are counted without their thickness, or what was stripped counts on",
)


def test_fc082_a_running_total_of_dry_film_on_each_face(finisher: Finisher):
    """3 mil wet at the class's 34 % by volume; 10 parts and 1 of thinner: 34 / 1.1."""
    finisher.types(
        "2026-07-06 09:00",
        "settings film mil",
        "product new clear --class conversion-varnish",
        "part new kitchen/door --face front --face back",
        "part new kitchen/drawer",
        "air 22C 50%",
        "mix clear base:10",
        "mix clear base:10 thinner:1",
        "log door clear --film 3mil --from mix-1",
        "log drawer clear --film 3mil --from mix-2",
    )
    thin = finisher.reads("2026-07-06 09:01", "on drawer")
    with FC082.line(3):
        assert "film about 0.9 mil dry" in thin
        assert "at 34 % solids thinned by 10 %: 0.9 mil dry" in thin
    finisher.types("2026-07-06 10:50", "log door scuff")
    finisher.types("2026-07-06 11:00", "log door clear --film 3mil --from mix-1")
    finisher.types("2026-07-06 12:50", "log door scuff")
    finisher.types("2026-07-06 13:00", "log door clear --film 3mil --from mix-1")
    three = finisher.reads("2026-07-06 13:01", "on door")
    with FC082.line(1):
        assert "film about 2.7 mil dry; 4 mil to 5 mil in all at most: 1 more such coat" in three
        assert "at 34 % solids: 1 mil dry, less 0.2 mil by sanding" in three
        assert "film about 2.7 mil dry" in finisher.reads("2026-07-06 13:01", "why door")
    with FC082.line(2):
        fourth = finisher.reads(
            "2026-07-06 14:40", "log door clear --film 5mil --from mix-1 --face front"
        )
        assert "mil in all at most" not in fourth
        front = finisher.reads("2026-07-06 14:41", "on door@front")
        assert "film about 4.4 mil dry; 4 mil to 5 mil in all at most: no more such coat" in front
        fifth = finisher.reads(
            "2026-07-06 16:20", "log door clear --film 5mil --from mix-1 --face front"
        )
        assert "brings the film to about 6.1 mil dry, 5 mil in all at most: thicker it" in fifth
    finisher.types("2026-07-07 09:00", "off door --face front --to bare")
    with FC082.trap:
        # Two coats that were measured thick leave no more room than three thin ones.
        finisher.types("2026-07-07 09:10", *["log drawer clear --film 6mil --from mix-1"] * 2)
        thick = finisher.reads("2026-07-07 09:11", "on drawer")
        assert "film about 5 mil dry; 4 mil to 5 mil in all at most: no more such coat" in thick
        bare = finisher.reads("2026-07-07 09:11", "on door@front")
        assert "mil in all at most" not in bare
        finisher.types("2026-07-07 09:12", "log door clear --film 3mil --from mix-1 --face front")
        again = finisher.reads("2026-07-07 09:13", "on door@front")
        assert "film about 1 mil dry; 4 mil to 5 mil in all at most: 2 more such coats" in again
