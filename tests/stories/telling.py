"""A story of a rule in one line, read into a real log: what is there, what happened, what is asked.

`oak top; air 23C 50%; wiping-stain 08:00; wipe +2h30; ask waterborne-clear +3d`

- first the part, with its wood where it has one; `drawer/inside`: a face of it; `@steps sand
  sealer topcoat*2`: its steps; more parts, `and ash rail`, stand beside it
- each clause after it happens at a time: `08:00` of the first day, or `+30m`, `+2h30`, `+3d` after
  the one before (without one: five minutes later)
- a class is a coat of it (`waterborne-clear spray 90um`, as thick as it was measured wet; `tung-oil
  flooded`, `tung-oil thin`, as it was said to go on; `… unscuffed`, `… scuffed`: what was said of
  the film below; `… stirred`, `… unstirred`, of its can; `… from-pot`; `… stopped:left-half`);
  other words: an operation (`wipe`, `scuff`, `sand P220`, `store wrapped`), `check tacky` (`…
  only-now`), `fault run` (`… @left-edge`, also of `mend`: at a place of it), `off bare`, `off COAT`
  (down to the last of a class), `surface 8C`, `moisture 14%`, `weighs 642g`, `air 12C 70%` (read
  every six hours from then on), `one-air 12C 70%` (read once), `thermometer 12C 70%` (so damp is
  supposed),
  `night 4C`, `night ?` (nobody told), `aside`, `resume`, `heat 3h`,
  `heater flame` (what it is), `place has:pilot,motor kind:basement` (`lives:bird`, `out:pilot`;
  what the room is), `beside door has:pilot` (a room beside, and what leads there),
  `joint hot-hide` (glued up into a frame), `attic 10C 30%` (a room
  beside, read so for a month), `move attic`, `move shop`, `carried-in 2C 70%` (from another room,
  that was read so), `note WORDS`, `review failed WORDS`, `board` (it is a sample board), `rail:
  CLAUSE` (of a part beside it), `front: CLAUSE` (of one face), `never CLAUSE` (only its time
  passes)
- `respirator half organic-vapour`: its seal is broken, `worn half 2h`, `hung half open`, `gone
  half`
- `for food`, `for child`: who uses it; `rail/face+tenon:joint`: a part with a glue face
  (`drawer/sides:slides`, `door/front:shuts`, `top/field+inlay=padauk`: of another wood;
  `rail*2`: two pieces); `frame
  rail*2 stile`: an assembly of so many of each; a coat `about:2h`: at some time in the hours before
- `sheen CLASS satin`: how a product shines; `can tin CLASS batch:A1`: the maker's number
- `mix pot CLASS base+hardener` (`base*10+hardener`: ten parts to one; `use-by:4h`), `can tin CLASS`
  (`opened:400d` or `made:900d` before), and what befalls one: `condemned tin`, `frozen`, `tested`,
  `topped-up`, `emptied`; a coat `from-tin` comes from it, one `from-nothing` is logged without a
  word; without either what needs a hardener is mixed for each coat
- `says alkyd-varnish not-over wiping-stain because WORDS`: the person's rule of a product;
  `not-over product:CLASS` of one product alone, `needs CLASS over CLASS`, `wait 72h over CLASS`,
  `window 0-1h, 48h-`, `no-window`, `coats-a-day 2`, `most-coats 3`, `thickest 6000um`, `not-on
  oily`, `overrule ROW`
- last what is asked: `ask CLASS [method] [6000um]`, an operation, how a film is taken off
  (`strip`), or an act (`ask pack +3d`); `wipe with vinegar`: what is on the cloth, here and in a
  clause

Unless told otherwise the room is read at 23 °C and 50 % all the time, and its nights are no colder.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import timedelta
from functools import cache
from typing import Any

from msgspec.structs import replace

from finishlog.cli.typed.files.labels import NO_WINDOW, window_typed
from finishlog.core.air.heater import HeaterKind
from finishlog.core.air.place import Fixture, Join, Lives, Opening, PlaceKind
from finishlog.core.air.psychrometrics import STANDARD_AIR
from finishlog.core.film.lessons import Lessons, how_they_came_out
from finishlog.core.findings import Act, Answer, Finding
from finishlog.core.finish.classes import Method, Sheen
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Fault, Note, PieceReading, Respirator, Review, Stripped
from finishlog.core.log.when import Sureness
from finishlog.core.log.words import (
    ContainerDeed,
    FaultKind,
    Filter,
    Found,
    Keeping,
    MaskKept,
    Operation,
    Outcome,
    RespiratorDeed,
    Stripping,
)
from finishlog.core.published.care import UsedFor
from finishlog.core.rules.all import findings_of
from finishlog.core.safety.whats_in import in_product, in_work
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.core.shop.things import Face, Meets, OldFinish, Part
from finishlog.core.verdict.due import asked_of, product_due
from finishlog.core.verdict.fold import decide
from finishlog.core.verdict.glue_up import GlueUp
from finishlog.core.zone.around import Around, around
from finishlog.core.zone.asked import NOTHING, Asked, coat_asked, taking_off, work_asked
from finishlog.core.zone.state import ZoneState
from finishlog.core.zone.verdict import Verdict
from tests.shop_of import FACTS, Story, at, figure

_TIME = re.compile(r"^(?:(\d\d):(\d\d)|\+(?:(\d+)d)?(?:(\d+)h)?(?:(\d+)m?)?)$")
_BEGINS = 18.0  # a story's first day is a Monday, its hours count from 18:00
_FIRST = -12.0  # what has no time before it happens at 06:00
_SOON = 5 / 60
_DEEDS, _WORK = {d.value for d in ContainerDeed}, {o.value for o in Operation}
_LAID = {"flooded": True, "thin": False}
_SCUFFED = {"scuffed": True, "unscuffed": False}
_KEPT = {each.value: each for each in Keeping}
_STIRRED = {"stirred": True, "unstirred": False}


@dataclass(frozen=True)
class Told:
    """One story: its line, whether the rule speaks in it, and with what answer."""

    line: str
    speaks: bool
    answer: Answer | None = None
    says: str = ""
    lets: bool = False


def speaks(line: str, answer: Answer | None = None, says: str = "") -> Told:
    """Tell a story in which the rule has something to say; `says`: words that it must hold."""
    return Told(line, True, answer, says)


def lets(line: str, says: str = "") -> Told:
    """Tell a story in which the rule speaks, and keeps nobody from what is asked."""
    return Told(line, True, None, says, lets=True)


def silent(line: str) -> Told:
    """Tell a story in which the rule rightly says nothing."""
    return Told(line, False)


@dataclass(frozen=True)
class Scene:
    """What a story leads to: the zone, what is asked of it, what is around it, what is glued up."""

    zone: ZoneState
    asked: Asked
    around: Around
    glue_ups: tuple[GlueUp, ...] = ()

    @property
    def found(self) -> tuple[Finding, ...]:
        """What every rule finds."""
        return findings_of(self.zone, self.asked, self.around)

    @property
    def beside(self) -> tuple[Finding, ...]:
        """What is found that no rule finds: of a soft film, and of glue-ups that are due."""
        glued = [each.verdict for each in self.glue_ups]
        of_glue = [f for verdict in glued for f in (verdict.binds, *verdict.findings)]
        return (*self.zone.verdict.findings, *of_glue)

    @property
    def verdict(self) -> Verdict:
        """What they come to."""
        return decide(self.zone, self.asked, self.around)


def _number(word: str, unit: str) -> float:
    assert word.endswith(unit), f"{word!r}: a figure with {unit}"
    return float(word.removesuffix(unit))


@dataclass(frozen=True)
class Clause:
    """What happened to a part, or to one face of it, in the words after the first."""

    on: Part
    face: str | None
    more: list[str]

    @property
    def word(self) -> str:
        """The next word."""
        return self.more[0]

    @property
    def place(self) -> str:
        """Where on the face: the word that begins with `@`."""
        found = [word.removeprefix("@") for word in self.more if word.startswith("@")]
        return found[0] if found else ""

    @property
    def air(self) -> tuple[float, float]:
        """Its temperature (°C) and humidity (%)."""
        return _number(self.more[0], "C"), _number(self.more[1], "%")


class Teller:
    """Reads one line."""

    reads_every_h = 6.0

    def __init__(self, line: str) -> None:
        self.story = Story()
        self.hour = _FIRST
        self.started = False
        self.air: tuple[float, float, float] | None = (_FIRST, 23.0, 50.0)
        self.airs: list[tuple[float, float, float]] = []
        first, *self.clauses = [each.strip() for each in line.split(";")]
        self.parts: dict[str, Part] = {}
        for each in first.split(" and "):
            self._part(each)
        self.main = next(iter(self.parts.values()))
        self.face: str | None = None
        self.attic = 0
        self.cans: dict[str, int] = {}

    def _part(self, words: str) -> None:
        words, _, steps = words.partition("@steps")
        *wood, name = words.split()
        name, _, face = name.partition("/")
        old = [w for w in wood if w.startswith("old-")]
        species = " ".join(w for w in wood if w not in old) or None
        said = [re.match(r"([^:=]*)(?::(slides|shuts))?(?:=(.*))?(.*)", f) for f in face.split("+")]
        touch = {f[1]: (f[2], f[3]) for f in said if f and (f[2] or f[3])}
        named = [f[1] + f[4] for f in said if f] if face else ["all round"]
        joints = [each.removesuffix(":joint") for each in named if each.endswith(":joint")]
        faces = [each for each in named if not each.endswith(":joint")]
        told = self._steps(steps)
        name, _, count = name.partition("*")
        made = self.story.part(
            name, *told, faces=faces, joints=joints, species=species, pieces=int(count or 1)
        )
        if touch:
            made = replace(
                made, faces=tuple(self._face(f, *touch.get(f.name, ("", ""))) for f in made.faces)
            )
            self.story.parts[-1] = made
        if old:
            made = replace(made, old_finish=OldFinish(old[0].removeprefix("old-")))
            self.story.parts[-1] = made
        self.parts[name] = made

    def _face(self, of: Face, meets: str, wood: str) -> Face:
        """Let a face slide or shut, or be of another wood."""
        zones = tuple(replace(zone, species=wood or zone.species) for zone in of.zones)
        return replace(of, meets=Meets(meets) if meets else None, zones=zones)

    def _steps(self, text: str) -> list[Any]:
        found: list[Any] = []
        for word in text.split():
            name, _, times = word.partition("*")
            is_work = name in _WORK
            found += [Operation(name) if is_work else name] * int(times or 1)
        return found

    def told(self) -> tuple[Part, str | None, list[str]]:
        """Tell it all, up to the hour of what is asked; return of what that is asked."""
        *happened, asked = self.clauses
        assert asked.startswith("ask "), f"{asked!r}: a story ends with what is asked"
        for clause in happened:
            self._happens(clause)
        of = self._whose(self._at(asked.removeprefix("ask ").split()))
        self._read_on()
        return of

    def scene(self) -> Scene:
        """Tell it all, and look at the part as of what is asked."""
        on, face, words = self.told()
        bench = self.story.look(self.hour)
        zone = next(z for z in bench.zones if z.member.id == on.id and face in {None, z.face.name})
        told = how_they_came_out(self.story.finished(self.hour), FACTS, self.story.zone)
        lessons = Lessons.drawn_from(told)
        near = around(bench.zones, bench.now, FACTS, bench.products, lessons, bench.masks)
        return Scene(zone, self._asked(words, zone), near, bench.glue_ups)

    def _asked(self, words: list[str], zone: ZoneState) -> Asked:
        word = words[0]
        if word == "due":
            return asked_of(zone, self.story.shop, FACTS)
        if word in FACTS.classes:
            comes = in_product(self.story.products[self.story.product(word)])
            thick = [_number(w, "um") for w in words[1:] if w.endswith("um")]
            how = [w for w in words[1:] if not w.endswith("um")]
            method = Method(how[0]) if how else None
            over, product = FACTS.finish_class(word), self.story.product(word)
            film_um = thick[0] if thick else None
            return coat_asked(over, method, comes, product=product, film_um=film_um)
        brought = in_work(" ".join(words[2:])) if words[1:2] == ["with"] else None
        if word in _WORK:
            if words[1:] and words[1] in _KEPT:
                return work_asked(Operation(word), kept=_KEPT[words[1]])
            grit = "" if brought else "".join(words[1:])
            return work_asked(Operation(word), brought, grit=grit, then=product_due(zone))
        if word in {s.value for s in Stripping}:
            return taking_off(Stripping(word), brought)
        return NOTHING if word == "rest" else Asked(Act(word), comes=brought)

    def _read_on(self) -> None:
        """Read the air again and again, as it was told, until what is asked."""
        if self.air is None:
            return
        self.airs.append(self.air)
        for n, (since, celsius, rh) in enumerate(self.airs):
            until = self.airs[n + 1][0] if n + 1 < len(self.airs) else self.hour
            hour = since
            while hour <= until:
                self.story.read(hour, celsius, rh)
                hour += self.reads_every_h
            if n + 1 == len(self.airs):
                self.story.read(until, celsius, rh)

    def _at(self, words: list[str]) -> list[str]:
        """Move to the time that stands last in a clause; return the words before it."""
        found = _TIME.match(words[-1])
        if found is None or len(words) == 1:
            self.hour += _SOON if self.started else 0.0
            self.started = True
            return words
        self.started = True
        clock_h, clock_m, days, hours, minutes = found.groups()
        if clock_h is not None:
            self.hour = int(clock_h) + int(clock_m) / 60 - _BEGINS
        else:
            self.hour += 24 * int(days or 0) + int(hours or 0) + int(minutes or 0) / 60
        return words[:-1]

    def _whose(self, words: list[str]) -> tuple[Part, str | None, list[str]]:
        """Tell which part, and which face of it, a clause names; the first part else."""
        if not words[0].endswith(":"):
            return self.main, None, words
        name = words[0].removesuffix(":")
        if name in self.parts:
            return self.parts[name], None, words[1:]
        return self.main, name, words[1:]

    def _happens(self, clause: str) -> None:
        words = self._at(clause.split())
        if words[0] == "never":
            return
        on, face, (word, *more) = self._whose(words)
        told = Clause(on, face, more)
        if word in FACTS.classes:
            self._coat(word, told)
        elif word in _DEEDS:
            # What was never put on record can befall nothing.
            if told.word in self.cans:
                self.story.befalls(self.hour, self.cans[told.word], ContainerDeed(word))
        elif word in _WORK:
            done = self.story.work(self.hour, Operation(word), on, face=face, place=told.place)
            if more[:1] == ["with"]:
                self.story.entries[-1] = replace(done, note=" ".join(more[1:]))
            elif more[:1] and more[0] in _KEPT:
                self.story.entries[-1] = replace(done, kept=_KEPT[more[0]])
            elif more and not told.place:
                self.story.entries[-1] = replace(done, grit=more[0])
        else:
            tells = getattr(self, f"_told_{word.replace('-', '_')}", None)
            assert tells is not None, f"{word!r}: no clause begins with it"
            tells(told)

    def _coat(self, class_key: str, told: Clause) -> None:
        source = [w.removeprefix("from-") for w in told.more if w.startswith("from-")]
        thick = [w for w in told.more if w.endswith("um")]
        laid = [w for w in told.more if w in _LAID]
        told_scuffed = [w for w in told.more if w in _SCUFFED]
        stopped = [w for w in told.more if w.startswith("stopped:")]
        about = [w for w in told.more if w.startswith("about:")]
        stirred = [w for w in told.more if w in _STIRRED]
        aside = {*thick, *laid, *told_scuffed, *stopped, *about, *stirred}
        how = [w for w in told.more if w not in aside and not w.startswith("from-")]
        product = self.story.products[self.story.product(class_key)]
        coat = self.story.coat(
            self.hour,
            class_key,
            told.on,
            face=told.face,
            label=product.label,
            window=product.label_window,
            method=Method(how[0]) if how else None,
            container=self.cans.get("".join(source)),
            mixed=not source,
        )
        for word in laid:
            coat = replace(coat, flooded=_LAID[word])
        for covered in stopped:
            words = covered.removeprefix("stopped:").replace("-", " ")
            coat = replace(coat, stopped=words)
        for um in thick:
            coat = replace(coat, wet_film_um=_number(um, "um"))
        for word in about:
            first = coat.when.earliest - timedelta(hours=_number(word.removeprefix("about:"), "h"))
            told_at = replace(coat.when, earliest=first, sureness=Sureness.ABOUT)
            coat = replace(coat, when=told_at)
        for word in stirred:
            coat = replace(coat, stirred=_STIRRED[word])
        for word in told_scuffed:
            coat = replace(coat, scuffed_before=_SCUFFED[word])
        self.story.entries[-1] = coat

    def _told_mix(self, told: Clause) -> None:
        name, class_key, said, *lasts = told.more
        parts = [part.partition("*") for part in said.split("+")]
        shares = {part: float(share or 1) for part, _, share in parts}
        ends = [at(self.hour + _number(w.removeprefix("use-by:"), "h")) for w in lasts]
        also = {"use_by_at": ends[0]} if ends else {}
        self.cans[name] = self.story.mix(self.hour, class_key, shares, name, **also)

    def _told_can(self, told: Clause) -> None:
        name, class_key, *since = told.more
        batch = "".join(w.removeprefix("batch:") for w in since if w.startswith("batch:"))
        dated = [w.partition(":") for w in since if not w.startswith("batch:")]
        ago = {word: 24 * _number(days, "d") for word, _, days in dated}
        made = at(self.hour - ago["made"]) if "made" in ago else None
        self.cans[name] = self.story.can(class_key, name, made_at=made, batch=batch)
        if "opened" in ago:
            hour = self.hour - ago["opened"]
            self.story.befalls(hour, self.cans[name], ContainerDeed.OPENED)

    def _head(self, told: Clause) -> dict[str, Any]:
        return self.story._head(self.hour, self.story._reach(told.on, told.face, None))

    def _told_sheen(self, told: Clause) -> None:
        """Say how a product shines: `sheen waterborne-clear satin`."""
        key = self.story.product(told.word)
        known = self.story.products[key]
        self.story.products[key] = replace(known, sheen=Sheen(told.more[1]))

    def _told_says(self, told: Clause) -> None:
        """Put a rule of the person's own on record, as their first act."""
        words, _, because = " ".join(told.more[1:]).partition(" because ")
        kind, *of = words.split()
        known = self.story.products[self.story.product(told.word)]
        if kind in {"window", "no-window"}:
            opens, window = (None, NO_WINDOW)
            if kind == "window":
                opens, window = window_typed(" ".join(of), STANDARD_AIR)
            label = {Stage.RECOAT: opens} if opens else {}
            known = replace(known, label={**known.label, **label})
            known = replace(known, label_window=replace(window, note=because))
        rule = OwnRule(Own(kind.removeprefix("no-")), because=because, act=1)
        match kind:
            case "coats-a-day" | "most-coats":
                rule = replace(rule, count=int(of[0]))
            case "thickest":
                rule = replace(rule, thickest_um=_number(of[0], "um"))
            case "needs":
                rule = replace(rule, between=(of[0],), of=tuple(of[2:]))
            case "wait":
                rule = replace(rule, wait=figure(_number(of[0], "h")), of=tuple(of[2:]))
            case _ if of and of[0].startswith("product:"):
                rule = replace(rule, product=self.story.product(of[0].removeprefix("product:")))
            case _:
                rule = replace(rule, of=tuple(of))
        rules = (*known.own_rules, rule)
        self.story.products[known.id] = replace(known, own_rules=rules)

    def _told_check(self, told: Clause) -> None:
        self.story.check(self.hour, Found(told.word), told.on, face=told.face, place=told.place)
        if "only-now" in told.more:
            self.story.entries[-1] = replace(self.story.entries[-1], only_now=True)

    def _told_fault(self, told: Clause) -> None:
        what = FaultKind(told.word)
        self.story._happened(Fault(**self._head(told), what=what, place=told.place))

    def _told_review(self, told: Clause) -> None:
        outcome, *words = told.more
        text = " ".join(words)
        self.story._happened(Review(**self._head(told), outcome=Outcome(outcome), text=text))

    def _told_board(self, told: Clause) -> None:
        where = next(n for n, part in enumerate(self.story.parts) if part.id == told.on.id)
        self.story.parts[where] = replace(told.on, is_board=True)

    def _told_off(self, told: Clause) -> None:
        survives = None
        if told.word != "bare":
            film = self.story.state(self.hour, told.on).layers
            survives = next(y.coat.id for y in reversed(film) if y.of.key == told.word)
        how = Stripping(told.more[1]) if told.more[1:] else Stripping.STRIP
        self.story._happened(Stripped(**self._head(told), operation=how, survives=survives))

    def _told_surface(self, told: Clause) -> None:
        self.story.surface(self.hour, _number(told.word, "C"), told.on)

    def _told_moisture(self, told: Clause) -> None:
        moisture = _number(told.word, "%")
        self.story._happened(PieceReading(**self._head(told), moisture_pct=moisture))

    def _told_weighs(self, told: Clause) -> None:
        grams = _number(told.word, "g")
        self.story._happened(PieceReading(**self._head(told), weight_g=grams))

    def _told_air(self, told: Clause) -> None:
        if self.air is not None and self.air[0] < self.hour:
            self.airs.append(self.air)
        self.air = (self.hour, *told.air)

    def _told_one_air(self, told: Clause) -> None:
        self.air = None
        self.story.read(self.hour, *told.air)

    def _told_thermometer(self, told: Clause) -> None:
        self.air = None
        read = self.story.read(self.hour, *told.air)
        self.story.entries[-1] = replace(read, humidity_supposed=True)

    def _told_for(self, told: Clause) -> None:
        self.story.used_for = UsedFor(told.word)

    def _told_no_air(self, _: Clause) -> None:
        self.air = None

    def _told_night(self, told: Clause) -> None:
        self.story.cold_nights(None if told.word == "?" else _number(told.word, "C"))

    def _told_heat(self, told: Clause) -> None:
        self.story.heat(self.hour, self.hour + _number(told.word, "h"))

    def _told_heater(self, told: Clause) -> None:
        rooms = self.story.rooms
        rooms[1] = replace(rooms[1], heater=HeaterKind(told.word))

    def _told_respirator(self, told: Clause) -> None:
        """Break the seal of one: `respirator half organic-vapour`."""
        name, holds = told.more
        self._respirator(name, RespiratorDeed.OPENED, holds=Filter(holds))

    def _told_worn(self, told: Clause) -> None:
        minutes = 60 * _number(told.more[1], "h")
        self._respirator(told.word, RespiratorDeed.WORN, worn_min=minutes)

    def _told_hung(self, told: Clause) -> None:
        """Hang it in the open, or keep it in a bag: `hung half open`."""
        kept = MaskKept(told.more[1])
        self._respirator(told.word, RespiratorDeed.WORN, worn_min=60.0, kept=kept)

    def _told_gone(self, told: Clause) -> None:
        self._respirator(told.word, RespiratorDeed.GONE)

    def _respirator(self, name: str, deed: RespiratorDeed, **said: Any) -> None:
        head = {**self.story._head(self.hour, frozenset()), "name": name, "deed": deed}
        self.story._happened(Respirator(**head, **said))

    def _told_place(self, told: Clause) -> None:
        """Say what a room is: `place has:pilot,motor kind:basement lives:bird out:pilot`."""
        self._placed(1, told.more)

    def _told_beside(self, told: Clause) -> None:
        """Put a room beside, and what leads there: `beside door has:pilot`."""
        beside = self.story.another_room("boiler room")
        self._placed(beside, told.more[1:])
        rooms = self.story.rooms
        joins = (Join(beside, Opening(told.word)),)
        rooms[1] = replace(rooms[1], place=replace(rooms[1].place, joins=joins))

    def _placed(self, room: int, words: list[str]) -> None:
        rooms = self.story.rooms
        place = rooms[room].place
        for key, said in (word.split(":") for word in words):
            if key == "heater":
                rooms[room] = replace(rooms[room], heater=HeaterKind(said))
            elif key == "kind":
                place = replace(place, kind=PlaceKind(said))
            elif key == "lives":
                place = replace(place, lives=tuple(map(Lives, said.split(","))))
            else:
                there = tuple(map(Fixture, said.split(","))) if said != "none" else ()
                place = replace(place, **{key: there})
                if key == "out":
                    place = replace(place, out_at=at(self.hour))
        rooms[room] = replace(rooms[room], place=place)

    def _told_aside(self, told: Clause) -> None:
        self.story.set_aside(self.hour, told.on)

    def _told_resume(self, told: Clause) -> None:
        self.story.resume(self.hour, told.on)

    def _told_joint(self, told: Clause) -> None:
        frame = self.story.part("frame", needs={told.on.name: 1})
        glue = told.word if told.more else ""
        self.story.join(self.hour, frame.pieces[0], told.on.pieces, glue)

    def _told_frame(self, told: Clause) -> None:
        """Make an assembly of parts: `frame rail*2 stile`, still to be glued up."""
        needs = [part.partition("*") for part in told.more]
        self.story.part("frame", needs={name: int(count or 1) for name, _, count in needs})

    def _told_note(self, told: Clause) -> None:
        self.story._happened(Note(**self._head(told), text=" ".join(told.more)))

    def _told_attic(self, told: Clause) -> None:
        self.attic = self.attic or self.story.another_room(coldest_night_c=60.0)
        for before in (0, 48, 24 * 14, 24 * 30):
            self.story.read(self.hour - before, *told.air, self.attic)

    def _told_move(self, told: Clause) -> None:
        self.story.move(self.hour, told.on, self.attic if told.word == "attic" else 1)

    def _told_carried_in(self, told: Clause) -> None:
        """Carry a part from another room, where it stood until now, into this one."""
        story, other = self.story, self.story.another_room()
        where = next(n for n, part in enumerate(story.parts) if part.id == told.on.id)
        story.parts[where] = replace(told.on, room=other)
        story.read(self.hour - _SOON, *told.air, other)
        story.move(self.hour, told.on, 1)


@cache
def scene(line: str) -> Scene:
    """Return what a line leads to."""
    return Teller(line).scene()
