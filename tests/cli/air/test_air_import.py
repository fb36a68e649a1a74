"""A logger's file from the command line: taken in once, told in full, taken back by one undo."""

from __future__ import annotations

import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from run import Finishlog, furnished

from finishlog import errors

HERE = Path(__file__).parent


@pytest.fixture
def shop(tmp_path: Path) -> Finishlog:
    program = furnished(tmp_path)
    shutil.copy(HERE / "logger.csv", tmp_path)
    return program


def written(shop: Finishlog, name: str, text: str, encoding: str = "utf-8") -> str:
    file = shop.folder / name
    file.write_text(text, encoding=encoding)
    return str(file)


def stored(shop: Finishlog) -> list[tuple[str, float, float]]:
    with closing(sqlite3.connect(shop.database)) as connection:
        query = "SELECT at, temperature_c, humidity_pct FROM logged_air ORDER BY entry_id, at"
        return connection.execute(query).fetchall()


BY_THE_SHOPS_CLOCK = ("--zone", "Europe/London")


def taken(shop: Finishlog, *words: str) -> dict[str, object]:
    zone = () if "--zone" in words else BY_THE_SHOPS_CLOCK
    return shop.did("air", "import", *words, *zone, "--json").document["answer"]


def test_a_file_is_taken_in_and_everything_is_said(shop: Finishlog):
    answer = shop.did("air", "import", str(shop.folder / "logger.csv"), *BY_THE_SHOPS_CLOCK)
    assert answer.out.startswith("logger.csv: 3 readings taken in for finishing\n")
    for words in ("10:00 to 10:20", "in °C, as the file says", "by the clock of Europe/London"):
        assert words in answer.out
    assert stored(shop) == [
        ("2026-11-24T10:00:00.000000Z", 17.2, 58.0),
        ("2026-11-24T10:10:00.000000Z", 17.4, 57.5),
        ("2026-11-24T10:20:00.000000Z", 17.5, 57.0),
    ]
    assert "air of finishing: 3 readings of logger.csv" in shop.did("history").out
    assert "10:20" in shop.did("room", "show", "finishing").out


def test_a_dry_run_leaves_no_trace(shop: Finishlog):
    before = shop.database.read_bytes()
    answer = shop.did("air", "import", str(shop.folder / "logger.csv"), "--dry-run")
    assert "would be taken in" in answer.out
    assert "nothing was recorded" in answer.out
    assert shop.database.read_bytes() == before


def test_the_same_file_again_adds_nothing(shop: Finishlog):
    file = str(shop.folder / "logger.csv")
    taken(shop, file)
    before = shop.database.read_bytes()
    again = taken(shop, file)
    assert (again["act"], again["kept"], again["known"]) == (None, 0, 3)
    assert shop.database.read_bytes() == before


def test_a_longer_export_adds_only_what_is_new(shop: Finishlog):
    file = shop.folder / "logger.csv"
    taken(shop, str(file))
    more = file.read_text("utf-8").replace("17.4", "19.4") + "2026-11-24 10:30,17.6,56.5,8.9\n"
    found = taken(shop, written(shop, "longer.csv", more))
    assert (found["kept"], found["known"], found["known_otherwise"]) == (1, 3, 1)
    # What the earlier import says of an instant stays.
    assert [row[1] for row in stored(shop)] == [17.2, 17.4, 17.5, 17.6]


def test_one_undo_takes_the_file_back_and_it_may_come_again(shop: Finishlog):
    file = str(shop.folder / "logger.csv")
    act = taken(shop, file)["act"]
    shop.did("undo", str(act))
    assert "10:20" not in shop.did("room", "show", "finishing").out
    assert taken(shop, file)["kept"] == 3


def test_the_last_reading_is_what_the_day_begins_with(shop: Finishlog):
    file = written(shop, "now.csv", "time,temp,rh\n2026-11-24 21:00,15.5,61\n")
    shop.did("air", "import", file, *BY_THE_SHOPS_CLOCK)
    assert "finishing 15.5 °C, 61 %, read 21:00" in shop.did("ready").out


def test_the_first_room_is_made(tmp_path: Path):
    shop = Finishlog(tmp_path)
    answer = shop.did("air", "import", str(HERE / "logger.csv"), *BY_THE_SHOPS_CLOCK)
    assert "a room called 'shop' was put on record" in answer.out


def test_older_programs_write_other_encodings(shop: Finishlog):
    text = (shop.folder / "logger.csv").read_text("utf-8")
    for code in ("cp1252", "utf-16", "utf-8-sig"):
        file = written(shop, f"{code}.csv", text, code)
        assert taken(shop, file, "--dry-run")["read_as"]["unit_is"] == "as the file says"


def test_what_the_person_says_of_a_file(shop: Finishlog):
    text = "when,in,out,rh\n10/11/2026 10:00,63.5,50,58\n"
    file = written(shop, "odd.csv", text)
    says = ["--time", "when", "--temperature", "in", "--unit", "F", "--zone", "UTC"]
    found = taken(shop, file, *says, "--time-format", "%d/%m/%Y %H:%M")
    assert (found["first"], found["coldest_c"]) == ("2026-11-10T10:00:00Z", 17.5)


ZONELESS = "time,temp,rh\n2026-11-24 10:00,17,58\n"


