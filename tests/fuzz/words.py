"""What is typed: words that mean something in the invented shop, and words that mean harm."""

from __future__ import annotations

from random import Random

MOMENTS = (
    *("now", "19:30", "2h ago", "yesterday 18:00", "mon evening", "24 Nov 7pm", "half past nine"),
    *("today 11:00 to 12:40", "2026-11-24T16:00:00Z", "last night", "2026-10-25 01:30", "noon"),
)
DUES = ("Sat 5 Dec", "in 3 weeks", "next fri", "2026-12-05", "by 24 Dec", "in 2 months", "none")
LENGTHS = ("4h", "30min", "2d", "4-6h", "1.5 h", "1h30", "3 weeks", "900d!", "30m", "3mo")
AMOUNTS = ("1L", "30ml", "2 oz wt", "8 fl oz", "1 qt", "250 g", "2lb", "1/2 gal", "150um", "4mil")
AIRS = ("18C 55%", "63F 40%", "17.2C", "58%", "-5C", "40C! 99%", "18", "55", "9%")
HOURS = ("mon-fri 18:00-21:00", "sat 9-17", "daily 8-20", "7pm-10:30pm", "sun 22-2", "none")
USUAL = ("6:00:12C/60%", "16:00:16C", "23:00:-1C/90%", "none", "9:00:18C/50%")
SELECTORS = (
    *("case", "cabinet/case", "doors", "doors:1", "doors:1-2@back", "seat", "leg:1-6", "stools/*"),
    *("*/*", "cabinet", "stool", "door-stop", "case doors", "seat@socket", "legs", "DOORS", "do"),
)
PRODUCTS = ("sealer", "topcoat", "oil", "shellac", "wax", "poly", "lacquer", "Sealer")
CLASSES = ("oil-polyurethane", "shellac-2lb", "conversion-varnish", "bleach-chlorine", "paste-wax")
FOUND = (
    "tacky",
    "dry",
    "prints",
    "no-print",
    "powder",
    "gums",
    "holds",
    "flakes",
    "smells",
    "oily",
)
FAULTS = ("wrinkle", "blush", "run", "peel", "blister", "fisheye", "mended", "open-joint", "cupped")
WORK = ("sand", "scuff", "wipe", "mask", "untape", "glue-up", "pack", "use", "rub-out", "vacuum")
WOODS = ("oak", "ash", "padauk", "birch plywood", "beech", "cherry", "mystery wood")
FACES = ("back", "front", "back:hidden", "front=left,right:padauk", "all round", "socket:joint")
NAMES = ("new-one", "another", "third")
ROOMS = ("finishing", "FINISHING", "barn", "yard")
CANS = ("tin", "jar-1", "mixed")
GLUES = ("yellow pva", "hide", "epoxy")
PATHS = ("case", "cabinet/doors", "stools/leg", "desk/lid", "cabinet/shelf")
FILES = ("logger.csv", "project.toml", "deep.toml", "noise.bin", "pipe", "missing.csv", ".", "/")
STEPS = ("sand", "sealer", "topcoat*3", "scuff", "oil@back", "mask", "untape@front", "topcoat*0")
NUMBERS = ("1", "3", "8", "12", "0", "99", "25")
SAID = ("even, no runs", "half only", "P220", "level the run first")

# What is called by name in each group of commands.
OF_GROUP = {
    "can": CANS,
    "room": ROOMS,
    "product": PRODUCTS,
    "project": ("cabinet", "stools", "desk"),
    "part": PATHS,
    "steps": ("clear", "bright"),
}

