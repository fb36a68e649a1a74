"""Was the can of a coat stirred, and was it the same can as beside it? Both show in the sheen."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta

from finishlog.core.film.layers import Layer
from finishlog.core.log.entries import Coat
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.came_from import CameFrom
from finishlog.core.published.facts import Facts
from finishlog.core.published.keeping import Settles
from finishlog.core.shop.things import Product

_STIRS = (ContainerDeed.STIRRED, ContainerDeed.MIXED, ContainerDeed.TOPPED_UP)


def was_stirred(coat: Coat, source: CameFrom | None, facts: Facts) -> bool | None:
    """Tell whether what a coat came from was stirred: as it was said, or as its can tells.

    None: nothing tells.
    """
    state = source.state if source else None
    if coat.stirred is not None or state is None:
        return coat.stirred
    holds = timedelta(hours=facts.keeping.stirred_h.value)
    last = state.last(*_STIRS, ContainerDeed.UNSTIRRED)
    if last is None or coat.when.latest - last.when.latest > holds:
        return None
    return last.deed in _STIRS


def what_settles(coat: Coat, products: Mapping[int, Product], facts: Facts) -> Settles | None:
    """Return what sinks to the bottom of the can of a coat; None: nothing known."""
    product = products.get(coat.product)
    of = facts.finish_class(coat.figures.class_key)
    return facts.keeping.settles_in(of, product.sheen if product else None)


def unstirred(layer: Layer, products: Mapping[int, Product], facts: Facts) -> Settles | None:
    """Return what lay at the bottom of the can that a layer came from; None: it was stirred."""
    if was_stirred(layer.coat, layer.came_from, facts) is not False:
        return None
    return what_settles(layer.coat, products, facts)


def batch_of(source: CameFrom | None) -> tuple[str, str]:
    """Return the can and the maker's batch that a coat came from, down to the can it was drawn of.

    Empty: not known.
    """
    cans = [each.container for each in source.sources] if source else []
    batch = next((each.batch for each in cans if each.batch), "")
    return (cans[-1].name if cans else ""), batch
