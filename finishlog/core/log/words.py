"""The closed sets of words that the log is told in."""

from __future__ import annotations

from enum import StrEnum


class Operation(StrEnum):
    """What is done to a part; the words of steps and of `log`."""

    COAT = "coat"
    # Turned on the lathe, planed or cut to its size: wood comes off.
    SHAPE = "shape"
    SAND = "sand"
    RAISE_GRAIN = "raise-grain"
    DENIB = "denib"
    SCUFF = "scuff"
    MASK = "mask"
    UNTAPE = "untape"
    WIPE = "wipe"
    BUFF = "buff"
    RUB = "rub-out"
    GLUE_UP = "glue-up"
    HARDWARE = "hardware"
    # Wiped with solvent right before a coat (oily wood): the coat must follow within minutes.
    SOLVENT_WIPE = "solvent-wipe"
    RINSE = "rinse"
    STEEL_WOOL = "steel-wool"
    # A fault made good.
    MEND = "mend"
    # A joint cut flush after it was glued up.
    LEVEL = "level"
    SUN = "sun"
    STACK = "stack"
    PACK = "pack"
    # Put by, for as long as nothing is done to it.
    STORE = "store"
    # Put to use: loaded, stood on, set with things.
    USE = "use"


class Keeping(StrEnum):
    """How a piece is kept while nothing is done to it."""

    # Laid on sticks, so that air moves between.
    STICKERS = "stickers"
    STACKED = "stacked"
    WRAPPED = "wrapped"
    # In a case, a cupboard, a crate: no air moves.
    SHUT_IN = "shut-in"
    # On edge, or hanging.
    STANDING = "standing"
    # On one of its faces.
    FLAT = "flat"


# From these on a piece is kept as it is.
KEEPS = frozenset({Operation.STACK, Operation.PACK, Operation.STORE})


class Test(StrEnum):
    """How a film was tested."""

    __test__ = False  # not a pytest class

    TOUCH = "touch"
    THUMBNAIL = "thumbnail"
    SAND = "sand"
    SMELL = "smell"
    SCRATCH = "scratch"
    # A cloth with the solvent of the coat itself.
    SOLVENT_RUB = "solvent-rub"
    # Laid across the wood: it speaks of the wood and its two faces, not of the film.
    STRAIGHTEDGE = "straightedge"
    # The same can on a scrap of the same wood: it tells the can from the wood.
    SAMPLE = "control-sample"
    # Wiped with spirit, under a light from the side: it speaks of the wood before its first coat.
    LOOK = "raking-light"
    # Of an old finish: a laboratory, or a swab that reached every coat of it.
    LEAD = "lead-test"


class Found(StrEnum):
    """What a test found; for what each blocks, proves and answers see film.checks."""

    TACKY = "tacky"
    GUMS = "gums"
    PRINTS = "prints"
    SMELLS = "smells"
    FLAKES = "flakes"
    DRY = "dry"
    NO_PRINT = "no-print"
    POWDER = "powder"
    NO_SMELL = "no-smell"
    HOLDS = "holds"
    SOFTENS = "softens"
    RESISTS = "resists"
    CUPPED = "cupped"
    FLAT = "flat"
    SAMPLE_SOFT = "sample-soft"
    SAMPLE_DRY = "sample-dry"
    GLUE = "glue"
    SCRATCHES = "scratches"
    SNIPE = "snipe"
    LOOKS_CLEAN = "looks-clean"
    LEAD = "lead"
    NO_LEAD = "no-lead"


# What a check finds of a soft film, from wet toward hard.
SOFT = (Found.TACKY, Found.GUMS, Found.PRINTS)
# What a look at the wood finds.
SEEN_ON_WOOD = (Found.GLUE, Found.SCRATCHES, Found.SNIPE)


class RagsDeed(StrEnum):
    """What was done with oily rags."""

    SPREAD = "spread"
    WATER = "water"
    LIFTED = "lifted"
    CAN = "can"
    STIFF = "stiff"
    GONE = "gone"


class FaultKind(StrEnum):
    """What went wrong with a film; what each means stands in facts/data."""

    RUN = "run"
    BLUSH = "blush"
    FISHEYE = "fisheye"
    WRINKLE = "wrinkle"
    BLISTER = "blister"
    BUBBLE = "bubble"
    PEEL = "peel"
    CRAZE = "craze"
    DUST = "dust"
    BRUSH_MARK = "brush-mark"
    ORANGE_PEEL = "orange-peel"
    LAP_MARK = "lap-mark"
    BLOTCH = "blotch"
    WRONG_COLOUR = "wrong-colour"
    WRONG_SHEEN = "wrong-sheen"
    LEFT_THICK = "left-thick"
    BLEED_BACK = "bleed-back"
    RUBBED_THROUGH = "rubbed-through"
    PRINT_MARK = "print-mark"
    DENT = "dent"
    GLUE_SPOT = "glue-spot"
    SCRATCHES = "scratches"
    SNIPE = "snipe"
    OPEN_JOINT = "open-joint"
    CUPPED = "cupped"
    # Wood that the colour never reached, at the edge of a panel that shrank.
    BARE_STRIP = "bare-strip"
    # Wax that was not buffed off, or not any more.
    SMEAR = "smear"
    OTHER = "other"


class Stripping(StrEnum):
    """How a film comes off."""

    STRIP = "strip"
    SAND_THROUGH = "sand-through"
    SCRAPE = "scrape"
    WASH = "wash"


class ContainerDeed(StrEnum):
    """What is done with a can, mix or jar, or what befell it."""

    OPENED = "opened"
    MIXED = "mixed"
    TOPPED_UP = "topped-up"
    STIRRED = "stirred"
    # Poured from as it stood.
    UNSTIRRED = "unstirred"
    STRAINED = "strained"
    FROZEN = "frozen"
    TESTED = "tested"
    # Colour from below got into it: it is clear no more.
    TINTED = "tinted"
    CONDEMNED = "condemned"
    EMPTIED = "emptied"
    THROWN_OUT = "thrown-out"


class Outcome(StrEnum):
    """How a finish came out."""

    GOOD = "good"
    FAIR = "fair"
    FAILED = "failed"


class Filter(StrEnum):
    """What a respirator holds back, in words of kinds."""

    PARTICLES = "particles"
    ORGANIC_VAPOUR = "organic-vapour"
    FORMALDEHYDE = "formaldehyde"
    AMMONIA = "ammonia"
    # Clean air through a hose or from a bottle: no filter at all.
    SUPPLIED_AIR = "supplied-air"


class MaskKept(StrEnum):
    """How a respirator is kept between two sessions."""

    # It hangs in the air of the shop, and fills from that.
    OPEN = "open"
    BAG = "bag"


class RespiratorDeed(StrEnum):
    """What is done with a respirator."""

    # Its cartridges, or it, taken out of the seal: from then on they fill, worn or not.
    OPENED = "opened"
    WORN = "worn"
    # Away, or its cartridges are.
    GONE = "gone"
