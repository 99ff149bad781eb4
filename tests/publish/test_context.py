"""The documented context is the one the templates use: every field is described, and every field is read."""

from __future__ import annotations

import ast
import dataclasses
import inspect
from dataclasses import replace
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest
from markupsafe import Markup

from capture.step_stills import tenths_of
from extract.record import Earlier, Record
from publish import moments
from publish.context import (
    FrontPage,
    Link,
    SessionPage,
    Shelf,
    card,
    errata,
    figures,
    library,
    pages,
    parts,
    plots,
    procedures,
    reference,
    search,
    site_page,
    timeline,
)
from publish.context import (
    comparisons as compared,
)
from publish.errata import retractions
from publish.galley import Galley
from publish.kit import as_called
from publish.library.comparing import comparisons
from publish.library.statements import statements_of
from publish.page import Company, make_page
from publish.parts import PARTS
from publish.render import environment, template_of
from tests.publish.in_memory import make_drawings, make_front, make_library
from tests.publish.kit.bench import by_hand
from tests.publish.library.sessions import pages as pages_of
from tests.publish.library.sessions import sessions
from tests.publish.session import SHOP, source

DRAWN = (compared, figures, library, moments, pages, parts, plots, reference, timeline)
"""What the pages below show a value of every field of."""
MODULES = (*DRAWN, card, errata, procedures, search, site_page)


def documented(module: ModuleType) -> dict[str, set[str]]:
    """Fields with a text right behind them, by class."""
    found = {}
    for node in ast.parse(inspect.getsource(module)).body:
        if isinstance(node, ast.ClassDef) and node.decorator_list:
            pairs = zip(node.body, node.body[1:], strict=False)
            found[node.name] = {
                one.target.id
                for one, behind in pairs
                if isinstance(one, ast.AnnAssign)
                and isinstance(one.target, ast.Name)
                and isinstance(behind, ast.Expr)
                and isinstance(behind.value, ast.Constant)
            }
    return found


CLASSES = [(getattr(module, name), fields) for module in MODULES for name, fields in documented(module).items()]


@pytest.mark.parametrize(("kind", "described"), CLASSES, ids=lambda one: getattr(one, "__name__", ""))
def test_every_field_is_described(kind: type[Any], described: set[str]) -> None:
    assert described == set(inspect.get_annotations(kind))


@pytest.mark.parametrize(("kind", "described"), CLASSES, ids=lambda one: getattr(one, "__name__", ""))
def test_contexts_are_frozen(kind: type[Any], described: set[str]) -> None:
    assert kind.__dataclass_params__.frozen


class Witness:
    """A context that remembers which of its fields a template read."""

    def __init__(self, of: object, seen: set[tuple[str, str]]) -> None:
        self._of, self._seen = of, seen

    def __getattr__(self, name: str) -> Any:
        if name.startswith("__"):
            raise AttributeError(name)
        self._seen.add((type(self._of).__name__, name))
        return wrap(getattr(self._of, name), self._seen)


def wrap(value: Any, seen: set[tuple[str, str]]) -> Any:
    if isinstance(value, tuple):
        return tuple(wrap(one, seen) for one in value)
    return Witness(value, seen) if dataclasses.is_dataclass(value) else value


def traced() -> Record:
    """The record with the statement named that it takes back of an earlier session."""
    earlier = Earlier(session="2030-01-01-before", title="Before", item="m-1", start=3, quote="20 thou", proposed=True)
    record = source().record
    corrections = tuple(
        one.model_copy(update={"earlier": earlier}) if one.scope == "earlier_session" else one
        for one in record.corrections
    )
    return as_called(record.model_copy(update={"corrections": corrections}), by_hand("cam clamps", "bar clamp"))


def full_page() -> SessionPage:
    """A page with something in every part."""
    link = Link("../later/index.html", "A later session")
    later = retractions(Galley(source(), SHOP), link, link.href, "../")
    record = traced()
    stills = {tenths_of(step.start): Path("still.jpg") for step in record.steps}
    noted = replace(source(), note=Markup("<p>A note.</p>"), record=record, stills=stills)
    page = make_page(noted, SHOP, Company(history=(link,), later_errata=later, work=link))
    told = make_drawings(statements_of(sessions(), pages_of(sessions()), SHOP))[1]
    return replace(page, comparisons=comparisons(statements_of((noted,), (page,), SHOP), told))


def test_every_field_is_read_by_a_template() -> None:
    seen: set[tuple[str, str]] = set()
    engine = environment()
    page = full_page()
    engine.get_template("session.html").render(page=wrap(page, seen), parts=PARTS.on(page))
    front = make_front((source(),), (page,), SHOP, Shelf(works=(Link("work/heron/index.html", "The Heron"),)))
    engine.get_template("front.html").render(page=wrap(front, seen))
    for drawing in make_drawings(statements_of(sessions(), pages_of(sessions()), SHOP))[0].values():
        engine.get_template("shop-plot.svg").render(drawing=wrap(drawing, seen))
    first, *rest = sessions()
    named = (replace(first, record=as_called(first.record, by_hand("cam clamps", "bar clamp"))), *rest)
    for made in make_library(named, pages_of(named), SHOP).values():
        engine.get_template(template_of(made)).render(page=wrap(made, seen))
    drawn = {module.__name__ for module in DRAWN}
    kinds = [kind for kind, _ in CLASSES if kind.__module__ in drawn]
    defined = {(kind.__name__, field.name) for kind in kinds for field in dataclasses.fields(kind)}
    assert seen == defined - {("Moment", "seconds")}, "captions need the exact second, pages its stamp"


def test_pages_are_the_types_that_are_documented() -> None:
    page = full_page()
    assert type(page) is SessionPage
    assert type(make_front((source(),), (page,), SHOP)) is FrontPage
