"""`python -m tests.fuzz --lines 20000 --words 90000 --seed 1`: what goes wrong, and a summary.

The same seed draws the same lines and words. A find names its round: `--round 17` plays that one
alone again, and `--from-round 18` goes on after it.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Iterable
from secrets import randbelow

from tests.fuzz.lines import LINES_A_ROUND, Find, play
from tests.fuzz.readers import read


def main() -> int:
    """Fuzz as asked; return 1 when anything went wrong."""
    asked = argparse.ArgumentParser(prog="python -m tests.fuzz", description=__doc__)
    asked.add_argument("--lines", type=int, default=20_000)
    asked.add_argument("--words", type=int, default=90_000)
    asked.add_argument("--seed", type=int, default=randbelow(10**9))
    asked.add_argument("--round", type=int, help="this round alone")
    asked.add_argument("--from-round", type=int, default=0)
    how = asked.parse_args()
    print(f"seed {how.seed}", flush=True)
    rounds = range(how.from_round, -(-how.lines // LINES_A_ROUND))
    if how.round is not None:
        rounds, how.words = range(how.round, how.round + 1), 0
    begun = time.monotonic()
    found = _shown(find for round_ in rounds for find in play(how.seed, round_))
    found += _shown(read(how.seed, 0, how.words))
    print(
        f"{len(rounds) * LINES_A_ROUND} command lines in {len(rounds)} rounds, {how.words} words, "
        f"{time.monotonic() - begun:.0f} s: {found} went wrong (seed {how.seed})"
    )
    return 1 if found else 0


def _shown(finds: Iterable[Find]) -> int:
    count = 0
    for count, find in enumerate(finds, 1):  # noqa: B007
        print(find, flush=True)
    return count


if __name__ == "__main__":
    sys.exit(main())