# By the name of a parameter, then by the command: what a person would type there.
MEANT = {
    **dict.fromkeys(("at", "bought", "made", "opened", "since", "until", "time"), MOMENTS),
    **dict.fromkeys(("due", "use_by"), (*DUES, *LENGTHS)),
    **dict.fromkeys(("recoat", "sand", "touch", "tack_free", "clamp", "stack", "pack"), LENGTHS),
    **dict.fromkeys(("light_use", "cured", "window", "every", "minutes"), LENGTHS),
    **dict.fromkeys(("amount", "jar", "film", "cut", "width", "to"), AMOUNTS),
    **dict.fromkeys(("air", "label_air", "coldest", "night", "surface", "moisture"), AIRS),
    **dict.fromkeys(("wet_bulb", "temperature", "humidity"), AIRS),
    **dict.fromkeys(("parts", "which", "on"), SELECTORS),
    **dict.fromkeys(("product", "from_", "from"), PRODUCTS),
    **dict.fromkeys(("act", "count", "passes", "days"), NUMBERS),
    **dict.fromkeys(("text", "note", "remedy", "where", "next_time", "grit", "batch"), SAID),
    "room": ROOMS,
    "name": NAMES,
    "new_name": NAMES,
    **{
        f"product {deed} name": PRODUCTS for deed in ("label", "edit", "show", "archive", "restore")
    },
    **{
        f"project {deed} name": ("cabinet", "stools", "desk") for deed in ("edit", "show", "rename")
    },
    "path": PATHS,
    "of": ("seat:1", "leg:3", "doors:2", "legs"),
    "like": PATHS,
    "as_": ("clear", "bright", "none"),
    "steps": ("clear", "bright"),
    "face": FACES,
    "file": FILES,
    "step": STEPS,
    "species": WOODS,
    "wood": WOODS,
    "finish": CLASSES,
    "found": FOUND,
    "test": ("touch", "sand", "scratch", "smell", "thumbnail"),
    "outcome": ("good", "fair", "failed"),
    "glue": GLUES,
    "deed": ("spread", "water", "can", "stiff", "gone"),
    "season": ("nov-mar", "all", "jan", "dec-feb"),
    "whom": ("food", "child", "anyone"),
    "zone": ("UTC", "Europe/London", "Mars/Olympus"),
    "start": ("7%", "12%", "21C 50%"),
    "end": ("9%", "6%", "5C 80%"),
    "width": ("300mm", "12in", "30 cm"),
    "settings value": ("F", "C", "Europe/London", "Mars/Olympus", "oz", "um", "24h"),
    "settings name": ("temperature", "zone", "volume", "film", "weight"),
    "species show name": WOODS,
    "class show name": CLASSES,
    "glue show name": GLUES,
}

# Words in a row, by the command and the parameter that takes them all.
ROWS = {
    "log words": ((SELECTORS, PRODUCTS), (SELECTORS, WORK), (SELECTORS, SELECTORS, PRODUCTS)),
    "check words": ((SELECTORS, FOUND), (SELECTORS, SELECTORS, FOUND)),
    "fault words": ((SELECTORS, FAULTS), (SELECTORS, SELECTORS, FAULTS)),
    "air words": ((AIRS,), (AIRS,), (FILES,)),
    "heat words": (
        (("today 18 till 23", "tomorrow 7 till 9", "now till 22"), ("18C", "20C", "64F")),
        (("off", "mon-fri 18-23"),),
        (),
    ),
    "move words": ((SELECTORS, ROOMS),),
    "review words": ((SELECTORS, ("good", "fair", "failed")),),
    "photo words": ((SELECTORS, FILES),),
    "past words": ((WOODS,), (PRODUCTS, PRODUCTS), (CLASSES, ("warm",)), ()),
    "moisture words": ((SELECTORS, ("9%", "12 %", "8")),),
    "weigh words": ((SELECTORS, ("640g", "1 lb 6 oz", "2 kg")),),
    "surface words": ((SELECTORS, ("15C", "60F", "18")),),
    "plan words": ((("cabinet", "stools"),), ()),
    "mix parts": (
        (("base:1L",), ("hardener:100ml", "catalyst:3%")),
        (("flakes:2 oz wt", "flakes:60g"), ("alcohol:8 fl oz", "alcohol:500ml")),
    ),
    "shop hours hours": ((HOURS,), (HOURS, HOURS)),
    "room usual hours": ((USUAL,), (USUAL, USUAL, USUAL), ()),
    "room heating when": ((("mon-fri", "daily"), ("18-23", "7:00-9:00"), ("18C",)), ()),
    "steps new step": ((STEPS, STEPS, STEPS), ()),
    "steps edit step": ((STEPS, STEPS),),
}
ASKS = ((SELECTORS,), (SELECTORS, SELECTORS))

