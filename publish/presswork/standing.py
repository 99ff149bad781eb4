"""What stands in a shop, for one edition of its site: as `publish.standing` has it, without reading all of it again.

A retraction is traced again only where its session, one of the same work, or one in which it may mean something has
changed; what it came to otherwise is in the store.
"""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import replace
from functools import cache
from typing import Any

import orjson
from pydantic import TypeAdapter

from capture.errors import SpokeshaveError
from capture.shop import Session, Shop
from extract.retractions import Sitting, Stands, Traced
from extract.retractions.carrying import amendments, merged, traced_in
from extract.retractions.tracing import trace
from extract.rulings import Proofed, RulingLog, apply
from extract.rulings.model import Amend
from publish.kit.names import Names
from publish.presswork.sieve import Head, Sieve, head_in
from publish.presswork.stance import Stance, stance_of
from publish.presswork.store import Store, StoreBrokenError
from publish.presswork.sums import file_sum, sum_of
from publish.records import machine_record
from publish.standing import Standing

_HEADS, _STANCE, _TRACED = "heads", "stance", "traced"


class EditionStanding(Standing):
    """What stands in the sessions of one shop at the beginning of a publish."""

    def __init__(
        self, shop: Shop, store: Store, sessions: Sequence[Session], untouched: Set[str], names: Names | None = None
    ) -> None:
        """`untouched` are sessions whose files are as they were the last time; `names` hold for the whole edition."""
        super().__init__(shop)
        self._given = names or Names()
        self._store = store
        self._sessions = {one.slug: one for one in sessions}
        self._own_sittings: dict[str, Sitting] = {}
        self._own: dict[str, Proofed] = {}
        self._done: dict[str, tuple[Traced, ...]] = {}
        self._made: dict[str, list[Amend]] = {}
        self._bearings: dict[str, str] = {}
        self._within: dict[str, tuple[str, ...]] = {}
        self._stances: dict[str, Stance] = {}
        self._changed: set[str] = set()
        self._heads = self._read_heads(untouched)
        self._trace_all()

    def of(self, session: Session) -> Stands:
        """A session as it stands. Raises `ShopError` and `RulingLogError` where its files can't be read."""
        slug = session.slug
        proofed = self._amended(slug)
        changed = tuple(self._made.get(slug, ()))
        if slug not in self._within:
            return Stands(proofed, (), changed)
        if slug not in self._done:
            self._done[slug] = self._traced(slug, proofed)
        traced = self._done[slug]
        named = traced_in(proofed.record, traced)
        return Stands(replace(proofed, record=named), traced, changed)

    @property
    def names(self) -> Names:
        """What a person calls tools and materials in the whole shop."""
        return self._given

    def bearing(self, session: Session) -> str:
        """Tells one state from another of what other sessions have to do with this one; empty where nothing has."""
        return self._bearings.get(session.slug, "")

    def _read_heads(self, untouched: Set[str]) -> dict[str, Head]:
        """Of every session that can be read; stances are only made where their files have changed."""
        kept = {slug: head_in(one) for slug, one in (self._store.memo(_HEADS, "")[1] or {}).items()}
        heads: dict[str, Head] = {}
        for slug, session in self._sessions.items():
            known = kept.get(slug)
            if known is not None and slug in untouched:
                heads[slug] = known
                continue
            files = (session.record_file, session.rulings_file, session.folder / "session.toml")
            total = sum_of(*(file_sum(path) for path in files))
            if known is not None and known.sum == total:
                heads[slug] = known
                continue
            try:
                stance = self._stances[slug] = stance_of(self._own_sitting(slug), self._proofed(slug))
            except SpokeshaveError:
                continue
            heads[slug] = Head(total, stance.day, stance.subject, bool(stance.claims))
            self._changed.add(slug)
        fresh = {slug: (heads[slug].sum, orjson.dumps(self._stances[slug].to_json())) for slug in self._changed}
        self._store.put_memos(_STANCE, fresh, kept.keys() - heads.keys())
        if heads != kept:
            self._store.put_memos(_HEADS, {"": ("", orjson.dumps(heads))})
        return heads

    def _trace_all(self) -> None:
        """The newest first: what it changes in a session stands before that one's words are read for earlier ones."""
        known = self._store.memos(_TRACED)
        fresh: dict[str, tuple[str, bytes]] = {}
        order = sorted(self._heads, key=lambda slug: self._heads[slug].day)
        sieve = Sieve(self._store, self._heads, self._changed, self._stance)
        for at in reversed(range(len(order))):
            slug = order[at]
            changed = self._made.get(slug, [])
            if not changed and not self._heads[slug].claims:
                continue
            told = [one.model_dump_json(exclude={"at"}) for one in changed]
            stance = self._stance(slug)
            if changed and stance.claims:
                stance = stance_of(self._own_sitting(slug), self._amended(slug))
            if stance.claims:
                self._within[slug] = sieve.meant(slug, stance, order[:at])
                total = sum_of(slug, self._heads[slug].sum, *told, *self._sums_of(self._within[slug]))
                kept_sum, kept = known.get(slug, ("", None))
                if kept_sum != total:
                    kept = self._outcome(slug)
                    fresh[slug] = (total, orjson.dumps(kept))
                for one in kept["amends"]:
                    amend = _amend().validate_json(one["amend"])
                    self._made.setdefault(one["session"], []).append(amend)
                told += kept["told"]
            if told:
                self._bearings[slug] = "\n".join(told)
        sieve.close()
        self._store.put_memos(_TRACED, fresh, known.keys() - self._within.keys())

    def _stance(self, slug: str) -> Stance:
        known = self._stances.get(slug)
        if known is None:
            total, kept = self._store.memo(_STANCE, slug)
            if kept is None or total != self._heads[slug].sum:
                raise StoreBrokenError
            known = self._stances[slug] = Stance.of_json(kept)
        return known

    def _sums_of(self, slugs: Sequence[str]) -> list[str]:
        return [text for slug in slugs for text in (slug, self._heads[slug].sum)]

    def _outcome(self, slug: str) -> dict[str, Any]:
        proofed = self._amended(slug)
        traced = self._done[slug] = self._traced(slug, proofed)
        sitting = self._own_sitting(slug)
        amends = [
            {"session": one.chosen.session, "amend": amend.model_dump_json()}
            for one in traced
            if one.chosen is not None
            for amend in amendments(one, sitting, proofed.record, self._proofed(one.chosen.session).record)
        ]
        return {"amends": amends, "told": [f"{one.state} {one.correction.id} {one.chosen}" for one in traced]}

    def _traced(self, slug: str, proofed: Proofed) -> tuple[Traced, ...]:
        return trace(self._own_sitting(slug), proofed, [self._before(one) for one in self._within[slug]])

    def _before(self, slug: str) -> tuple[Sitting, Proofed]:
        """A session in which something may be meant: no more of it is worked out than a trace looks at."""
        sitting = self._own_sitting(slug)
        bare = not sitting.rulings and slug not in self._own
        return sitting, Proofed(sitting.record, sitting.record) if bare else self._proofed(slug)

    def _amended(self, slug: str) -> Proofed:
        """A session with its own rulings and what later sessions change in it."""
        sitting, changed = self._own_sitting(slug), self._made.get(slug)
        return apply(sitting.record, merged(sitting.rulings, changed)) if changed else self._proofed(slug)

    def _proofed(self, slug: str) -> Proofed:
        """A session with its own rulings."""
        if slug not in self._own:
            sitting = self._own_sitting(slug)
            self._own[slug] = apply(sitting.record, sitting.rulings)
        return self._own[slug]

    def _own_sitting(self, slug: str) -> Sitting:
        if slug not in self._own_sittings:
            session = self._sessions[slug]
            record = machine_record(session)
            self._own_sittings[slug] = Sitting(slug, record, RulingLog(session.rulings_file).read().rulings)
        return self._own_sittings[slug]


@cache
def _amend() -> TypeAdapter[Amend]:
    return TypeAdapter(Amend)
