"""`--json`: one document in one envelope, with keys that stay; a new key is added here too."""

from __future__ import annotations

import json
import re
import shlex
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import pytest
from run import NOW, Answer, Finishlog, furnished
from terminal_session import shown
from the_demo import FOR_A_SCRIPT, the_demo
from typer.main import get_command

from finishlog import errors
from finishlog.cli.app import command_line
from tests.rows import every_row

# The invented cabinet of the demo, which differs from the one here.
LOGGER = Path(__file__).parents[1] / "air" / "logger.csv"
CABINET = Path(__file__).parents[3] / "sample_data" / "cabinet.toml"
FIGURE = "also at colder high_h low_h note source typical_h"
WINDOW = "again closes kind note source"
STANDING = (
    "acts answer because binds closes coat coats deed faces fault faults findings high hours kept"
    " label layers learnt low milestone next_time old_finish on_it operation part pieces prepared"
    " product scuff_first stopped usual_wanted waits_for"
)
RAGS = (
    "acts asked dust handling history new number opened overdue parts product remarks severity"
    " since soft state stiff_from stiffens waste"
)
WHEN = "earliest latest sureness tie"
AIR = "humidity_pct temperature_c"
WOOD_AIR = "air dew_point_c room settles_pct"
FINDING = "acts answer get_out level measured on remedy rule sentence source wanted"
PAUSED = "act already_so at going_on labels next_time standings"
MADE = {"": "before detail kind name notes people warnings"}
CHECKED = {
    "": "act at blocks elsewhere found in_the_white labels means moved place proves remedies"
    " standings test warnings",
    "at": WHEN,
    "standings[]": STANDING,
}
LOGGED = {
    "": "act after air asks at bare_until clamped_until container edges entries_after_it"
    " evening first_pass hand_dust labels late moved named notes operation passes people product"
    " rags recorded renumbered same stopped warnings",
    "at": WHEN,
    "after[]": STANDING,
    "rags[]": RAGS,
}
PART = (
    "faces id is_board made_of note old_finish old_names path pieces room species steps steps_name"
)
PROJECT = "due name note old_names parts"
STEPS = "name note old_names steps"
PRODUCT = {
    "": "class_key class_name name note of old_names says self_heating sheen stages window",
    "window": WINDOW,
}
ONE_PRODUCT = {
    "": PRODUCT[""].replace(" says self_heating", " pace says self_heating"),
    "window": WINDOW,
    "pace[]": "acts coats container factor first high low median method words",
    "says[]": "act because words",
}
SPECIES = (
    "aliases blotches blotches_source dust key name note oily oily_source pitchy pitchy_source"
    " pores pores_source radial_per_pct tangential_per_pct tannin tannin_source wants_filler"
    " wants_filler_source"
)
GLUE = "aliases before_finish clamp cure key level min_c name notes open water_based wood_c"
CLASS = (
    "abrade aliases builds_film carrier coats daily_coats dry_film_limit_um family "
    "fills_spots hardener_pct hazards key left_on_top limits may_be mechanism methods "
    "most_at_once_um most_coats name needs_tooth not_inside_closed_source notes "
    "pot_life_h readings self_heating self_heating_source shelf_opened_d solids_vol_pct "
    "solids_wt_pct spread_m2_per_l stages topcoat wet_film_um window wipe_off_h "
    "wrinkles_when_late_source"
)
DEED = "act at said went_wrong"
CARD = {
    "": "dates for_whom handed_over last_coat lines name parts",
    "dates[]": "air_read asks better blocked dead_zone high longer low missing stage sure",
    "lines[]": "kind parts source text used_for",
    "parts[]": "acts coats dates label last_coat old_finish species",
    "parts[].coats[]": "class_name coats product",
}
RANGE = "also high low note source"
CAN = (
    "amount_ml batch findings how kind made_at name old_names opened_at overdue product ratio"
    " use_by"
)
CAN_DEED = {"": "act at coats deed findings name note product", "at": WHEN}
MIX_PART = "name parts product volume_ml weight_g"
MIXED = {
    "": "about_l act at cut_g_per_l dilution made_at name notes others_open parts product ratio"
    " solids_pct topped_up use_by warnings",
    "at": WHEN,
    "parts[]": MIX_PART,
}
PLACE = "exhaust_m3_h has heater joined kind lives mixing out volume_m3"
ROOM = {
    "": "coldest_night_c name note old_names place readings",
    "place": PLACE,
    "readings[]": "act air at",
    "readings[].air": AIR,
}

