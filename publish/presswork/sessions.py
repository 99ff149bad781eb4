"""Prints the folder of each session: its page, its bench card, its files, and its recording and pictures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import orjson
from pydantic import TypeAdapter

from publish.addresses import SESSION_HOME
from publish.context import Erratum, Link
from publish.front import company_at
from publish.library.comparing import comparisons
from publish.library.works import kin_among
from publish.page import Company
from publish.presswork.figures import Figured
from publish.presswork.parts import KIN
from publish.presswork.press import Press, Texts
from publish.presswork.procedures import Procedural
from publish.presswork.reading import Read
from publish.presswork.store import Store
from publish.presswork.sums import sum_of
from publish.render import Renderer
from publish.session import session_texts
from publish.staging import Staging


def print_sessions(
    reads: Sequence[Read],
    store: Store,
    renderer: Renderer,
    press: Press,
    staging: Staging,
    procedures: Procedural,
    figures: Figured,
) -> None:
    """Print every session's folder; a page tells of its company, so that a change of that prints it anew too."""
    told = store.parts(KIN)
    company = _company(reads, told)
    for one in reads:
        done = procedures.of(one.slug, SESSION_HOME, steps=True)
        fellows = replace(company.get(one.slug, Company()), procedures=done, compared=figures.of(one))
        total = sum_of(one.slug, one.sum, orjson.dumps(fellows))
        press.files(f"sessions/{one.slug}/", total, lambda one=one, fellows=fellows: _texts(one, fellows, renderer))  # type: ignore[misc]
        for name, path in one.brief.placed.items():
            staging.place(f"sessions/{one.slug}/{name}", Path(path))


def _texts(one: Read, fellows: Company, renderer: Renderer) -> tuple[Texts, None]:
    made = one.made()
    page = replace(
        made.page,
        history=fellows.history,
        later_errata=fellows.later_errata,
        work=fellows.work,
        procedures=fellows.procedures,
        comparisons=comparisons(made.statements(), dict(fellows.compared)),
    )
    home = f"sessions/{one.slug}"
    return {f"{home}/{name}": text for name, text in session_texts(made.gathered, page, renderer).items()}, None


def _company(reads: Sequence[Read], told: Mapping[str, Any]) -> dict[str, Company]:
    company = {}
    for kin in kin_among([one.brief.subject for one in reads]):
        of = [reads[at].slug for at in kin.places]
        links = [Link(**told[slug]["link"]) for slug in of]
        errata = [_errata().validate_python(told[slug]["taken_back"]) for slug in of]
        for at, slug in enumerate(of):
            company[slug] = company_at(at, kin, links, errata)
    return company


@cache
def _errata() -> TypeAdapter[tuple[Erratum, ...]]:
    return TypeAdapter(tuple[Erratum, ...])
