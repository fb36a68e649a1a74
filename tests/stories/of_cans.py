"""Stories of what a film came from: a pot, a jar or a can as it stood when the coat went on."""

from __future__ import annotations

from finishlog.core.findings import Answer
from tests.stories.telling import silent, speaks

TWO = "oak top; mix pot waterborne-two-part base*10+hardener 08:00; waterborne-two-part from-pot"
OFF = "oak top; mix pot waterborne-two-part base*100+hardener 08:00; waterborne-two-part from-pot"
ALONE = "oak top; mix pot conversion-varnish base+thinner 08:00; conversion-varnish from-pot"
BARE = "oak top; conversion-varnish from-nothing 08:00"
OLD = "oak top; can jug shellac-2lb opened:400d 08:00; shellac-2lb from-jug"
ICE = "oak top; can tin waterborne-clear opened:5d 08:00; frozen tin; waterborne-clear from-tin"
BAD = "oak top; can tin alkyd-varnish opened:5d 08:00; condemned tin; alkyd-varnish from-tin"
SINCE = "oak top; can tin alkyd-varnish opened:5d 08:00; alkyd-varnish from-tin; condemned tin"
LATE = "oak top; mix pot waterborne-two-part base*10+hardener 08:00; waterborne-two-part from-pot"
APART = (
    "oak top; mix wed conversion-varnish base*10+hardener 08:00; conversion-varnish from-wed +{}; "
    "mix fri conversion-varnish base*10+hardener +1d; conversion-varnish from-fri +{}"
)

SPIRITS = "oak top; mix pot shellac-2lb base+mineral-spirits 08:00; shellac-2lb from-pot"
WET = "oak top; mix pot alkyd-varnish base+water 08:00; alkyd-varnish from-pot"
SAMPLED = "oak top; can tin alkyd-varnish opened:5d 08:00; alkyd-varnish from-tin"