NOTE = "applies_to id source text"
AIR_LOGGED = {
    "": "act air at dew_point_c humidity_supposed room room_is_new wet_bulb_c",
    "air": AIR,
    "at": WHEN,
}
AIR_TAKEN_IN = {
    "": "act coldest_c file_name first kept known known_otherwise last only_tried read_as room"
    " room_is_new warmest_c",
    "read_as": "changed clamped columns gaps hour_twice newest_first out_of_order repeated skipped"
    " unit unit_is zone",
    "read_as.columns": "humidity temperature time",
}
USUAL = {
    "": "coldest_night_c days room",
    "days[]": "damp_is_assumed day drawn",
    "days[].day": "coldest_c heated heated_c heated_days hours replaced_at season valid_from",
}
USUAL_SET = USUAL | {"": "act caution coldest_night_c days instead_of notes room taken_from"}

# Every command, with a line that it ends well with, and the keys of its answer by their place.
CONTRACT: dict[str, tuple[str, dict[str, str]]] = {
    "ready": (
        "",
        {
            "": "before bench cans drying empty fits glue_ups kept milestones mixed next_at"
            " next_what now people rags rooms set_aside shop_open shop_opens stopped takes uneven"
            " vapour",
            "bench[]": STANDING,
            "drying[]": STANDING,
            "glue_ups[]": STANDING,
            "rags[]": RAGS,
            "rooms[]": "acts air asks_night coldest_night_c dew_point_c fitness humidity_supposed"
            " in_use read_at room tonight_c",
            "rooms[].air": AIR,
        },
    ),
    "log": ("case topcoat", LOGGED | {"warnings[]": FINDING}),
    "check": ("case dry", CHECKED),
    "look": ("case clean", CHECKED),
    "air": ("18C 57%", AIR_LOGGED),
    "heat": (
        "Sat 9 till 17 18C",
        {
            "": "act beside caution how_warm_unknown notes room room_is_new span temperature_c"
            " warnings",
            "span": WHEN,
            "notes[]": NOTE,
        },
    ),
    "rags": ("", {"[]": RAGS}),
    "undo": (
        "21",
        {"": "act again withdrawn", "withdrawn": "act is_coat is_undo typed_at verb words"},
    ),
    "amend": (
        '19 --at "3h ago"',
        {
            "": "act amends kind moved now_is remarks standings warnings was",
            "moved[]": "label now_is pace was",
            "was": WHEN,
            "now_is": WHEN,
            "standings[]": STANDING,
        },
    ),
    "fault": (
        "case run",
        {
            "": "act after again apart at blocks causes deadline dry_to kind labels means name"
            " place remedies same_history source too_late until weights",
            "causes[]": FINDING,
            "at": WHEN,
            "after[]": STANDING,
            "after[].faults[]": "act at name on place",
        },
    ),
    "off": (
        "case --scraped",
        {
            "": "act after at labels notes operation rags took warnings",
            "at": WHEN,
            "after[]": STANDING,
            "took[]": "coats label old_finish stays",
            "took[].coats[]": "act product put_on",
        },
    ),
    "moisture": (
        "doors 14%",
        {
            "": "act at labels meter moisture_pct rooms standings warnings",
            "at": WHEN,
            "rooms[]": WOOD_AIR,
            "rooms[].air": AIR,
            "warnings[]": FINDING,
            "standings[]": STANDING,
        },
    ),
    "weigh": (
        "doors 14kg",
        {
            "": "act at findings labels pieces series standings weight_g",
            "at": WHEN,
            "findings[]": FINDING,
            "series": "least_g most_g over_d trend weights",
            "series.weights[]": "act at weight_g",
            "standings[]": STANDING,
        },
    ),
    "surface": (
        "doors 14C",
        {
            "": "act at labels over_dew_c rooms standings temperature_c",
            "at": WHEN,
            "rooms[]": WOOD_AIR,
            "rooms[].air": AIR,
            "standings[]": STANDING,
        },
    ),
    "over": (
        "boiled-linseed-oil alkyd-varnish --on oak",
        {
            "": "air answer at binds findings hard hard_at label options over room scuff under"
            " wood",
            "binds": FINDING,
            "findings[]": FINDING,
            "label": FIGURE,
            "options[]": "binds held high high_h low low_h note said_by source",
        },
    ),
    "movement": (
        "ash 300mm --from 8% --to '22C 65%'",
        {
            "": "change_mm end ends_mm name per_pct radial remarks source species start width_mm",
            "start": "air moisture_pct",
            "end": "air moisture_pct",
            "end.air": AIR,
        },
    ),
    "move": (
        "case finishing",
        {
            "": "act air_known at from_cold_c labels room standings was_there",
            "at": WHEN,
            "standings[]": STANDING,
        },
    ),
    "aside": (
        "case --next wax",
        {"": PAUSED, "at": WHEN, "standings[]": STANDING},
    ),
    "resume": ("case", {"": PAUSED, "at": WHEN, "standings[]": STANDING}),
    "away": (
        "'Sat 28 Nov' 'Sun 6 Dec' --note fair",
        {"": "act closing reason span", "span": WHEN},
    ),
    "leave": (
        "",
        {
            "": "closing deadlines frost heat heaters look_at masks mixes next_visit now people"
            " prepared rags ready_then solvent_rags sprayed tape vapour",
            "rags[]": RAGS,
        },
    ),
    "note": ("case -t sound", {"": "act at labels outcome text warnings", "at": WHEN}),
    "when": (
        "case",
        {
            "": "glue_ups lines now",
            "lines[]": "ship since stages standing",
            "lines[].standing": STANDING,
            "lines[].stages[]": "air_read asks better blocked dead_zone high longer low missing"
            " stage sure",
        },
    ),
    "why": (
        "case",
        {
            "[]": "air air_act as_usual beside checks clock film instead label least on_it options"
            " pace read_at sooner standing starts tried unknown",
            "[].standing": STANDING,
            "[].label": "at colder high_h low_h product source stage",
            "[].clock": "at_c below_c by course done_h flooded held_h longer measured_h needed_h"
            " pace thick_film unknown_h usual_h",
            "[].clock.course[]": "air done_h known moment pace",
            "[].checks[]": "act found moment place test",
            "[].on_it[]": "act product put_on stirred",
        },
    ),
    "on": (
        "case",
        {
            "[]": "aside attempts coats film handled joint passed_over said species standing"
            " to_come",
            "[].coats[]": "abraded abraded_acts act container earlier last product put_on stopped"
            " wiped_act wiped_after_min",
            "[].standing": STANDING,
        },
    ),
    "history": (
        "case",
        {
            "[]": "act amended_by amends changes happened in_force kind parts said time_zone"
            " typed_at verb withdrawn_by withdraws words",
            "[].happened": WHEN,
        },
    ),
    "past": (
        "ash",
        {
            "": "counts finishes remarks sought",
            "counts": "described failed fair finishes good in_work not_said taken_off",
            "finishes[]": "attempts faces handed_over in_work into is_board label last notes off"
            " outcome outcomes part photos reviews species steps",
            "finishes[].attempts[]": "coats off prepared",
            "finishes[].attempts[].prepared[]": DEED,
            "finishes[].attempts[].coats[]": "act air class_name container dried flooded"
            " hours_since_last label_closes_h label_high_h label_low_h method not_in_this_air note"
            " product put_on scuffed_before sheen since stirred stopped wet_film_um"
            " wiped_after_min",
        },
    ),
    "plan": (
        "",
        {
            "": "air before boards_passed evening hours_known missed_windows now parts people"
            " projects sessions stopped unplanned",
            "air[]": "acts air as_usual coldest_night_c place read_at room",
            "air[].place": PLACE,
            "air[].air": AIR,
            "projects[]": "acts by_due due late_openings light_use light_use_tested packed project"
            " promise slack_h slack_shop_min spare_closes spare_opens starts tested why",
            "sessions[]": "closes end opens start tasks",
            "sessions[].tasks[]": "acts because chore closes coat coats end label lesson missed"
            " operation part product ready_since self_heating start test wiped",
            "parts[]": "acts clamp coats_done fully_hard joins label pack part stack",
            "parts[].pack": "at why",
            "unplanned[]": "acts because label needs_air operation part rooms",
        },
    ),
    "handover": (
        "cabinet",
        {
            "": "act at boards card labels note warnings whole_projects",
            "at": WHEN,
            "warnings[]": FINDING,
            **{f"card{'.' if k else ''}{k}": v for k, v in CARD.items()},
        },
    ),
    "review": (
        "case good -t even",
        {"": "act at before labels no_finish outcome text", "at": WHEN},
    ),
    "photo": ("case case.jpg", {"": "act at is_there labels path text", "at": WHEN}),
    "project new": ("table", MADE),
    "project list": ("", {"[]": PROJECT, "[].parts[]": PART}),
    "project show": ("cabinet", {"": PROJECT, "parts[]": PART}),
    "project edit": ("cabinet --note 'for the hall'", MADE),
    "project rename": ("cabinet wall-cabinet", MADE),
    "project archive": ("cabinet", MADE),
    "project restore": ("table", MADE),
    "project load": (
        f"{CABINET} --check",
        {
            "": "added as_it_was before differs file only_checked people project warnings",
            "differs[]": "in_file now_is to_change what",
        },
    ),
    "part new": ("cabinet/shelf -n 2", MADE),
    "part steps": ("leg --as clear", MADE),
    "part archive": ("leg", MADE),
    "part restore": ("tray", MADE),
    "part rename": ("leg legs", MADE),
    "part edit": ("leg -n 13", MADE),
    "part list": ("", {"[]": PART}),
    "part show": ("case", {"[]": PART}),
    "steps new": ("oiled sand oil*2", MADE),
    "steps list": ("", {"[]": STEPS}),
    "steps show": ("clear", {"": STEPS}),
    "steps check": (
        "clear --on rosewood",
        {
            "": "before left like name room shines steps wood",
            "steps[]": "after_h answer binds findings number scuff step wait",
            "steps[].binds": FINDING,
            "steps[].findings[]": FINDING,
        },
    ),
    "steps edit": ("clear sealer topcoat*2", MADE),
    "steps rename": ("clear water-clear", MADE),
    "steps archive": ("clear", MADE),
    "steps restore": ("old-way", MADE),
    "product new": ("wax --class paste-wax", MADE),
    "product label": ("topcoat --recoat 4h", {"": "act detail judged kind moved name"}),
    "product says": (
        "topcoat --not-over oil-stain --because 'it lifts it'",
        {"": "act detail judged kind moved name"},
    ),
    "product sheet": (
        "topcoat --free-of isocyanate --lel 2%",
        {"": "act detail kind less name"},
    ),
    "product edit": ("topcoat --note satin", MADE),
    "product rename": ("topcoat clear", MADE),
    "product archive": ("dye", MADE),
    "product restore": ("stain", MADE),
    "product list": ("", {f"[]{'.' if k else ''}{k}": v for k, v in PRODUCT.items()}),
    "product show": ("topcoat", ONE_PRODUCT),
    "room new": ("attic", MADE),
    "room night": ("finishing 12C", MADE),
    "room usual": ("finishing 0:13C/65% 17:18C", USUAL_SET),
    "room heating": ("finishing 16-23 18C", USUAL_SET | {"notes[]": NOTE}),
    "room edit": ("finishing --note warm", MADE),
    "room rename": ("finishing spray", MADE),
    "room archive": ("loft", MADE),
    "room restore": ("cellar", MADE),
    "room list": ("", {f"[]{'.' if k else ''}{k}": v for k, v in ROOM.items()}),
    "room show": ("finishing", ROOM),
    "can new": ("can-1 --product topcoat --opened now", MADE),
    "can edit": ("old-can --batch A7", MADE),
    "can rename": ("old-can first-can", MADE),
    "can archive": ("old-can", MADE),
    "can restore": ("old-can", MADE),
    "can list": ("", {"[]": CAN}),
    "can show": (
        "mix-1",
        {
            "": "coats drawn_from events line note parts solids_pct",
            "line": CAN,
            "parts[]": MIX_PART,
            "events[]": "act at note what",
            "coats[]": "act at parts stirred",
        },
    ),
    "can opened": ("old-can", CAN_DEED),
    "can stirred": ("old-can", CAN_DEED),
    "can unstirred": ("old-can", CAN_DEED | {"findings[]": FINDING}),
    "can strained": ("old-can", CAN_DEED),
    "can tinted": ("old-can", CAN_DEED | {"findings[]": FINDING}),
    "clean": ("", {"[]": "act at cleaned_at had name"}),
    "respirator": (
        "",
        {"[]": "cartridge holds kept kind made_for name never open_d opened wear worn"},
    ),
    "can frozen": ("old-can", CAN_DEED | {"findings[]": FINDING}),
    "can tested": ("old-can", CAN_DEED),
    "can condemned": ("old-can", CAN_DEED),
    "can emptied": ("old-can", CAN_DEED),
    "can thrown-out": ("old-can", CAN_DEED),
    "mix": (
        "sealer --from '2lb cut' --to 1lb --jar 500ml",
        MIXED | {"dilution": "by_alcohol by_liquid without_flakes"},
    ),
    "shop hours": ("mon-fri 18:00-23:00", MADE),
    "settings": ("", {"[]": "by_hand name value"}),
    "shop show": ("", {"": "database open_parts time_zone week"}),
    "class matrix": ("", {"[]": "answer over reason remedy source under"}),
    "class list": ("", {"[]": "family key max_c max_rh_pct min_c name self_heating"}),
    "rules": ("wipe-off", {"": "facts rules", "rules[]": "binds id reads says source"}),
    "safety": (
        "topcoat",
        {
            "": "about air apart kept lit notes people place sheet",
            "notes[]": "applies_to id source text",
        },
    ),
    "species list": ("", {"[]": SPECIES}),
    "species show": (
        "cherry",
        {
            "": "cares wood",
            "wood": SPECIES,
            "wood.radial_per_pct": "source value",
            "cares[]": "answer finishes only_with reason remedy source",
        },
    ),
    "glue list": ("", {"[]": GLUE}),
    "glue show": (
        "yellow",
        {
            "": GLUE,
            "open": FIGURE,
            "clamp": FIGURE,
            "before_finish": FIGURE,
            "level": FIGURE,
            "cure": FIGURE,
            "min_c": "source value",
            "wood_c": "source value",
        },
    ),
    "class show": (
        "shellac",
        {"": CLASS, "window": WINDOW, "wet_film_um": RANGE, "shelf_opened_d.also[]": RANGE},
    ),
}
# The same command that asks and that records.
ALSO: dict[str, tuple[str, dict[str, str]]] = {
    "handover --card": ("case", CARD),
    "moisture --air": ("'20C 50%'", {"": WOOD_AIR, "air": AIR}),
    "on --grid": (
        "case",
        {
            "": "glue_ups lines",
            "lines[]": "acts cells label part within",
            "lines[].cells[]": "coats face joint taped to_come",
        },
    ),
    "past --pairs": (
        "topcoat",
        {
            "[]": "acts air air_between checks colour colour_wait_h hours_between label_closes_h"
            " label_high_h label_low_h outcome over parts put_on scuffed under wet_film_um wrong"
        },
    ),
    "air import": (f"{LOGGER} --zone Europe/London", AIR_TAKEN_IN),
    "air 21C": ("wet 17C", AIR_LOGGED),
    "room usual finishing": (
        "",
        USUAL
        | {
            "days[].day.hours[]": "humidity_pct minute temperature_c",
            "days[].drawn[]": "air heated hour",
            "days[].drawn[].air": AIR,
        },
    ),
    "ready leg": (
        "--for 40min",
        {"fits": "left_out lines minutes takes_min"},
    ),
    "rags spread": (
        "",
        {
            "": "act ask_how at before_wet deed items not_counted of still_open",
            "still_open[]": RAGS,
            "still_open[].history[]": "act at deed not_counted",
        },
    ),
    "steps new once-more": ("topcoat*2", MADE | {"warnings[]": FINDING}),
    "log leg": ("topcoat --method spray", LOGGED | {"notes[]": "applies_to id source text"}),
}
# What has to be there first.
BEFORE: dict[str, tuple[str, ...]] = {
    "project load": (f"project load {CABINET.with_name('shop.toml')}",),
    "plan": ("shop hours 'mon-fri 18:00-21:00' 'sat 9:00-17:00'",),
    "project restore": ("project new table", "project archive table"),
    "part restore": ("part new cabinet/tray", "part archive tray"),
    "steps restore": ("steps new old-way sand", "steps archive old-way"),
    "product archive": ("product new dye --class wiping-stain",),
    "clean": ("log leg topcoat --with gun1",),
    "respirator": ("respirator half --for organic-vapour --at 10:00", "respirator half worn 2h"),
    "product show": ("check case gums", "product says topcoat --coats-a-day 2 --because cold"),
    "product restore": ("product new stain --class wiping-stain", "product archive stain"),
    "room usual finishing": ("room usual finishing 7:12C/70% 17:18C",),
    "room archive": ("room new loft",),
    "steps new once-more": (
        "part new cabinet/tray --species oak",
        "log tray topcoat",
        "review tray failed",
    ),
    **dict.fromkeys(
        (
            "can edit",
            "can rename",
            "can archive",
            "can list",
            "can opened",
            "can stirred",
            "can unstirred",
            "can strained",
            "can tinted",
            "can frozen",
            "can tested",
            "can condemned",
            "can emptied",
            "can thrown-out",
        ),
        ("can new old-can --product topcoat",),
    ),
    "can restore": ("can new old-can --product topcoat", "can archive old-can"),
    "can show": ("mix sealer flakes:120g alcohol:1L", "log leg --from mix-1"),
    "room restore": ("room new cellar", "room archive cellar"),
}
# It shows the others at work, in a database of its own.
WITHOUT = {"demo"}

