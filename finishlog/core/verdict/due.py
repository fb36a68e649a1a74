"""What comes next on a zone: the step that is due, and the coat that is."""

from __future__ import annotations

from finishlog.core.findings import Act
from finishlog.core.log.words import Operation
from finishlog.core.published.facts import Facts
from finishlog.core.safety.whats_in import in_what_goes_on, in_work
from finishlog.core.shop.things import FaceKind, Shop
from finishlog.core.verdict.edges import follows_its_faces
from finishlog.core.zone.asked import NOTHING, Asked, coat_asked, work_asked
from finishlog.core.zone.state import ZoneState

# No coat is due: what the film itself says to one, of whatever kind.
ANY_COAT = Asked(Act.COAT, Operation.COAT)


def asked_of(state: ZoneState, shop: Shop, facts: Facts) -> Asked:
    """Return what comes next: the step due, or the same product again where there are no steps."""
    step = state.progress.next
    if step is not None and step.operation is not Operation.COAT:
        comes, then = in_work(step.note), product_due(state)
        return work_asked(step.operation, comes, grit=step.note, then=then)
    if follows_its_faces(state) or (step is None and state.face.kind is FaceKind.JOINT):
        return NOTHING
    due = coat_due(state, shop, facts)
    return due if due.over is not None else work_asked(step.operation) if step else NOTHING


def product_due(state: ZoneState) -> int | None:
    """Return the product of the coat that comes next; where there are no steps the same again.

    Colour that was put back on a spot is no coat of the face.
    """
    step = state.progress.next_coat
    top = next((each for each in reversed(state.layers) if not each.on_a_spot), None)
    if not state.progress.steps and top is not None and not state.joined:
        return None if top.of.goes_on_last else top.coat.product
    return step.product if step else None


def coat_due(state: ZoneState, shop: Shop, facts: Facts) -> Asked:
    """Return the coat that comes next, also behind other work: whatever is asked of a recoat."""
    step, product = state.progress.next_coat, product_due(state)
    known = shop.products.get(product) if product is not None else None
    if known is None:
        return ANY_COAT
    comes = in_what_goes_on(known, None, step.note if step else "", shop)
    return coat_asked(facts.finish_class(known.class_key), comes=comes, product=known.id)
