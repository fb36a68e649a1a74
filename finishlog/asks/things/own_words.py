"""What the person says of a product beyond its label, in words."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta

from msgspec import Struct

from finishlog.core.finish.sheet import YOUR_SHEET
from finishlog.core.log.shown_times import length_words
from finishlog.core.measure.quantities import celsius, grams, micrometres
from finishlog.core.published.facts import Facts
from finishlog.core.safety.hazards import spared_by_sheet
from finishlog.core.safety.whats_in import in_product
from finishlog.core.shop.own_rules import Own, OwnRule
from finishlog.core.shop.things import Product


class SaysLine(Struct, frozen=True):
    """One rule of a product in words, the reason, and the act that said it; None: none did."""

    words: str
    because: str
    act: int | None


def says_lines(product: Product, products: Mapping[int, Product]) -> tuple[SaysLine, ...]:
    """List what the person says of a product."""
    return tuple(
        SaysLine(own_words(rule, products), rule.because, rule.act) for rule in product.own_rules
    )


def own_words(rule: OwnRule, products: Mapping[int, Product]) -> str:
    """Word one rule: `not over wiping-stain`, `72 h over boiled-linseed-oil`."""
    named = products[rule.product].name if rule.product is not None else " or ".join(rule.of)
    over = f" over {named}" if named else ""
    match rule.own:
        case Own.NOT_OVER:
            return f"not{over}"
        case Own.NEEDS:
            return f"needs {' or '.join(rule.between)}{over or ' below it'}"
        case Own.WAIT:
            assert rule.wait is not None
            ends = (rule.wait.low_h, rule.wait.high_h)
            shown = dict.fromkeys(length_words(timedelta(hours=h)) for h in ends)
            return f"{' to '.join(shown)}{over}"
        case Own.WINDOW:
            return "its window"
        case Own.COATS_A_DAY:
            return f"{rule.count} coats a day at most"
        case Own.MOST_COATS:
            return f"{rule.count} coats at most"
        case Own.NOT_ON:
            return f"not on {named}"
        case Own.THICKEST:
            assert rule.thickest_um is not None
            return f"{micrometres(rule.thickest_um)} a coat at most"
        case Own.OVERRULE:
            return f"overrules {named}"
        case _:
            return f"{YOUR_SHEET}: {_of_sheet(rule)}"


def _of_sheet(rule: OwnRule) -> str:
    match rule.own:
        case Own.FREE_OF:
            return f"no {rule.of[0]}"
        case Own.HOLDS:
            return f"holds {rule.of[0]}"
        case Own.CARRIER:
            return f"carrier {rule.of[0]}"
        case Own.LEL:
            return f"lower explosive limit {rule.figure:g} %"
        case Own.DAY_LIMIT:
            return f"a day's limit {rule.figure:g} ppm"
        case Own.SHORT_LIMIT:
            return f"limit of 15 minutes {rule.figure:g} ppm"
        case Own.FLASH:
            return f"flash point {celsius(rule.figure or 0, 1)}"
        case Own.SOLVENT:
            return f"{grams(rule.figure or 0)} of a litre leave as solvent"
        case _:
            return f"a litre weighs {grams(1000 * (rule.figure or 0))}"


def less_than_its_class(product: Product, facts: Facts) -> tuple[str, ...]:
    """Name the hazards that its class or its name has and its safety data sheet rules out."""
    return tuple(hazard.value for hazard in spared_by_sheet(in_product(product), facts))
