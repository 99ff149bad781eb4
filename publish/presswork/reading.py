"""Reads a shop's sessions: those that changed are gathered anew, of the others the store knows what is needed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from capture.errors import ShopError, SpokeshaveError
from capture.shop import Session, Shop, ShopSettings
from publish.context import SessionPage
from publish.gather import Gathered, gather_session
from publish.library.statements import Statement, statements_of
from publish.page import make_page
from publish.presswork.parts import Brief, parts_of
from publish.presswork.standing import EditionStanding
from publish.presswork.store import Store
from publish.presswork.sums import session_sum, sum_of
from publish.render import Renderer
from publish.standing import Standing


@dataclass(frozen=True, slots=True)
class Set:
    """A session that is gathered, with its page as it is without company."""

    gathered: Gathered
    page: SessionPage
    shop: ShopSettings

    def statements(self) -> tuple[Statement, ...]:
        """Its standing figures."""
        return statements_of((self.gathered.source,), (self.page,), self.shop)


class Read:
    """One session; its page is only made up where someone asks for it."""

    def __init__(
        self,
        session: Session,
        total: str,
        brief: Brief,
        sums: Mapping[str, str],
        shop: ShopSettings,
        standing: Standing,
        made: Set | None,
    ) -> None:
        self.session = session
        self.sum = total
        """Over all that it is made from."""
        self.brief = brief
        self.sums = sums
        """Of each part."""
        self._shop = shop
        self._standing = standing
        self._made = made

    @property
    def slug(self) -> str:
        """Its folder."""
        return self.brief.slug

    def made(self) -> Set:
        """The session gathered. Raises `ShopError` where its files can't be read any more."""
        if self._made is None:
            self._made = _set(self.session, self._shop, self._standing)
        return self._made


def read_sessions(
    shop: Shop, settings: ShopSettings, store: Store, renderer: Renderer
) -> tuple[tuple[Read, ...], tuple[str, ...]]:
    """Every session that can be published, oldest first, and one line for each that can't."""
    known, sums = store.sessions(), store.part_sums()
    standing = EditionStanding(shop, store)
    found: list[Read] = []
    problems: list[str] = []
    for session in shop.sessions():
        total, kept = known.pop(session.slug, ("", {}))
        try:
            if total and total == _sum(session, kept["recording"], standing):
                brief = Brief.of_json(kept)
                found.append(Read(session, total, brief, sums.get(session.slug, {}), settings, standing, None))
            else:
                found.append(_read(session, settings, store, renderer, standing))
        except SpokeshaveError as error:
            store.forget(session.slug)
            problems.append(str(error))
    for slug in known:
        store.forget(slug)
    return tuple(found), tuple(problems)


def _read(session: Session, settings: ShopSettings, store: Store, renderer: Renderer, standing: Standing) -> Read:
    # The sum comes first: what changes while the session is read is seen at the next publish.
    recording = session.settings.recording
    total = _sum(session, recording, standing)
    made = _set(session, settings, standing)
    brief, parts = parts_of(made.gathered, made.page, recording, settings, renderer)
    store.put_session(session.slug, total, brief.to_json(), parts)
    sums = {name: sum_of(data) for name, data in parts.items()}
    return Read(session, total, brief, sums, settings, standing, made)


def _set(session: Session, settings: ShopSettings, standing: Standing) -> Set:
    gathered = gather_session(session, standing)
    return Set(gathered, make_page(gathered.source, settings), settings)


def _sum(session: Session, recording: str, standing: Standing) -> str:
    """The sum over a session's files, and over what other sessions have to do with it."""
    try:
        return sum_of(session_sum(session.folder, recording), standing.bearing(session))
    except OSError as error:
        raise ShopError(session.folder, f"can't be read ({error})", "mend the permissions of its files") from error