STORIES = {
    "hardener-left-out": (
        speaks(f"{ALONE}; ask conversion-varnish +90m", Answer.SUSPECT, "without its hardener"),
        speaks(f"{ALONE}; check no-print +30d; ask pack +1d", Answer.SUSPECT),
        speaks(f"{ALONE}; ask stack +30d", Answer.SUSPECT),
        speaks(f"{ALONE}; ask rub-out +30d", Answer.SUSPECT),
        silent(f"{ALONE}; check holds +30d; ask pack +1d"),
        # A sample of the same pot that dried had its hardener; so has what a solvent does not take.
        silent(f"{ALONE}; check sample-dry +2d; ask pack +30d"),
        silent(f"{ALONE}; check resists +9d; ask pack +30d"),
        speaks(f"{ALONE}; check sample-soft +2d; ask pack +30d", Answer.SUSPECT),
        speaks(f"{ALONE}; check flat +2d; ask pack +30d", Answer.SUSPECT),
        silent(f"{ALONE}; off bare +1d; ask conversion-varnish +1d"),
        silent(f"{ALONE.replace('thinner', 'hardener')}; ask conversion-varnish +90m"),
        silent(f"{ALONE.replace('thinner', 'part-b')}; ask conversion-varnish +90m"),
        silent(f"{ALONE}; ask wipe +5m"),
    ),
    "hardener-untold": (
        speaks(f"{BARE}; ask conversion-varnish +90m", Answer.WAITS, "Nothing on record"),
        speaks(f"{BARE}; ask pack +30d", Answer.WAITS),
        speaks(f"{BARE}; ask rub-out +30d", Answer.WAITS),
        speaks(f"{BARE}; conversion-varnish +90m; ask stack +30d", Answer.WAITS),
        speaks(
            "oak top; can tin conversion-varnish 08:00; conversion-varnish from-tin; ask rest +1d"
        ),
        silent("oak top; conversion-varnish 08:00; ask pack +30d"),
        silent(f"{BARE}; check holds +3d; ask pack +30d"),
        silent(
            "oak top; mix pot conversion-varnish base+hardener 08:00; "
            "conversion-varnish from-nothing; ask pack +30d"
        ),
        speaks(
            "oak top; mix pot conversion-varnish base+hardener 08:00; emptied pot; "
            "conversion-varnish from-nothing; ask pack +30d"
        ),
        silent("oak top; hardwax-oil 08:00; wipe +10m; ask pack +30d"),
        silent("oak top; milk-paint from-nothing 08:00; ask pack +30d"),
        silent("oak top; lacquer-precatalysed from-nothing 08:00; ask pack +30d"),
        silent(f"{BARE}; ask wipe +1h"),
    ),
    "off-ratio": (
        speaks(f"{OFF}; ask waterborne-two-part +6h", Answer.SUSPECT, "1.0 %"),
        speaks(f"{OFF}; ask pack +30d", Answer.SUSPECT),
        speaks(f"{OFF.replace('*100', '*2')}; ask pack +30d", Answer.SUSPECT, "50.0 %"),
        silent(f"{OFF}; check holds +3d; ask pack +30d"),
        silent(f"{OFF}; check resists +3d; ask pack +30d"),
        # Off its ratio it may dry, and stay weak.
        speaks(f"{OFF}; check sample-dry +3d; ask pack +30d", Answer.SUSPECT),
        silent(f"{OFF.replace('*100', '*20')}; ask pack +30d"),
        silent(f"{TWO}; ask pack +30d"),
    ),
    # Shellac dissolves in alcohol alone; oil and water part (common practice).
    "from-wrong-thinner": (
        speaks(f"{SPIRITS}; ask shellac-2lb +4h", Answer.SUSPECT, "thinned with mineral-spirits"),
        speaks(f"{SPIRITS}; ask pack +30d", Answer.SUSPECT),
        speaks(f"{SPIRITS.replace('mineral-spirits', 'turps')}; check dry +2d; ask stack +9d"),
        speaks(f"{SPIRITS}; check sample-soft +2d; ask pack +30d", Answer.SUSPECT),
        speaks(f"{WET}; ask pack"),
        silent(f"{SPIRITS}; check holds +3d; ask pack +30d"),
        silent(f"{SPIRITS}; check sample-dry +2d; ask pack +30d"),
        silent(f"{SPIRITS}; off bare +1d; ask shellac-2lb +1d"),
        silent(f"{SPIRITS.replace('mineral-spirits', 'alcohol')}; ask shellac-2lb +4h"),
        silent(f"{SPIRITS.replace('mineral-spirits', 'retarder')}; ask shellac-2lb +4h"),
        silent(f"{SPIRITS.replace('shellac-2lb', 'alkyd-varnish')}; ask pack +60d"),
        # The bare word may be either; spirits of turpentine are no alcohol.
        silent(f"{WET.replace('water', 'spirits')}; ask pack"),
        silent(f"{WET.replace('water', 'spirits-of-turpentine')}; ask pack"),
    ),
    "past-pot-life": (
        speaks(f"{LATE} +3h; ask waterborne-two-part +6h", Answer.TEST),
        speaks(f"{LATE} +3h; ask pack +30d", Answer.TEST),
        speaks(f"{LATE} +3h; check dry +1d; ask stack +6d", Answer.TEST),
        silent(f"{LATE} +3h; check no-print +3d; ask stack +6d"),
        silent(f"{LATE} +1h; ask pack +30d"),
        silent(f"{LATE.replace('hardener 08', 'hardener use-by:4h 08')} +3h; ask pack +30d"),
    ),
    "from-frozen": (
        speaks(f"{ICE}; ask waterborne-clear +6h", Answer.SUSPECT),
        speaks(f"{ICE}; ask pack +30d", Answer.SUSPECT),
        silent(f"{ICE}; check holds +3d; ask pack +30d"),
        silent(f"{ICE}; check sample-dry +3d; ask pack +30d"),
        silent(f"{ICE}; tested tin +1d; ask waterborne-clear +6h"),
        silent(f"{ICE.replace('frozen tin; ', '')}; frozen tin +1d; ask pack +30d"),
        silent(f"{ICE.replace('frozen tin', 'frozen tin; tested tin')}; ask waterborne-clear +6h"),
        silent(f"{ICE.replace('waterborne-clear', 'alkyd-varnish')}; ask alkyd-varnish +6h"),
    ),
    "from-condemned": (
        speaks(f"{BAD}; ask alkyd-varnish +3d", Answer.SUSPECT),
        speaks(f"{BAD}; check no-print +30d; ask pack +1d", Answer.SUSPECT),
        silent(f"{BAD}; check holds +30d; ask pack +1d"),
        speaks(f"{SINCE}; ask alkyd-varnish +3d", Answer.TEST),
        speaks(f"{SINCE}; ask pack +60d", Answer.TEST),
        speaks(f"{SINCE}; ask rest +60d", Answer.TEST),
        silent(f"{SINCE}; check no-print +30d; ask pack +1d"),
        silent(f"{SINCE}; ask scuff +3d"),
        silent(f"{SINCE.replace('; condemned tin', '; emptied tin')}; ask pack +60d"),
    ),
    "from-old": (
        speaks(f"{OLD}; ask shellac-2lb +5h", Answer.WAITS),
        speaks(f"{OLD}; ask pack +30d", Answer.WAITS),
        silent(f"{OLD}; check dry +5h; ask shellac-2lb +5m"),
        silent(f"{OLD}; check sample-dry +5h; ask shellac-2lb +5m"),
        # A rub tells nothing of shellac.
        speaks(f"{OLD}; check resists +5h; ask shellac-2lb +5m", Answer.WAITS),
        silent(f"{OLD}; tested jug +1d; ask pack +30d"),
        silent(f"{OLD.replace('400d', '20d')}; ask shellac-2lb +5h"),
        silent(f"{OLD.replace('; shellac', '; tested jug; shellac')}; ask shellac-2lb +5h"),
        speaks(
            "oak top; can tin alkyd-varnish opened:3000d 08:00; alkyd-varnish from-tin; "
            "ask alkyd-varnish +4d",
            Answer.TEST,
        ),
    ),
    "sample-soft": (
        speaks(f"{SAMPLED}; check sample-soft +2d; ask alkyd-varnish", Answer.SUSPECT, "tin"),
        speaks(f"{SAMPLED}; check sample-soft +2d; ask pack +60d", Answer.SUSPECT),
        # Of the same tin it speaks of what lies below as well.
        speaks(f"{SAMPLED}; alkyd-varnish from-tin +3d; check sample-soft +2d; ask rest"),
        speaks("oak top; alkyd-varnish 08:00; check sample-soft +2d; ask rest", None, "the wood"),
        silent(f"{SAMPLED}; check sample-soft +2d; check sample-dry +3d; ask alkyd-varnish"),
        silent(f"{SAMPLED}; check sample-soft +2d; check no-print +9d; ask alkyd-varnish"),
        silent(f"{SAMPLED}; check sample-soft +2d; off bare +1d; ask alkyd-varnish"),
        silent(f"{SAMPLED}; check sample-dry +2d; ask alkyd-varnish"),
        silent(f"{SAMPLED}; check sample-soft +2d; ask wipe"),
    ),
    "mixes-apart": (
        speaks(f"{APART.format('7h', '5m')}; ask conversion-varnish +90m"),
        silent(f"{APART.format('30m', '30m')}; ask conversion-varnish +90m"),
        silent(f"{APART.format('7h', '5m')}; check no-print +5d; ask pack +5d"),
        silent("oak top; conversion-varnish 08:00; conversion-varnish +90m; ask pack +30d"),
    ),
}
