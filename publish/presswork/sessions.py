"""Prints the folder of each session: its page, its bench card, its files, and its recording and pictures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path

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
    company = _Company(reads, store)
    for at, one in enumerate(reads):
        done = procedures.told(one.slug, steps=True)
        total = sum_of(one.slug, one.sum, orjson.dumps(done), *company.sums(at), *figures.sums(one))

        def make(at: int = at, one: Read = one) -> tuple[Texts, None]:
            done = procedures.of(one.slug, SESSION_HOME, steps=True)
            return _texts(one, replace(company.of(at), procedures=done, compared=figures.of(one)), renderer)

        press.files(f"sessions/{one.slug}/", total, make)
        for name, path in one.brief.placed.items():
            staging.place(f"sessions/{one.slug}/{name}", Path(path))


class _Company:
    """What the page of each session is told of the others on the same work."""

    def __init__(self, reads: Sequence[Read], store: Store) -> None:
        self._reads = reads
        self._store = store
        works = kin_among([one.brief.subject for one in reads])
        self._kin = {at: (place, kin) for kin in works for place, at in enumerate(kin.places)}

    def sums(self, at: int) -> tuple[str, ...]:
        """Another one where the page of the session at this place is told something else."""
        if at not in self._kin:
            return ()
        place, kin = self._kin[at]
        of = (self._reads[one] for one in kin.places)
        return (kin.slug, kin.subject, str(place), *(text for one in of for text in (one.slug, one.sums[KIN])))

    def of(self, at: int) -> Company:
        """The company of the session at this place."""
        if at not in self._kin:
            return Company()
        place, kin = self._kin[at]
        slugs = [self._reads[one].slug for one in kin.places]
        told = self._store.parts(KIN, slugs)
        links = [Link(**told[slug]["link"]) for slug in slugs]
        errata = [_errata().validate_python(told[slug]["taken_back"]) for slug in slugs]
        return company_at(place, kin, links, errata)


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


@cache
def _errata() -> TypeAdapter[tuple[Erratum, ...]]:
    return TypeAdapter(tuple[Erratum, ...])