HOSTILE = (
    *("", " ", "-", "--", "-1", "0", "٣", "²", "½", "③", "১২", "1e999", "nan", "inf", "-0", "0x10"),
    *("9" * 400, "1" + "0" * 20, "1.797e308", "1,000,000", "1.000,5", "1_0", "+5", "1/0", "½/0"),
    *("0001-01-01", "9999-12-31", "0000-00-00", "2026-02-30", "24:00", "25:61", "31 Feb", "30 feb"),
    *("9999-12-31T23:59:59-12:00", "0001-01-01T00:00:00+14:00", "2026-11-24T21:05+99:00", "١٢:٣٠"),
    *("a" * 300, "é" * 300, "漢" * 130, "🪵", "e\u0301", "İ", "ß", "\ufeff", "\u00a0", "\u2028"),
    *(
        "\x07",
        "\x1b[31mred",
        "\x7f",
        "\x85",
        "\x9b31m",
        "\u202egnirts",
        "\u2066x",
        "\u200b",
        "\r\n",
    ),
    *(
        "@",
        "*",
        ":",
        "/",
        "doors@",
        "doors:",
        "doors:²",
        "doors:1-99999999999",
        "doors:3-1",
        "a/b/c",
    ),
    *(
        "doors:" + ",".join(["1"] * 200),
        "*/*@*",
        "doors@back,",
        "..",
        "../..",
        "/dev/null",
        "~",
        ".",
    ),
    *("';drop table act;--", "%s%n", "{}", "\\", "$(id)", "\udcff", "%(asctime)s", "[red]x[/red]"),
    *(
        "0C 0%",
        "-300C",
        "1000C 101%",
        "5e300C",
        "-40F -1%",
        "0ml",
        "-2oz",
        "1e9lb",
        "0lb",
        "999mil",
    ),
    *("0h", "-2h", "1000000000000h", "0.0000001s", "9999999d", "1d2h3min4s5d", "h", "NaNh"),
)
SIGNS = "٣²½③Ⅷ\x07\x1b\x7f\x85\u202e\u2066\u200b\ufeff\t\n,.:;-–/@*+!%°\"' 09eE"


def row(draw: Random, command: str, parameter: str) -> list[str]:
    """Draw the words in a row that a person might type for a command."""
    pools = draw.choice(ROWS.get(f"{command} {parameter}", ASKS))
    return [draw.choice(pool) for pool in pools]


def meant(draw: Random, command: str, parameter: str) -> str:
    """Draw a word that a person might type for a parameter of a command."""
    group, _, deed = command.partition(" ")
    if parameter == "name" and group in OF_GROUP and (deed != "new" or draw.random() < 0.3):
        return draw.choice(OF_GROUP[group])
    return draw.choice(MEANT.get(f"{command} {parameter}") or MEANT.get(parameter, SAID))


def spoilt(draw: Random, word: str) -> str:
    """Spoil a word by a sign put in, taken out or doubled."""
    at = draw.randrange(len(word) + 1)
    return draw.choice(
        (
            word[:at] + draw.choice(SIGNS) + word[at:],
            word[:at] + word[at + 1 :],
            word[:at] + word[:at] + word[at:],
            word + draw.choice(HOSTILE),
            word.translate(str.maketrans("0123456789", "٠١٢٣٤٥٦٧٨٩")),
            word.swapcase(),
        )
    )


def harmed(draw: Random, word: str, harm: float) -> str:
    """Return the word, or with the likelihood `harm` a spoilt or a hostile one."""
    if draw.random() >= harm:
        return word
    return spoilt(draw, word) if draw.random() < 0.5 else draw.choice(HOSTILE)