INSTANT = re.compile(r"\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(?:\.\d{6})?Z")
LOOKS_LIKE_ONE = re.compile(r"\d{4}-\d{2}-\d{2}[T ]\d{2}:")


# What a terminal in another zone would have set.
ELSEWHERE = {
    "FORCE_COLOR": "1",
    "COLUMNS": "20",
    "TERM": "xterm-256color",
    "FINISHLOG_ZONE": "Australia/Adelaide",
}
Asked = Callable[[str], Answer]


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    return furnished(tmp_path)


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    """Type a command of the contract once, in the invented shop, from elsewhere."""

    @cache
    def ask(command: str) -> Answer:
        shop = furnished(tmp_path_factory.mktemp("shop"))
        shop.played("\n".join(BEFORE.get(command, ())))
        shop.environment = ELSEWHERE
        line, _ = (CONTRACT | ALSO)[command]
        return shop.did(*command.split(), *shlex.split(line), "--json")

    return ask


def _commands() -> Iterator[str]:
    for name, command in get_command(command_line()).commands.items():  # type: ignore[attr-defined]
        below = getattr(command, "commands", None)
        yield from (f"{name} {each}" for each in below) if below else (name,)


def test_every_command_stands_in_the_contract():
    assert sorted(set(_commands()) - WITHOUT) == sorted(CONTRACT)


