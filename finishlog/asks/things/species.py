"""What is published of woods, and what to heed when a finish goes on them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from finishlog.context import Context
from finishlog.core.commands import Do
from finishlog.core.finish.classes import FinishClass
from finishlog.core.finish.overcoat import OvercoatAnswer, rule_on_bare_wood
from finishlog.core.published.facts import Facts
from finishlog.core.published.find import find_called, names_of
from finishlog.core.published.species import Condition, Species, WoodRule, face_wood, rules_for_wood
from finishlog.errors import NotFound
from finishlog.store.things.read_shop import read_shop

# How near a spelling is: `mapel` is maple, lacewood is no applewood.
_NEAR = 0.75


class Care(Struct, frozen=True):
    """What to heed on a wood. `finishes`: the person's products that it speaks of.

    `only_with`: it holds only where that is on or in the wood.
    """

    answer: OvercoatAnswer
    reason: str
    remedy: str
    source: str
    only_with: Condition | None
    finishes: tuple[str, ...]


class SpeciesShown(Struct, frozen=True):
    """One wood, and what to heed when the person's finishes, or others, go on it bare."""

    wood: Species
    cares: tuple[Care, ...]


def species_list(facts: Facts) -> tuple[Species, ...]:
    """List the woods by name."""
    return tuple(sorted(facts.species, key=lambda wood: wood.name.casefold()))


def one_species(facts: Facts, typed: str, products: Sequence[tuple[str, str]] = ()) -> SpeciesShown:
    """Show one wood, and what to heed with some products: name and class."""
    wood = pick_wood(facts, typed)
    return SpeciesShown(wood, tuple(_cares(wood, products, facts)))


def pick_wood(facts: Facts, typed: str) -> Species:
    """Find a wood by key, name, alias or a unique beginning; NotFound names those that are near."""
    found = find_called(typed, facts.species)
    if len(found) == 1:
        wood = facts.species_named(found[0])
        assert wood is not None
        return wood
    if found:
        raise NotFound(f"{typed!r} fits several woods", "choose: " + ", ".join(found))
    near = near_woods(facts, typed)
    hint = f"did you mean: {', '.join(near)}" if near else f"{Do.SPECIES_LIST()} shows them"
    raise NotFound(f"nothing is published here of {typed!r}", hint)


def near_woods(facts: Facts, typed: str) -> tuple[str, ...]:
    """Return the keys of the woods that are called nearly so: `chery`, `swamp ash`."""
    from difflib import get_close_matches

    low = face_wood(typed)
    called = {name.casefold(): of.key for of in facts.species for name in names_of(of)}
    whole = [of.key for of in facts.species if low.split()[-1:] == [of.key.casefold()]]
    near = get_close_matches(low, called, n=3, cutoff=_NEAR)
    return tuple(dict.fromkeys((*whole, *(called[word] for word in near))))[:3]


def products_in_use(context: Context) -> tuple[tuple[str, str], ...]:
    """Return the person's products in use: name and class."""
    with context.reading() as connection:
        shop = read_shop(connection, context.clock.now)
    return tuple((p.name, p.class_key) for p in shop.products.values() if not p.archived)


def _cares(wood: Species, products: Sequence[tuple[str, str]], facts: Facts) -> Iterator[Care]:
    mine = [(name, facts.finish_class(key)) for name, key in products]
    for rule in facts.wood_rules:
        if wood.traits & set(rule.wood):
            yield _care(rule, [name for name, of in mine if _speaks(rule, wood, of)])
    yield from _on_bare_wood(mine, facts)


def _speaks(rule: WoodRule, wood: Species, of: FinishClass) -> bool:
    return bool(rules_for_wood((rule,), wood, of, tuple(Condition)))


def _care(rule: WoodRule, finishes: Iterable[str]) -> Care:
    remedy = " ".join(filter(None, (rule.instead, rule.remedy)))
    return Care(rule.answer, rule.reason, remedy, rule.source, rule.only_with, tuple(finishes))


def _on_bare_wood(mine: Sequence[tuple[str, FinishClass]], facts: Facts) -> Iterator[Care]:
    """Yield what holds on every bare wood, for the person's finishes alone."""
    rules = {rule.id: rule for rule in facts.overcoats_on_bare_wood}
    speaking: dict[str, list[str]] = {}
    for name, of in mine:
        rule = rule_on_bare_wood(rules.values(), of)
        if rule:
            speaking.setdefault(rule.id, []).append(name)
    for key, names in speaking.items():
        found = rules[key]
        yield Care(found.answer, found.reason, found.remedy, found.source, None, tuple(names))
