"""Sound films beside one that went wrong: what they share with it is hardly the cause.

Alike is a coat of the same product; sound, one that a check passed, that bears a later coat, or
that went on in the same act and was not complained of.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum

from msgspec.structs import replace

from finishlog.core.film.checks import PROVES, standing_failures
from finishlog.core.film.damage import is_suspect
from finishlog.core.film.from_can import undated
from finishlog.core.film.layers import Layer
from finishlog.core.findings import Finding, finding
from finishlog.core.finish.classes import COMMON_PRACTICE, FinishClass
from finishlog.core.finish.stages import Stage
from finishlog.core.log.entries import Work
from finishlog.core.log.words import SOFT, Operation
from finishlog.core.published.fault_kinds import Lower
from finishlog.core.published.find import plain
from finishlog.core.published.species import face_wood
from finishlog.core.trouble.scene import Scene
from finishlog.core.zone.grouping import describe
from finishlog.core.zone.state import ZoneState

# Our own rule: more of them tell no more.
_ENOUGH = 3


# Beside paints: they cover the wood with their own colour.
_HIDES = frozenset(
    {"oil-enamel", "latex-enamel", "oil-primer", "acrylic-primer", "pigmented-shellac"}
)


class Apart(StrEnum):
    """In what two coats of one product may differ."""

    WOOD = "wood"
    BELOW = "below"
    CAN = "can"
    ROOM = "room"
    METHOD = "method"
    GRIT = "grit"
    FACE = "face"


def with_sound_films(scene: Scene) -> Scene:
    """Add the sound films that are most like the one in trouble."""
    found = sorted(_sound(scene), key=lambda other: _likeness(scene, other))
    return replace(scene, sound=tuple(found[:_ENOUGH]))


def lower_scenes(scene: Scene, lower: Lower) -> Iterator[Scene]:
    """Yield the layers below that a cause may sit in, the nearest first, each beside sound ones."""
    films = (*scene.below, scene.layer)
    for n in range(len(films) - 1, -1, -1):
        of_it = lower is Lower.FILM or (lower is Lower.COLOUR and carries_colour(films[n].of))
        if of_it and n < len(scene.below):
            yield with_sound_films(replace(scene, layer=films[n], below=films[:n], sound=()))
        if lower is Lower.COLOUR and _hides(films[n].of):
            return


def carries_colour(of: FinishClass) -> bool:
    """Tell whether a finish gives what it lies on another colour."""
    return of.is_colour or _hides(of)


def _hides(of: FinishClass) -> bool:
    return of.is_paint or of.key in _HIDES


def name_of(scene: Scene) -> str:
    """Name the part that a film is on, by its face where it has several."""
    return label_of(scene.state)


def label_of(state: ZoneState) -> str:
    """Name the part that a zone is of, by its face where it has several."""
    faces = (state.face.name,) if len(state.member.faces) > 1 else ()
    return str(describe(state.member, (state.member_piece.number,), faces))


def differences(scene: Scene) -> Iterator[Finding]:
    """Yield in what a film in trouble differs from the sound one that is most like it."""
    if not scene.sound:
        return
    other = scene.sound[0]
    for what in Apart:
        here, there = _of(what, scene), _of(what, other)
        if here and there and here != there:
            yield finding(
                "differs",
                source=COMMON_PRACTICE,
                what=what.value,
                here=here,
                there=there,
                sound=name_of(other),
            )


def _sound(scene: Scene) -> Iterator[Scene]:
    for state in scene.zones:
        if state.target == scene.state.target:
            continue
        for n, layer in enumerate(state.layers):
            if layer.coat.product == scene.layer.coat.product and _is_sound(scene, state, layer):
                compared = layer.coat.when.earliest + (scene.until - scene.began)
                passed = [c.when.latest for c in layer.checks if c.found in PROVES]
                yield replace(
                    scene,
                    layer=layer,
                    below=state.layers[:n],
                    state=state,
                    compared=min((compared, *passed[-1:])),
                )


def _is_sound(scene: Scene, state: ZoneState, layer: Layer) -> bool:
    if standing_failures(layer.checks) or any(f.coat is layer.coat for f in state.faults):
        return False
    if is_suspect(layer) or undated((layer,)) or _was_late(layer):
        return False
    # What went wrong above it may have come from it.
    covered = layer is not state.layers[-1] and not (
        state.faults or any(standing_failures(above.checks) for above in state.layers)
    )
    return _passed(layer) or covered or layer.coat.act == scene.layer.coat.act


def _was_late(layer: Layer) -> bool:
    """Tell whether a film was found soft when its time was over: it came right by chance."""
    stages = layer.coat.figures.stages
    figure = stages.get(Stage.TACK_FREE) or stages.get(Stage.RECOAT)
    due = layer.label_waits(figure).high if figure else None
    return due is not None and any(
        check.found in SOFT and check.when.earliest >= due for check in layer.checks
    )


def _passed(layer: Layer) -> bool:
    return any(check.found in PROVES for check in (*layer.checks, *layer.scratches))


def is_tried(sound: Scene) -> bool:
    """Tell whether a sound film passed a test; else nobody complained of it, no more.

    A test of what lies over it is one of it too.
    """
    return any(_passed(each) for each in sound.state.layers[len(sound.below) :])


def _likeness(scene: Scene, other: Scene) -> tuple[bool, int, float]:
    """Sort by what they share: the act first, then in how little they differ, then the hour."""
    one, two = scene.layer.coat, other.layer.coat
    apart = sum(_of(what, scene) != _of(what, other) for what in Apart)
    return one.act != two.act, apart, abs((one.when.latest - two.when.latest).total_seconds())


def _of(what: Apart, scene: Scene) -> str:
    layer, state = scene.layer, scene.state
    match what:
        case Apart.WOOD:
            wood = scene.facts.species_named(state.species) if state.species else None
            sheet = state.species if _is_sheet(state) else None
            return sheet or (wood.name if wood else state.species or "")
        case Apart.BELOW:
            return scene.under.coat.product_name if scene.under else "bare wood"
        case Apart.CAN:
            return layer.came_from.name if layer.came_from else ""
        case Apart.ROOM:
            return layer.air.legs[0].room.name
        case Apart.METHOD:
            return layer.coat.method.value if layer.coat.method else ""
        case Apart.GRIT:
            return last_grit(scene)
        case Apart.FACE:
            return "/".join(filter(None, (state.face.name, state.zone.name)))


def alike_in_wood(scene: Scene, other: Scene) -> bool:
    """Tell whether two films lie on one wood, both solid or both not.

    Another wood, or a veneer, holds another amount of what sinks into it.
    """
    one, two = scene.state, other.state
    keys = (scene.facts.wood_key(state.species) for state in (one, two))
    return len(set(keys)) == 1 and _is_sheet(one) == _is_sheet(two)


def _is_sheet(state: ZoneState) -> bool:
    return bool(state.species) and face_wood(state.species or "") != plain(state.species or "")


def last_grit(scene: Scene) -> str:
    """Return the paper that the wood or the film was sanded with last before the coat."""
    grits = [
        entry.grit
        for entry in scene.state.entries
        if isinstance(entry, Work)
        and entry.operation in {Operation.SAND, Operation.SCUFF, Operation.DENIB}
        and entry.grit
        and entry.when.latest <= scene.layer.coat.when.latest
    ]
    return str(grits[-1]) if grits else ""
