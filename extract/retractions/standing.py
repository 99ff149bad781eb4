"""What stands in a shop: each session's record as its own rulings and the later sessions have it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from extract.retractions.carrying import amendments, merged, traced_in
from extract.retractions.sitting import Sitting
from extract.retractions.tracing import Traced, trace
from extract.rulings.applying import apply
from extract.rulings.model import Amend
from extract.rulings.proofed import Proofed


@dataclass(frozen=True, slots=True)
class Stands:
    """One session, and what is said of it elsewhere."""

    proofed: Proofed
    """Its record as it stands; its corrections name the earlier statements that they take back."""
    retractions: tuple[Traced, ...] = ()
    """What it takes back of earlier sessions."""
    amended: tuple[Amend, ...] = ()
    """What later sessions change in it."""

    @property
    def bearing(self) -> str:
        """Tells one state from another of what other sessions have to do with this one; empty where nothing has."""
        told = [one.model_dump_json(exclude={"at"}) for one in self.amended]
        told += [f"{one.state} {one.correction.id} {one.chosen}" for one in self.retractions]
        return "\n".join(told)


def what_stands(sittings: Sequence[Sitting], known: Mapping[str, Proofed] | None = None) -> dict[str, Stands]:
    """Every session of a shop as it stands, by its folder.

    `known` are records as their own rulings alone have them, where they were worked out before. Pure. A session changes
    only earlier ones (by date, then by folder), so that no two can undo one another.
    """
    ordered = sorted(sittings, key=lambda one: one.day)
    known = known or {}
    own = [(one, known.get(one.slug) or apply(one.record, one.rulings)) for one in ordered]
    records = {sitting.slug: proofed.record for sitting, proofed in own}
    made: dict[str, list[Amend]] = {}
    stands: dict[str, Stands] = {}
    # The newest first: what it changes in a session stands before that one's words are read for still earlier ones.
    for at in reversed(range(len(own))):
        sitting, proofed = own[at]
        changed = tuple(made.get(sitting.slug, ()))
        if changed:
            proofed = apply(sitting.record, merged(sitting.rulings, changed))
        traced = trace(sitting, proofed, own[:at])
        for one in traced:
            if one.chosen is not None:
                more = amendments(one, sitting, proofed.record, records[one.chosen.session])
                made.setdefault(one.chosen.session, []).extend(more)
        named = replace(proofed, record=traced_in(proofed.record, traced)) if traced else proofed
        stands[sitting.slug] = Stands(named, traced, changed)
    return {sitting.slug: stands[sitting.slug] for sitting, _ in own}
