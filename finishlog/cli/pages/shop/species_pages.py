"""The pages of the woods: what each does to a finish, how far it moves, what to heed on it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from finishlog.cli.pages.shop.figure_rows import basis
from finishlog.cli.terminal.page import Page, Section, Tone
from finishlog.core.finish.classes import Limit
from finishlog.core.finish.overcoat import OvercoatAnswer
from finishlog.core.published.species import Pores, Species, Tannin, WantsFiller

if TYPE_CHECKING:
    from finishlog.asks.things.species import Care, SpeciesShown
    from finishlog.cli.pages.shop.figure_rows import Sources

_PORES = {
    Pores.RING: "ring-porous",
    Pores.SEMI_RING: "semi-ring-porous",
    Pores.DIFFUSE: "diffuse-porous",
    Pores.SOFTWOOD: "none, a softwood",
}
_FILLER = {
    WantsFiller.YES: "for a smooth finish",
    WantsFiller.NO: "not needed",
    WantsFiller.DEPENDS: "as you like",
}
_TANNIN = {
    Tannin.YES: "rich in it",
    Tannin.SOME: "some",
    Tannin.NO: "hardly any",
    Tannin.UNKNOWN: "not known",
}


def species_list_page(woods: Sequence[Species]) -> Page:
    """List the woods, with what sets each apart."""
    return Page.listed((wood.key, wood.name, ", ".join(_in_short(wood))) for wood in woods)


def _in_short(wood: Species) -> list[str]:
    said = {
        "filler": wood.wants_filler is WantsFiller.YES,
        "tannin": wood.tannin is Tannin.YES,
        "oily": wood.oily,
        "pitch": wood.pitchy,
        "blotches": wood.blotches,
    }
    return [word for word, holds in said.items() if holds]


def species_page(shown: SpeciesShown, sources: Sources) -> Page:
    """Show one wood; every property with its basis."""
    wood = shown.wood
    page = Page().line(f"{wood.name} ({wood.key})", Tone.HEAD)
    _nature(page.section("WHAT IT IS"), wood, sources)
    movement = page.section("HOW FAR IT MOVES, of its width, for each 1 % of moisture content")
    _moves(movement, "flat-sawn", wood.tangential_per_pct, sources)
    _moves(movement, "quarter-sawn", wood.radial_per_pct, sources)
    always = [care for care in shown.cares if care.only_with is None]
    _heed(page.section("YOUR FINISHES ON IT"), [c for c in always if c.finishes], sources)
    _heed(page.section("OTHER FINISHES ON IT"), [c for c in always if not c.finishes], sources)
    _heed(page.section("WHERE THERE IS"), [c for c in shown.cares if c.only_with], sources)
    return page


def _nature(section: Section, wood: Species, sources: Sources) -> None:
    section.said("also called", ", ".join(wood.aliases))
    for name, said, source in (
        ("pores", _PORES[wood.pores], wood.pores_source),
        ("filler", _FILLER[wood.wants_filler], wood.wants_filler_source),
        ("tannin", _TANNIN[wood.tannin], wood.tannin_source),
        ("oil", "oily" if wood.oily else "not oily", wood.oily_source),
        ("pitch", "may bleed" if wood.pitchy else "none to heed", wood.pitchy_source),
        ("stain", "blotches" if wood.blotches else "goes on evenly", wood.blotches_source),
    ):
        section.row(name, said, basis(source, sources))
    section.said("note", wood.note)


def _moves(section: Section, cut: str, of: Limit | None, sources: Sources) -> None:
    if of is not None:
        section.row(cut, f"{100 * of.value:.3f} %", basis(of.source, sources))


def _heed(section: Section, cares: Sequence[Care], sources: Sources) -> None:
    for care in cares:
        whose = f"{', '.join(care.finishes)}: " if care.finishes else ""
        where = f"{care.only_with}: " if care.only_with else ""
        answer = "first" if care.answer is OvercoatAnswer.OK else care.answer.value
        section.row(answer, f"{where}{whose}{care.reason}")
        section.row("", care.remedy)
        section.row("", basis(care.source, sources), tone=Tone.FAINT)
