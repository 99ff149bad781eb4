"""Reads a shop's sessions: those that changed are gathered anew, of the others the store knows what is needed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from capture.errors import ShopError, SpokeshaveError
from capture.shop import Session, Shop, ShopSettings
from publish.context import SessionPage
from publish.gather import Gathered, gather_session
from publish.kit.names import Names
from publish.kit.rulings.model import Said, Sort
from publish.library.statements import Statement, statements_of
from publish.page import make_page
from publish.presswork.parts import Brief, parts_of
from publish.presswork.stamps import Clock
from publish.presswork.standing import EditionStanding
from publish.presswork.store import Kept, Store
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
    shop: Shop, settings: ShopSettings, store: Store, renderer: Renderer, clock: Clock, names: Names
) -> tuple[tuple[Read, ...], frozenset[str], tuple[str, ...]]:
    """Every session that can be published, oldest first; those that can't, and one line for each of these."""
    sessions = shop.sessions()
    known = store.sessions()
    stamps = {one.slug: _stamp(one, known[one.slug], clock) for one in sessions if one.slug in known}
    untouched = frozenset(slug for slug, stamp in stamps.items() if stamp and stamp == known[slug].stamp)
    standing = EditionStanding(shop, store, sessions, untouched, names)
    reader = _Reader(settings, store, renderer, clock, standing)
    found: list[Read] = []
    problems: list[str] = []
    for session in sessions:
        kept = known.pop(session.slug, None)
        try:
            if kept is not None and session.slug in untouched:
                found.append(reader.untouched(session, kept))
            else:
                found.append(reader.looked_at(session, kept, stamps.get(session.slug, "")))
        except SpokeshaveError as error:
            store.forget(session.slug)
            problems.append(str(error))
    for slug in known:
        store.forget(slug)
    left_out = frozenset(one.slug for one in sessions) - {one.slug for one in found}
    return tuple(found), left_out, tuple(problems)


def _stamp(session: Session, kept: Kept, clock: Clock) -> str:
    try:
        return clock.stamp(session.folder, kept.brief["recording"])
    except OSError:
        return ""


class _Reader:
    """Reads sessions, each only as far as it has changed."""

    def __init__(
        self, settings: ShopSettings, store: Store, renderer: Renderer, clock: Clock, standing: EditionStanding
    ) -> None:
        self._settings = settings
        self._store = store
        self._renderer = renderer
        self._clock = clock
        self._standing = standing

    def untouched(self, session: Session, kept: Kept) -> Read:
        """A session whose files nobody touched; what others have to do with it may have changed."""
        if self._total(session, kept.own, kept.brief["said"]) == kept.sum:
            return self._as_kept(session, kept)
        return self._anew(session, kept.brief["recording"], kept.stamp, kept.own)

    def looked_at(self, session: Session, kept: Kept | None, stamp: str) -> Read:
        """A session that is known by no stamp: its files are read."""
        # Stamp and sum come first: what changes while the session is read is seen at the next publish.
        if kept is not None:
            own = _sum(session, kept.brief["recording"])
            if self._total(session, own, kept.brief["said"]) == kept.sum:
                if stamp:
                    self._store.put_session(session.slug, replace(kept, stamp=stamp))
                return self._as_kept(session, kept)
        recording = session.settings.recording
        try:
            stamp = self._clock.stamp(session.folder, recording)
        except OSError:
            stamp = ""
        return self._anew(session, recording, stamp, _sum(session, recording))

    def _total(self, session: Session, own: str, said: Sequence[tuple[Sort, str]]) -> str:
        """Over all that a session is made from: `own` is over its files, `said` has its kit as the session names it."""
        called = self._standing.names.bearing(Said(sort=sort, name=name) for sort, name in said)
        return sum_of(own, self._standing.bearing(session), called)

    def _as_kept(self, session: Session, kept: Kept) -> Read:
        return Read(session, kept.sum, Brief.of_json(kept.brief), kept.sums, self._settings, self._standing, None)

    def _anew(self, session: Session, recording: str, stamp: str, own: str) -> Read:
        made = _set(session, self._settings, self._standing)
        total = self._total(session, own, [(one.sort, one.name) for one in made.gathered.said])
        brief, parts = parts_of(made.gathered, made.page, recording, self._settings, self._renderer)
        sums = {name: sum_of(data) for name, data in parts.items() if "/" not in name}
        self._store.put_session(session.slug, Kept(stamp, own, total, brief, sums), parts)
        return Read(session, total, brief, sums, self._settings, self._standing, made)


def _set(session: Session, settings: ShopSettings, standing: Standing) -> Set:
    gathered = gather_session(session, standing)
    return Set(gathered, make_page(gathered.source, settings), settings)


def _sum(session: Session, recording: str) -> str:
    """The sum over a session's files."""
    try:
        return session_sum(session.folder, recording)
    except OSError as error:
        raise ShopError(session.folder, f"can't be read ({error})", "mend the permissions of its files") from error
