"""The words that people say for ours: what is done, found, thrown away, what a face is for.

One table by kind of word. A word that may be two things of a kind stands under both, and is asked;
glues, faults, classes and woods have their other names in their own facts.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from enum import StrEnum

from finishlog.core.commands import Do
from finishlog.core.finish.classes import Sheen
from finishlog.core.log.words import FaultKind, Found, Keeping, Operation, Outcome, RagsDeed, Test
from finishlog.core.shop.things import FaceKind

# Said of work: `log PART WORD` and the steps of a schedule.
_WORK: Mapping[StrEnum, str] = {
    Operation.SHAPE: "turn turned turning finish-turn re-turn lathe carve carved cut-to-size mill"
    " milled",
    Operation.SAND: "sanding sanded hand-sand hand-sanded machine-sand sandpaper flatten rub-down",
    Operation.RAISE_GRAIN: "raise raised-grain wet wetting dampen water-pop pop",
    Operation.DENIB: "de-nib nib knock-back knock-down cut-back",
    Operation.SCUFF: "scuffing scuffed scuff-sand abrade key scotch cut-back rub-down",
    Operation.MASK: "masking masked tape tape-off taped",
    Operation.UNTAPE: "unmask tape-away detape remove-tape untaped",
    Operation.WIPE: "wiped wiped-off wipe-off wipe-down wipe-back wipe-dry dry-off",
    Operation.BUFF: "buffing buffed burnish polish polishing",
    Operation.RUB: "rub rub-out-finish rubbing rubbed-out polish polishing rottenstone pumice",
    Operation.GLUE_UP: "glue gluing glued clamp clamp-up assemble assembly joined",
    Operation.HARDWARE: "hinges knobs handles pulls fittings",
    Operation.SOLVENT_WIPE: "degrease solvent naphtha-wipe wash wipe-with-solvent",
    Operation.RINSE: "rinsed neutralise neutralize wash",
    Operation.STEEL_WOOL: "wool wire-wool steelwool 0000",
    Operation.MEND: "repair repaired touch-up fix",
    Operation.LEVEL: "flush plane planed level-joint plane-flush",
    Operation.SUN: "sunned sunlight put-in-sun",
    Operation.STACK: "stacked pile",
    Operation.PACK: "wrap wrapped packing packed box-up",
    Operation.STORE: "stored storing put-by put-away store-away shelved in-storage",
    Operation.USE: "in-use used loaded put-to-use",
}
# Said of a check.
_FOUND: Mapping[StrEnum, str] = {
    Found.TACKY: "sticky still-tacky wet still-wet oily greasy soft",
    Found.GUMS: "gummy gum clogs clogged balls-up",
    Found.PRINTS: "still-prints print prints-through dents soft fingerprint",
    Found.SMELLS: "still-smells smell smelly stinks odour odor",
    Found.FLAKES: "flaky flaking chips lifts",
    Found.DRY: "not-tacky dry-to-touch dry-to-the-touch touch-dry not-sticky",
    Found.NO_PRINT: "no-prints no-mark clean",
    Found.POWDER: "powders powdery sands-to-powder dusts chalks",
    Found.NO_SMELL: "odourless odorless no-odour no-odor no-smells",
    Found.HOLDS: "held sticks adheres",
    Found.SOFTENS: "comes-off-coloured colours-the-cloth stains-the-cloth dissolves redissolves",
    Found.RESISTS: "clean-cloth cloth-stays-clean does-not-dissolve solvent-holds",
    Found.CUPPED: "cup cupping bowed warped rocks not-flat",
    Found.FLAT: "lies-flat straight true level",
    Found.SAMPLE_SOFT: "sample-tacky sample-stayed-soft sample-wet sample-sticky",
    Found.SAMPLE_DRY: "sample-dried sample-hard sample-good",
    Found.GLUE: "glue-spots glue-smear squeeze-out",
    Found.SCRATCHES: "scratch swirls swirl-marks pigtails cross-grain-scratches",
    Found.SNIPE: "planer-snipe planer-marks mill-marks tear-out",
    Found.LOOKS_CLEAN: "nothing-found nothing-to-see looks-good",
    Found.LEAD: "lead-found has-lead lead-positive",
    Found.NO_LEAD: "lead-free lead-negative without-lead",
}
_RAGS: Mapping[StrEnum, str] = {
    RagsDeed.SPREAD: "spread-out flat laid-out hung-out outside outdoors",
    RagsDeed.WATER: "soaked sunk soak bucket under-water",
    RagsDeed.LIFTED: "taken-out lifted-out",
    RagsDeed.CAN: "canned in-can oily-waste-can",
    RagsDeed.STIFF: "crisp stiff-and-crisp",
    RagsDeed.GONE: "handed-over disposed collected",
}
_FACE: Mapping[StrEnum, str] = {
    FaceKind.SHOW: "seen visible shown outside front face show-face",
    FaceKind.HIDDEN: "unseen inside concealed back rear underside bottom",
    FaceKind.JOINT: "masked taped glue glued glue-face tenon bare raw unfinished uncoated",
    FaceKind.EDGE: "edges edging edge-band banding",
}
_KEPT: Mapping[StrEnum, str] = {
    Keeping.STICKERS: "sticks stickered on-stickers stickered-stack slats separators spacers",
    Keeping.STACKED: "stack in-a-stack piled face-to-face",
    Keeping.WRAPPED: "wrap packed blanket plastic bagged foil",
    Keeping.SHUT_IN: "shut closed-in in-a-case case cupboard crate box boxed cabinet drawer",
    Keeping.STANDING: "on-edge upright hanging hung leaning stood free",
    Keeping.FLAT: "lying lying-flat laid-flat on-its-back face-up face-down",
}
_OUTCOME: Mapping[StrEnum, str] = {
    Outcome.GOOD: "sound well great excellent perfect fine nice lovely not-bad",
    Outcome.FAIR: "ok okay so-so middling acceptable meh mixed not-bad",
    Outcome.FAILED: "bad fail poor failure awful terrible ruined",
}
_SHEEN: Mapping[StrEnum, str] = {
    Sheen.MATTE: "matt mat flat dead-flat dull",
    Sheen.VELVET: "velvety",
    Sheen.EGGSHELL: "egg-shell",
    Sheen.SATIN: "silk silky",
    Sheen.SEMI_GLOSS: "semigloss semi half-gloss",
    Sheen.GLOSS: "glossy shiny bright",
    Sheen.HIGH_GLOSS: "high mirror full-gloss",
}
_TEST: Mapping[StrEnum, str] = {
    Test.TOUCH: "finger fingertip",
    Test.THUMBNAIL: "nail thumb fingernail",
    Test.SAND: "sanding",
    Test.SMELL: "nose sniff",
    Test.SCRATCH: "cross-cut tape knife",
    Test.SOLVENT_RUB: "rub solvent spirit-rub double-rub",
    Test.STRAIGHTEDGE: "straight-edge ruler rule flatness",
    Test.SAMPLE: "sample control scrap test-piece",
    Test.LOOK: "look light spirit-wipe lamp",
    Test.LEAD: "swab lead-swab laboratory lead",
}


def _by_word(said: Mapping[StrEnum, str]) -> Mapping[str, tuple[StrEnum, ...]]:
    found: dict[str, tuple[StrEnum, ...]] = {}
    for ours, words in said.items():
        for word in words.split():
            found[word] = (*found.get(word, ()), ours)
    return found


SAID_AS: Mapping[type[StrEnum], Mapping[str, tuple[StrEnum, ...]]] = {
    Operation: _by_word(_WORK),
    Found: _by_word(_FOUND),
    RagsDeed: _by_word(_RAGS),
    FaceKind: _by_word(_FACE),
    Outcome: _by_word(_OUTCOME),
    Keeping: _by_word(_KEPT),
    Test: _by_word(_TEST),
    Sheen: _by_word(_SHEEN),
}

# Said for the step that is due, whatever it is, and for a coat where a coat is due.
DUE_SAID = frozenset({"done", "next", "next-step", "due"})
COAT_SAID = frozenset({"coat", "a-coat", "coated", "next-coat", "another-coat"})

# Under which command what is said of a piece goes, where it is none of the one that was typed.
GOES_UNDER: Mapping[type[StrEnum], Do] = {
    Operation: Do.LOG,
    Found: Do.CHECK,
    FaultKind: Do.FAULT,
    Outcome: Do.REVIEW,
}
_OFF = frozenset({"strip", "stripped", "stripping", "off", "took-off", "removed"})

# A coat is said by its product.
WORK = tuple(operation.value for operation in Operation if operation is not Operation.COAT)


def plain_word(typed: str) -> str:
    """Write a word as the table has it: `Wipe off` as `wipe-off`."""
    return "-".join(typed.casefold().replace("_", "-").split())


def meant(kind: type[StrEnum], typed: str) -> tuple[StrEnum, ...]:
    """Return what a word of a kind may mean: one when it is clear, several to ask, or none.

    Ours first, then what people say for it, then the beginning of one of ours.
    """
    word = plain_word(typed)
    ours: Sequence[StrEnum] = tuple(each for each in kind if each != Operation.COAT.value)
    whole = tuple(each for each in ours if each.value == word)
    begun = tuple(each for each in ours if len(word) > 2 and each.value.startswith(word))
    return whole or SAID_AS[kind].get(word, ()) or begun


def is_said(kind: type[StrEnum], typed: str) -> bool:
    """Tell whether a word is in full one of ours or one that people say for it."""
    word = plain_word(typed)
    return word in SAID_AS.get(kind, {}) or word in {each.value for each in kind}


def goes_under(typed: str, but: type[StrEnum]) -> Do | None:
    """Return where a word belongs, when it is none of the kind `but`."""
    if plain_word(typed) in _OFF:
        return Do.OFF
    others = ((kind, deed) for kind, deed in GOES_UNDER.items() if kind is not but)
    return next((deed for kind, deed in others if is_said(kind, typed)), None)


def several_words(typed: Sequence[str], is_known: Callable[[str], bool]) -> tuple[str, ...]:
    """Put the last words together where they are one word of ours: `legs wipe off`, `no print`."""
    for count in range(min(4, len(typed) - 1), 1, -1):
        together = " ".join(typed[-count:])
        if is_known(together):
            return (*typed[:-count], together)
    return tuple(typed)


def also_said(kind: type[StrEnum]) -> str:
    """Write the table of a kind for its help: `tacky: sticky, wet, oily; prints: soft`."""
    ours: dict[StrEnum, list[str]] = {}
    for word, meanings in SAID_AS[kind].items():
        for each in meanings:
            ours.setdefault(each, []).append(word.replace("-", " "))
    return "; ".join(f"{each.value}: {', '.join(words)}" for each, words in ours.items())