def test_the_demo_answers_one_document_too(for_all_workers: Path):
    demo = the_demo(for_all_workers, FOR_A_SCRIPT)
    document = demo.answer.document
    assert document["command"] == "demo"
    assert document["answer"]["database"] == str(demo.database)
    assert document["answer"]["evening"][0] == "finishlog ready"
    assert demo.database.is_file()


@every_row("command", [*CONTRACT, *ALSO])
def test_the_envelope_and_the_keys(asked: Asked, command: str):
    _, keys = (CONTRACT | ALSO)[command]
    answer = asked(command)
    assert answer.err == ""
    assert "\x1b" not in answer.out
    document = answer.document
    assert list(document) == ["answer", "command", "finishlog", "now"]
    assert document["finishlog"] == 1
    assert command.startswith(document["command"])
    assert document["now"] == NOW.replace("+00:00", "Z")
    # Sorted all the way down, and one document with a newline at its end.
    assert answer.out == json.dumps(document, indent=2, sort_keys=True, ensure_ascii=False) + "\n"
    for place, wanted in keys.items():
        found = list(_at(document["answer"], place))
        assert found, f"nothing at {place!r} to look at"
        assert {" ".join(each) for each in found} == {wanted}, place


def _at(value: object, place: str) -> Iterator[dict[str, object]]:
    """Yield the objects at a place such as `lines[].standing`."""
    step, _, rest = place.partition(".")
    name, _, many = step.partition("[")
    if name:
        assert isinstance(value, dict)
        value = value[name]
    for each in value if many else [value]:  # type: ignore[attr-defined]
        if rest:
            yield from _at(each, rest)
        elif each is not None:
            assert isinstance(each, dict)
            yield each