def test_a_file_that_says_no_zone_is_not_taken_in_by_a_guess(shop: Finishlog):
    """In a script it is refused with what to type; the file's own offsets ask for nothing."""
    before = shop.database.read_bytes()
    answer = shop("air", "import", written(shop, "bare.csv", ZONELESS))
    assert answer.code == errors.USAGE
    assert "--zone Europe/London" in answer.err
    assert shop.database.read_bytes() == before
    assert (
        "would be taken in"
        in shop.did("air", "import", "--dry-run", str(shop.folder / "bare.csv")).out
    )
    for name, stamp in (("z", "2026-11-24T10:00Z"), ("o", "2026-11-24T12:00+02:00")):
        text = f"time,temp,rh\n{stamp},17,58\n"
        found = shop.did("air", "import", written(shop, f"{name}.csv", text), "--json").document
        assert found["answer"]["first"] == "2026-11-24T10:00:00Z"


def test_the_hour_that_comes_twice_is_said(shop: Finishlog):
    """Clocks went back in London at 2:00 on 25 October 2026."""
    rows = "".join(f"2026-10-25 {clock},17,58\n" for clock in ("00:30", "01:10", "01:40", "01:10"))
    file = written(shop, "autumn.csv", f"time,temp,rh\n{rows}")
    found = taken(shop, file, "--dry-run")
    assert (found["read_as"]["hour_twice"], found["last"]) == (3, "2026-10-25T01:10:00Z")
    said = shop.did("air", "import", file, *BY_THE_SHOPS_CLOCK).out
    assert "3 lines of the hour that the clocks show twice" in said
    winter = taken(shop, file, "--zone", "+00:00", "--dry-run")
    assert winter["read_as"]["hour_twice"] == 0


REFUSED = [
    ("", [], errors.BAD_DATA, ["nothing is in it"]),
    ("a,b\n1,2\n", [], errors.BAD_DATA, ["'a', 'b'", "--time COLUMN"]),
    ("time,temp,rh\n10/11/2026 10:00,17,58\n", [], errors.BAD_DATA, ["line 2", "--time-format"]),
    ("time,temp,rh\n2026-11-24 10:00,63,58\n", [], errors.BAD_DATA, ["--unit F"]),
    ("time,temp,rh\n2026-11-24 10:00,17,58\n", ["--zone", "Nowhere"], errors.USAGE, ["+01:00"]),
    *(
        ("time,temp,rh\n24.11. 10:00,17,58\n", ["--time-format", form], errors.USAGE, ["strptime"])
        for form in ("%Q", "%d.%d. %H:%M", "%")
    ),
    (
        "time,temp,rh\n2026-11-24 10:00,17,58\n",
        ["--room", "attic", "--zone", "UTC"],
        errors.NO_SUCH_THING,
        [],
    ),
    ("time,temp,rh\n2026-11-24 10:00,17,58\n", ["--at", "9:00"], errors.USAGE, ["--at"]),
]


@pytest.mark.parametrize(("text", "options", "code", "said"), REFUSED)
def test_a_bad_file_is_one_clear_line(
    shop: Finishlog, text: str, options: list[str], code: int, said: list[str]
):
    before = shop.database.read_bytes()
    answer = shop("air", "import", written(shop, "bad.csv", text), *options)
    assert (answer.code, answer.out, len(answer.err.splitlines())) == (code, "", 1), answer
    for words in said:
        assert words in answer.err
    assert shop.database.read_bytes() == before


def test_no_text_and_no_file(shop: Finishlog):
    (shop.folder / "picture.csv").write_bytes(b"\x89PNG\x00\x00\x81")
    answer = shop("air", "import", str(shop.folder / "picture.csv"))
    assert (answer.code, "no text" in answer.err) == (errors.BAD_DATA, True)
    answer = shop("air", "import", str(shop.folder / "nothing.csv"))
    assert (answer.code, "cannot be read" in answer.err) == (errors.NO_SUCH_THING, True)
    answer = shop("air", "import")
    assert (answer.code, "finishlog air import FILE.csv" in answer.err) == (errors.USAGE, True)


@pytest.mark.thorough
def test_two_years_of_ten_minutes_come_in_whole(shop: Finishlog):
    """100,000 readings, in a process of its own: every one is kept, and nothing else is said."""
    last = datetime(2026, 11, 24, 20, tzinfo=UTC)
    times = [last - n * timedelta(minutes=10) for n in reversed(range(100_000))]
    rows = [
        f"{at:%Y-%m-%dT%H:%M:%SZ};{15 + n % 50 / 10};{50 + n % 20}" for n, at in enumerate(times)
    ]
    file = written(shop, "long.csv", "\n".join(["timestamp;temp_c;rh", *rows]))
    answer = shop.process("air", "import", file)
    assert (answer.code, answer.err) == (0, "")
    assert answer.out.startswith("long.csv: 100000 readings taken in for finishing\n")
    found = stored(shop)
    assert len(found) == 100_000
    assert found[0] == (f"{times[0]:%Y-%m-%dT%H:%M:%S}.000000Z", 15.0, 50.0)
    assert found[-1] == (f"{last:%Y-%m-%dT%H:%M:%S}.000000Z", 19.9, 69.0)
    assert "and 99" in shop.did("room", "show", "finishing").out
