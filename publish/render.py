"""Pages as HTML."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup, escape

from publish.card import card_setting
from publish.compiled import compiled_templates
from publish.context import Card, Entry, ErrataPage, Erratum, FrontPage, Hazard, Notice, SessionPage
from publish.context.library import Telling, WorkPage
from publish.context.plots import ShopPlot
from publish.context.procedures import CautionOver, EveryPage, MovedPage, ProcedureIndex, ProcedurePage, VersionInFull
from publish.context.reference import KitPage, ReferenceIndex, ReferencePage, Use
from publish.context.search import SearchPage
from publish.errors import LostCautionError
from publish.film.stills import Still
from publish.parts import PARTS, PageParts
from publish.typeset import typeset
from publish.wording import cited

LibraryPage = (
    WorkPage | ReferencePage | ReferenceIndex | KitPage | ProcedurePage | ProcedureIndex | EveryPage | MovedPage
)
_LIBRARY: dict[type[LibraryPage], str] = {
    WorkPage: "work.html",
    ReferencePage: "reference.html",
    ReferenceIndex: "references.html",
    KitPage: "kit.html",
    ProcedurePage: "procedure.html",
    ProcedureIndex: "procedures.html",
    EveryPage: "every.html",
    MovedPage: "moved.html",
}

TEMPLATES = Path(__file__).parent / "templates"


def environment() -> Environment:
    """The template engine: everything is escaped, and a name that the page lacks raises."""
    engine = Environment(
        loader=FileSystemLoader(TEMPLATES),
        bytecode_cache=compiled_templates(),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    engine.filters["typeset"] = typeset
    engine.filters["cited"] = cited
    return engine


def template_of(page: LibraryPage) -> str:
    """The template of a page of the library."""
    return _LIBRARY[type(page)]


class Renderer:
    """Renders pages; `parts` is the table of what a session page is made of."""

    def __init__(self, parts: PageParts = PARTS) -> None:
        self._engine = environment()
        self._parts = parts

    def session(self, page: SessionPage) -> str:
        """A session's page. Raises `LostCautionError` where a template left out a caution."""
        template = self._engine.get_template("session.html")
        html = template.render(page=page, parts=self._parts.on(page))
        # The text for the film has them too, and is folded away.
        shown = html.replace(str(escape(page.beneath)), "") if page.beneath else html
        _keeps_cautions(shown, page.standing_caution, page.cautions, TEMPLATES / "parts" / "cautions.html")
        return html

    def card(self, card: Card) -> str:
        """A bench card. Raises `LostCautionError` where the template left out a caution."""
        html = self._engine.get_template("card.html").render(page=card, setting=card_setting(card))
        _keeps_cautions(html, card.standing_caution, card.cautions, TEMPLATES / "card.html")
        return html

    def still(self, still: Still) -> str:
        """A still with corrected figures, as SVG."""
        return self._engine.get_template("errata-still.svg").render(still=still)

    def drawing(self, drawing: ShopPlot) -> str:
        """A drawing of all the shop's figures of one thing, as SVG."""
        return self._engine.get_template("shop-plot.svg").render(drawing=drawing)

    def errata(self, page: ErrataPage) -> str:
        """The page of all errata."""
        return self._engine.get_template("errata.html").render(page=page)

    def library(self, page: LibraryPage) -> str:
        """A page of the library. Raises `LostCautionError` where the template left out a caution."""
        html = self._engine.get_template(template_of(page)).render(page=page)
        if isinstance(page, ProcedurePage | EveryPage):
            given = page.cautions if isinstance(page, EveryPage) else (*page.cautions, *page.elsewhere)
            _keeps_cautions(html, page.standing_caution, given, TEMPLATES / template_of(page))
        return html

    def version(self, version: VersionInFull) -> Markup:
        """A version for the page of every version."""
        return self._macro("version.html", "whole", version)

    def search(self, page: SearchPage) -> str:
        """The page that searches the site."""
        return self._engine.get_template("search.html").render(page=page)

    def entry(self, entry: Entry) -> Markup:
        """A session's entry of the front page."""
        return self._macro("entries.html", "session", entry)

    def erratum(self, erratum: Erratum) -> Markup:
        """An erratum's entry of the front page."""
        return self._macro("entries.html", "erratum", erratum)

    def notice(self, notice: Notice) -> Markup:
        """An erratum's entry of the page of all errata."""
        return self._macro("entries.html", "notice", notice)

    def use(self, use: Use) -> Markup:
        """A session's entry of the page of tools and materials."""
        return self._macro("entries.html", "use", use)

    def telling(self, telling: Telling) -> Markup:
        """A figure's row of a table of the library."""
        return self._macro("plot.html", "telling", telling)

    def _macro(self, template: str, name: str, of: object) -> Markup:
        made: Markup = getattr(self._engine.get_template(template).module, name)(of)
        return made

    def front(self, page: FrontPage) -> str:
        """The front page."""
        return self._engine.get_template("front.html").render(page=page)


def _keeps_cautions(html: str, standing: str, cautions: Iterable[Hazard | CautionOver], template: Path) -> None:
    for caution in (standing, *(one.text for one in cautions)):
        if str(typeset(caution)) not in html and str(escape(caution)) not in html:
            raise LostCautionError(template, caution)
