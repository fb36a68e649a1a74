"""A data logger's export comes in as it was meant, or not at all; what is left out is told.

Sources of the forms: RFC 4180 (comma-separated values), ISO 8601 (dates and times), ISO C strftime
(the letters of a form). That other exports divide by semicolon or tab, write decimal commas, put
lines about the instrument before the headings and show a little over 100 % in dew is common
practice. All readings are invented.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, timedelta, timezone, tzinfo
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st
from worded_in import in_si

from finishlog.core.air.psychrometrics import Air
from finishlog.core.logger.file import (
    GAP,
    Gap,
    HowToRead,
    LoggerFile,
    Skipped,
    UnitIs,
    Why,
    read_logger_file,
)
from finishlog.core.logger.table import UnreadableFile
from finishlog.core.measure.units import Temperature
from tests.rows import every_row

NOW = datetime(2026, 11, 24, 20, 5, tzinfo=UTC)
BERLIN = ZoneInfo("Europe/Berlin")
C, F = Temperature.CELSIUS, Temperature.FAHRENHEIT
TEN = datetime(2026, 11, 24, 9, tzinfo=UTC)


def read(
    text: str,
    *,
    zone: tzinfo = BERLIN,
    usual: Temperature = C,
    unit: Temperature | None = None,
    form: str | None = None,
    **columns: str,
) -> LoggerFile:
    how = HowToRead(NOW, zone, usual, unit, columns, form)
    return read_logger_file(text, how)


def refused(text: str, *words: str, **how: object) -> None:
    with pytest.raises(UnreadableFile) as fault:
        read(text, **how)  # type: ignore[arg-type]
    said = in_si(f"{fault.value.message}; {fault.value.hint}")
    for word in words:
        assert word in said, said


POINTS, SLASHES = "%d.%m.%Y %H:%M", "%m/%d/%Y %I:%M:%S %p"


@every_row(
    ("text", "form"),
    [
        # RFC 4180: commas, CRLF, quotes where a comma is inside; ISO 8601 times.
        ("time,temperature,humidity\r\n2026-11-24T10:00:00,17.2,58\r\n", None),
        ('"Date, time","Temp, °C","RH, %"\n"2026-11-24 10:00","17.2","58"\n', None),
        ("Timestamp,Temp (C),RH\n2026-11-24T09:00:00Z,17.2,58\n", None),
        ("timestamp,temp_c,rh\n2026-11-24T10:00:00+01:00,17.2,58\n", None),
        ("date,air_temperature_c,relative_humidity\n2026-11-24T10:00,17.2,58\n", None),
        # A mark of UTF-8, semicolons, decimal commas, date and time apart.
        (
            "\ufeffDatum;Uhrzeit;Temperatur [°C];rel. Feuchte [%]\n24.11.2026;10:00;17,2;58,0\n",
            POINTS,
        ),
        # Tabs, lines about the instrument, a blank line, other columns, a line of units.
        (
            "Logger 12\nInterval 10 min\n\nNo.\tDate/Time\tTemperature\tHumidity\tDew point\n"
            "\t\t°C\t%RH\t°C\n1\t24.11.2026 10:00\t17.2\t58.0\t8.9\n",
            POINTS,
        ),
        # A comma within headings that semicolons divide.
        ("Date, time;Temp, °C;RH, %\n2026-11-24 10:00;17.2;58\n", None),
        ('"#","Date Time","Temp, °F","RH, %"\n1,11/24/2026 10:00:00 AM,62.96,58.0\n', SLASHES),
        (
            "sep=;\nMesszeit;Temperatur;Luftfeuchtigkeit\n24 Nov 2026 10:00;17,2;58\n",
            "%d %b %Y %H:%M",
        ),
        ("time,temp,hum\n24.11.2026 03:00 -0600,17.2,58\n", "%d.%m.%Y %H:%M %z"),
    ],
)
def test_the_same_reading_in_the_forms_that_loggers_write(text: str, form: str | None):
    assert read(text, form=form).readings == [(TEN, Air(17.2, 58.0))]


@pytest.mark.parametrize(
    ("text", "unit", "known_by"),
    [
        ("time,temp °F,rh\n2026-11-24 10:00,63.5,58\n", F, UnitIs.IN_THE_FILE),
        ("time,fahrenheit,rh\n2026-11-24 10:00,63.5,58\n", F, UnitIs.IN_THE_FILE),
        ("time,temp_c,rh\n2026-11-24 10:00,17.5,58\n", C, UnitIs.IN_THE_FILE),
        ("time,temp,rh\n2026-11-24 10:00,17.5,58\n", C, UnitIs.ASSUMED),
    ],
)
def test_the_unit_and_how_it_is_known(text: str, unit: Temperature, known_by: UnitIs):
    found = read(text)
    assert (found.read_as.unit, found.read_as.unit_is) == (unit, known_by)
    assert found.readings[0][1].temperature_c == 17.5


def test_what_the_person_says_beats_the_file():
    text = "time,temp °C,rh\n2026-11-24 10:00,63.5,58\n"
    found = read(text, unit=F)
    assert found.readings[0][1].temperature_c == 17.5
    assert found.read_as.unit_is is UnitIs.SAID


def test_an_assumed_unit_that_cannot_be_is_refused():
    refused("time,temp,rh\n2026-11-24 10:00,63.5,58\n", "63.5", "--unit C or --unit F")
    refused("time,temp,rh\n2026-11-24 10:00,-40,58\n", "--unit", usual=F)


def test_humidities_of_0_to_1_are_refused():
    refused("time,temp,rh\n2026-11-24 10:00,17,0.58\n", "line 2", "per cent")


def test_day_and_month_are_never_guessed():
    """10/11 is October or November: the person says which, whatever the lines around it show."""
    text = "time,temp,rh\n10/11/2026 10:00,17,58\n"
    refused(text, "line 2", "'10/11/2026 10:00' as a time", "--time-format '%d.%m.%Y %H:%M'")
    refused(text + "13/11/2026 10:00,17,58\n", "line 2", "--time-format")
    assert read(text, form="%d/%m/%Y %H:%M").readings[0][0].month == 11
    assert read(text, form="%m/%d/%Y %H:%M").readings[0][0].month == 10


def test_a_date_alone_is_no_time():
    refused("date,temp,rh\n2026-11-24,17,58\n", "line 2", "'2026-11-24'", "--time-format")


def test_a_figure_with_its_unit_behind_it_is_no_figure():
    refused("time,temp,rh\n2026-11-24 10:00,17 C,58\n", "line 2", "'17 C'", "--temperature")


def test_the_hour_that_comes_twice_is_told_by_the_order():
    """Europe/Berlin, 25 October 2026: 3:00 becomes 2:00 (the zone's published rule)."""
    rows = "".join(f"2026-10-25 {t},17,58\n" for t in ("01:30", "02:00", "02:30", "02:00", "02:30"))
    found = read(f"time,temp,rh\n{rows}2026-10-25 03:00,17,58\n")
    first = datetime(2026, 10, 24, 23, 30, tzinfo=UTC)
    half_hours = [first + n * timedelta(minutes=30) for n in range(6)]
    assert [at for at, _ in found.readings] == half_hours
    backwards = "".join(reversed(rows.splitlines(keepends=True)))
    found = read(f"time,temp,rh\n2026-10-25 03:00,17,58\n{backwards}")
    assert [at for at, _ in found.readings] == half_hours
    assert found.read_as.newest_first
    assert found.read_as.out_of_order == 0


def test_the_hour_that_never_was_is_left_out_and_told():
    """Europe/Berlin, 29 March 2026: 2:00 becomes 3:00."""
    rows = "".join(f"2026-03-29 0{h}:30,17,58\n" for h in (1, 2, 3))
    found = read(f"time,temp,rh\n{rows}")
    assert found.read_as.skipped == [Skipped(Why.SKIPPED_HOUR, 1, [3])]
    assert len(found.readings) == 2
    # A logger that keeps winter time all the year has it.
    winter = read(f"time,temp,rh\n{rows}", zone=timezone(timedelta(hours=1)))
    assert winter.read_as.skipped == []


ROUGH = """time,temp,rh
2026-11-24 10:00,17,58
2026-11-24 10:10,17,101.3
2026-11-24 10:20,-127,58
2026-11-24 10:30,17,0
2026-11-24 10:40,17,106
2026-11-24 10:50,,
not a time,17,58
2026-11-24 11:00,17,58
2026-11-24 11:00,17,58
2026-11-24 11:00,18,58
2026-11-24 10:55,17,58
2026-11-24 23:00,17,58
2026-11-24 14:00,17,58
end of file
"""


def test_everything_that_is_left_out_is_counted_with_its_lines():
    found = read(ROUGH)
    assert found.read_as.skipped == [
        Skipped(Why.UNREADABLE, 3, [7, 8, 15]),
        Skipped(Why.IMPOSSIBLE, 3, [4, 5, 6]),
        Skipped(Why.TO_COME, 1, [13]),
    ]
    said = found.read_as
    assert (said.clamped, said.repeated, said.changed, said.out_of_order) == (1, 1, 1, 1)
    kept = {at.astimezone(BERLIN).strftime("%H:%M"): air for at, air in found.readings}
    assert kept == {
        "10:00": Air(17, 58),
        "10:10": Air(17, 100),
        "10:55": Air(17, 58),
        "11:00": Air(18, 58),
        "14:00": Air(17, 58),
    }
    assert said.gaps == [Gap(TEN + timedelta(hours=1), TEN + timedelta(hours=4))]


@every_row(
    ("text", "words"),
    [
        ("", ["nothing is in it"]),
        ("just words\n", ["'just words'", "--time COLUMN", "--humidity COLUMN"]),
        ("a,b,c\n1,2,3\n", ["'a', 'b', 'c'", "--time COLUMN", "--humidity COLUMN"]),
        ("time,temp 1,temp 2,rh\n", ["'temp 1', 'temp 2'", "--temperature COLUMN"]),
        ("time,dew point,rh\n", ["temperature", "--temperature COLUMN"]),
        ("2026-11-24 10:00,17,58\n", ["'2026-11-24 10:00'", "--time COLUMN"]),
        ("time,temp,rh\n", ["no line below its headings"]),
        ("time,temp,rh\nsoon,17,58\n", ["line 2", "'soon'", "--time-format"]),
        ("time,temp,rh\n,°C,%\n24.11.2026,17,58\n", ["line 3", "'24.11.2026'", "--time-format"]),
        ("time,temp,rh\n2026-11-24 10:00,17,2,58,0\n", ["line 2 has 5 fields", "semicolons"]),
        ("time,temp,rh\n2026-11-24 10:00,17,2,58\n", ["line 2 has 4 fields", "semicolons"]),
        ("time,temp,rh\n2026-11-24 23:00,17,58\n", ["still to come", "line 2"]),
    ],
)
def test_a_file_that_cannot_be_read_says_why_and_what_to_type(text: str, words: list[str]):
    refused(text, *words)


def test_columns_that_the_person_names():
    text = "when,temp 1,temp 2,rh\n2026-11-24 10:00,17,21,58\n"
    named = read(text, time="when", temperature="temp 2")
    assert named.readings == [(TEN, Air(21, 58))]
    assert named.read_as.columns == {"time": "when", "temperature": "temp 2", "humidity": "rh"}
    refused(text, "which column is the temperature", "'temp 1'", time="when", temperature="inside")


def iso(at: datetime) -> str:
    return at.astimezone(BERLIN).isoformat()


def utc(at: datetime) -> str:
    return at.strftime("%Y-%m-%dT%H:%M:%SZ")


def on_the_wall(form: str) -> Callable[[datetime], str]:
    return lambda at: at.astimezone(BERLIN).strftime(form)


# How the same series may be written: heading of the time, its form, delimiter, decimal sign, unit.
FORMS = [
    ("timestamp", None, iso, ",", ".", C),
    ("time", None, utc, ";", ",", F),
    ("Date Time", None, on_the_wall("%Y-%m-%d %H:%M"), "\t", ".", C),
    ("Datum;Uhrzeit", "%d.%m.%Y %H:%M:%S", on_the_wall("%d.%m.%Y;%H:%M:%S"), ";", ",", C),
    ("date/time", "%m/%d/%Y %I:%M %p", on_the_wall("%m/%d/%Y %I:%M %p"), ",", ".", F),
    ("Zeit", "%d-%b-%Y %H:%M", on_the_wall("%d-%b-%Y %H:%M"), "\t", ",", C),
]
SPRING = datetime(2026, 3, 13, tzinfo=UTC)
# A series that begins in the hour that comes twice cannot tell in which pass it did.
TWICE = (datetime(2026, 10, 25, tzinfo=UTC), datetime(2026, 10, 25, 2, tzinfo=UTC))
BEGINS = st.integers(0, 230 * 48).map(lambda n: SPRING + n * timedelta(minutes=30))
# Tenths of °C and of % RH; not all below 1 %, which would be shares of one.
FIGURES = st.lists(
    st.tuples(st.integers(-200, 450), st.integers(11, 1000)), min_size=2, max_size=200
)


@given(
    BEGINS.filter(lambda at: not TWICE[0] <= at < TWICE[1]),
    st.sampled_from([5, 10, 15, 30]),
    FIGURES,
    st.sampled_from(FORMS),
    st.booleans(),
)
def test_any_series_reads_back_the_same_in_every_form(
    begins, interval, figures, written_how, newest_first
):
    heading, form, written, delimiter, sign, unit = written_how
    wanted = [
        (begins + n * timedelta(minutes=interval), Air(t / 10, rh / 10))
        for n, (t, rh) in enumerate(figures)
    ]
    lines = []
    for at, air in wanted:
        warm = air.temperature_c if unit is C else air.temperature_c * 9 / 5 + 32
        cells = [f"{warm:.2f}", f"{air.humidity_pct:.1f}"]
        lines.append(delimiter.join([written(at), *(cell.replace(".", sign) for cell in cells)]))
    header = delimiter.join([heading, f"Temperature (°{unit})", "Humidity (%)"])
    text = "\n".join([header, *(reversed(lines) if newest_first else lines)])
    found = read(text, form=form)
    assert [at for at, _ in found.readings] == [at for at, _ in wanted]
    for (_, got), (_, meant) in zip(found.readings, wanted, strict=True):
        assert got.temperature_c == pytest.approx(meant.temperature_c, abs=0.006)
        assert got.humidity_pct == pytest.approx(meant.humidity_pct)
    assert found.read_as.skipped == []


@given(st.lists(st.integers(0, 600), min_size=1, max_size=40))
def test_whatever_the_order_readings_come_out_sorted_one_an_instant(minutes: list[int]):
    rows = [f"{utc(TEN + timedelta(minutes=m))},17,{50 + m % 7}" for m in minutes]
    found = read("\n".join(["time,temp,rh", *rows]))
    times = [at for at, _ in found.readings]
    assert times == sorted({TEN + timedelta(minutes=m) for m in minutes})
    assert found.read_as.repeated == len(minutes) - len(times)
    assert found.read_as.changed == 0
    longest = [gap.end - gap.start for gap in found.read_as.gaps]
    assert all(length > GAP for length in longest)


@pytest.mark.parametrize("stray", ["0001-01-01 00:00:00", "9999-12-31 23:59:59"])
def test_a_date_of_another_age_is_left_out_and_the_rest_comes_in(stray: str):
    """A logger whose clock was never set writes such dates. common practice"""
    text = f"time,temperature,humidity\n2026-11-24 18:00,17,58\n{stray},17,58\n"
    file = read(text)
    assert len(file.readings) == 1
    assert [(s.why, s.lines) for s in file.read_as.skipped] == [(Why.NOT_OURS, [3])]