@every_row("command", [*CONTRACT, *ALSO])
def test_every_instant_is_utc_and_says_so(asked: Asked, command: str):
    instants = [x for x in _strings(asked(command).document) if LOOKS_LIKE_ONE.match(x)]
    assert instants
    assert [x for x in instants if not INSTANT.fullmatch(x)] == []


def _strings(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict | list):
        for each in value.values() if isinstance(value, dict) else value:
            yield from _strings(each)


def test_a_finding_says_its_figures_and_the_acts_it_rests_on(shop: Finishlog):
    """Below the least temperature of its class: both figures as numbers, whatever the settings."""
    shop.did("settings", "temperature", "F")
    shop.did("air", "5C 50%")
    act = shop.did("fault", "case", "run", "--json").document["answer"]["act"]
    found = shop.did("log", "case", "topcoat", "--json").document["answer"]["warnings"]
    (cold,) = (each for each in found if each["rule"] == "too-cold")
    assert cold["measured"] == {"unit": "celsius", "value": 5.0}
    assert cold["wanted"]["unit"] == "celsius"
    assert cold["wanted"]["value"] > cold["measured"]["value"]
    assert cold["answer"] == "not in this air"
    (run,) = (each for each in found if each["rule"] == "fault")
    assert run["acts"] == [act]
    assert run["measured"] is None


@pytest.mark.parametrize("words", [["when", "nothing"], ["log", "case", "topcoat", "--at", "soon"]])
def test_a_refusal_is_on_stderr_only(shop: Finishlog, words: list[str]):
    answer = shop(*words, "--json")
    assert answer.code in {errors.USAGE, errors.NO_SUCH_THING}
    assert answer.out == ""
    assert len(answer.err.splitlines()) == 1


def test_at_a_terminal_it_is_the_same_document(shop: Finishlog):
    session = shown(shop, "ready", "--json", columns=40)
    assert session.screen.replace("\r\n", "\n") == shop.did("ready", "--json").out


def test_numbers_carry_their_unit_in_the_key_and_are_si(shop: Finishlog):
    shop.did("settings", "temperature", "F")
    room = shop.did("ready", "--json").document["answer"]["rooms"][0]
    assert room["air"] == {"temperature_c": 17.2, "humidity_pct": 58.0}
    assert "63 °F" in shop.did("ready").out
