"""Stories of what went wrong here before: what came of the rail is heard at the top, or is not."""

from __future__ import annotations

from tests.stories.telling import lets, silent

_RAIL = "rail: wiping-stain 08:00; rail: wipe +5m; rail: waterborne-clear +9d"
_SAME = f"redwood top and redwood rail; no-air; {_RAIL}"
_NEXT = "wiping-stain +30d; wipe +5m; ask waterborne-clear +9d"
_OIL = "cherry top and cherry rail; no-air; rail: wiping-stain 08:00; rail: wipe +5m"
_SOFT = "rosewood top and rosewood rail; no-air; rail: alkyd-varnish 08:00; rail: check tacky +20d"

STORIES = {
    "went-wrong-before": (
        # A fault that stands: the pair that it blames, on the same wood.
        lets(f"{_SAME}; rail: fault peel +30d; {_NEXT}", "waterborne-clear over our wiping-stain"),
        lets(f"{_SAME}; rail: fault wrinkle +1d; {_NEXT}", "on redwood went wrong before: wrinkle"),
        silent(f"{_SAME.replace('redwood rail', 'oak rail')}; rail: fault peel +30d; {_NEXT}"),
        silent(f"{_SAME}; rail: fault peel +30d; shellac-2lb +9d; ask waterborne-clear +9d"),
        silent(f"{_SAME}; rail: fault wrinkle +1d; ask wiping-stain +30d"),
        silent(f"{_SAME}; rail: fault peel +30d; {_NEXT.replace('waterborne-clear', 'wipe')}"),
        # It was mended, or a scratch held since: nothing stands.
        silent(f"{_SAME}; rail: fault blister +1d; rail: sand +3d; {_NEXT}"),
        silent(f"{_SAME}; rail: fault peel +30d; rail: check holds +1d; {_NEXT}"),
        silent(f"{_SAME}; rail: fault peel +30d; rail: review good +90d; {_NEXT}"),
        # What air, hands and accidents make blames no pair, nor does a review that they explain.
        silent(f"{_SAME}; rail: fault run +5m; {_NEXT}"),
        silent(f"{_SAME}; rail: fault dust +5m; rail: review failed +9d; {_NEXT}"),
        silent(f"{_SAME}; rail: fault dent +20d; rail: off bare +1d; {_NEXT}"),
        # The wood: the first coat on it.
        lets(f"{_OIL}; rail: fault blotch; ask wiping-stain +9d", "on bare cherry went wrong"),
        lets(
            f"{_OIL}; rail: fault wrong-colour; rail: off bare +1d; ask wiping-stain +9d",
            "taken off",
        ),
        silent(f"{_OIL}; rail: fault blotch; ask shellac-2lb +9d"),
        silent(f"{_OIL}; rail: fault lap-mark; ask wiping-stain +9d"),
        silent(f"{_OIL.replace('cherry', '')}; rail: fault blotch; ask wiping-stain +9d"),
        silent(
            f"{_OIL.replace('cherry top', 'cherry old-varnish top')}; rail: fault blotch"
            "; ask wiping-stain +9d"
        ),
        silent(
            f"{_OIL.replace('cherry rail', 'cherry old-varnish rail')}; rail: fault blotch"
            "; ask wiping-stain +9d"
        ),
        # A review without a fault is of the whole finish.
        lets(f"{_SAME}; rail: review failed lifts at the sink +90d; {_NEXT}", "lifts at the sink"),
        lets(f"{_SAME}; rail: review failed +90d; ask wiping-stain +1d", "failed its review"),
        silent(f"{_SAME}; rail: review fair +90d; {_NEXT}"),
        silent(f"{_SAME}; rail: review good +90d; {_NEXT}"),
        # A good finish since then makes a note of it; the first one does not.
        lets(
            f"{_SAME.replace('and', 'and redwood leg and')}; rail: review failed +9d; "
            "leg: wiping-stain +9d; leg: wipe; leg: waterborne-clear +9d; leg: review good +90d; "
            f"{_NEXT}",
            "1 of 2 such came out badly, a later one came out well",
        ),
        lets(f"{_SAME}; rail: board; rail: fault peel +30d; {_NEXT}", "on a board of redwood"),
        lets(f"{_SAME}; board; rail: fault peel +30d; {_NEXT}"),
        # Soft for good, or it let go under a knife.
        lets(f"{_SOFT}; rail: off bare +1d; ask alkyd-varnish +9d", "tacky, taken off"),
        silent(f"{_SOFT}; ask alkyd-varnish +9d"),
        lets(f"{_SAME}; rail: check flakes +30d; {_NEXT}", "flakes"),
        # Told at the first coat of a finish, it is not told again at the next of it.
        silent(
            "redwood top and redwood rail; no-air; rail: alkyd-varnish 08:00; "
            "rail: alkyd-varnish +3d; rail: fault peel +30d; alkyd-varnish +9d; "
            "ask alkyd-varnish +3d"
        ),
        lets(
            "redwood top and redwood rail; no-air; rail: alkyd-varnish 08:00; "
            "rail: alkyd-varnish +3d; alkyd-varnish; rail: fault peel +30d; "
            "ask alkyd-varnish +3d"
        ),
        # Its own fault speaks for itself; its own finish that came off is told.
        silent("redwood top; no-air; alkyd-varnish 08:00; fault peel +9d; ask alkyd-varnish +3d"),
        lets(
            "redwood top; no-air; alkyd-varnish 08:00; fault peel +9d; off bare +1d; "
            "ask alkyd-varnish +3d"
        ),
    ),
}
