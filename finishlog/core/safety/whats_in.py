"""What is in a can, a mix or a coat: its product, its parts, their parts, and what was noted."""

from __future__ import annotations

from collections.abc import Iterable

from finishlog.core.finish.sheet import NO_SHEET
from finishlog.core.log.entries import Coat, ContainerEvent
from finishlog.core.log.words import ContainerDeed
from finishlog.core.mixing.chemistry import Ingredient
from finishlog.core.mixing.containers import Container, MixPart
from finishlog.core.shop.things import Product, Shop, ThingKind

_FILLED = frozenset({ContainerDeed.MIXED, ContainerDeed.TOPPED_UP})


def in_product(product: Product) -> Ingredient:
    """Describe a finish as the person knows it."""
    return Ingredient(product.name, product.class_key, product.note, sheet=product.sheet)


def in_container(
    container: Container, shop: Shop, events: Iterable[ContainerEvent] = ()
) -> Ingredient:
    """Describe what is in a can, jar or mix, down to the mixes that went into it.

    `events`: its own; what was noted as it was filled counts.
    """
    said = [container.note, *(e.note for e in events if e.deed in _FILLED)]
    return _in(container, shop, frozenset(), ". ".join(said))


def in_coat(coat: Coat, shop: Shop) -> Ingredient:
    """Describe what a coat brought onto the wood."""
    known = shop.products.get(coat.product)
    return in_film(coat, known, _in_known(coat.container, shop))


def in_film(
    coat: Coat, product: Product | None, made_of: tuple[Ingredient, ...] = ()
) -> Ingredient:
    """Describe a coat by what stands with it, and by its product's sheet where that is known."""
    sheet = product.sheet if product is not None else NO_SHEET
    return Ingredient(coat.product_name, coat.figures.class_key, coat.note, made_of, sheet)


def in_work(note: str) -> Ingredient | None:
    """Describe what work by hand brought onto the wood: what was noted of it, if anything."""
    return Ingredient("", note=note) if note else None


def in_what_goes_on(product: Product, container: int | None, note: str, shop: Shop) -> Ingredient:
    """Describe a coat that is going on: its product, where it comes from, and what was noted."""
    said = ". ".join((product.note, note))
    inside = _in_known(container, shop)
    return Ingredient(product.name, product.class_key, said, inside, product.sheet)


def names_in(of: Ingredient) -> tuple[str, ...]:
    """Name all that went into something, down to the mixes in it, and is no finish by itself."""
    own = () if of.class_key else (of.name,)
    return (*own, *(name for each in of.made_of for name in names_in(each)))


def _in_known(container: int | None, shop: Shop) -> tuple[Ingredient, ...]:
    known = shop.containers.get(container) if container is not None else None
    return (in_container(known, shop),) if known else ()


def _in(container: Container, shop: Shop, above: frozenset[int], note: str) -> Ingredient:
    product = shop.products[container.product]
    above |= {container.id}
    inside = [_part(part, shop, above) for part in container.parts]
    source = called(container.drawn_from, shop)
    if source is not None and source.id not in above:
        inside.append(_in(source, shop, above, source.note))
    said = ". ".join((product.note, note))
    return Ingredient(product.name, product.class_key, said, tuple(inside), product.sheet)


def _part(part: MixPart, shop: Shop, above: frozenset[int]) -> Ingredient:
    """Read a part by its name: a finish of the person, a mix that stands there, or its words."""
    product = shop.products.get(part.product) if part.product is not None else None
    if product is not None:
        return in_product(product)
    mix = called(part.name, shop)
    if mix is not None and mix.id not in above:
        return _in(mix, shop, above, mix.note)
    return Ingredient(part.name)


def called(name: str, shop: Shop) -> Container | None:
    """Find a can or mix by the name it has, or had."""
    word = name.strip().casefold()
    if not word:
        return None
    old = {
        a.thing
        for a in shop.aliases
        if a.kind is ThingKind.CONTAINER and a.old_name.casefold() == word
    }
    fits = [c for c in shop.containers.values() if c.name.casefold() == word or c.id in old]
    return max(fits, key=lambda c: (c.name.casefold() == word, not c.archived, c.id), default=None)
