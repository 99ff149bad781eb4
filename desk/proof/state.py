"""All of one session that the page shows."""

from __future__ import annotations

from desk.proof.items import Items, beginning, figures, kit, queries, steps, struck_steps, wanted
from desk.proof.remarks import errata, listed_errata
from desk.proof.views import CountsView, LastView, LostView, StateView
from desk.proof.wording import act_words
from desk.proof.work import Work
from extract.rulings import may_redo, may_undo
from extract.rulings.model import OnItem, Pass
from publish.moments import clock


def state_of(work: Work, most: int | None = None) -> StateView:
    """The session's state, for the page; of a long one only its queries up to the `most`th that is open."""
    items = Items(work)
    facts = work.session.settings
    counts = _counts(work, items)
    whole = most is None or counts.queries <= most
    return StateView(
        whole=whole,
        counts=counts,
        title=facts.title,
        subject=facts.subject,
        queries=tuple(queries(work, items)) if whole else beginning(work, items, most or 0),
        figures=figures(work, items) if whole else (),
        steps=steps(work, items) if whole else (),
        struck=struck_steps(work, items) if whole else (),
        kit=kit(work, items) if whole else (),
        errata=errata(work, items) if whole else (),
        unplaced=_lost(work),
        undo=_last(may_undo(work.rulings)),
        redo=_last(may_redo(work.rulings)),
        musts=sum(one.rank == "stop" for one in work.proofed.open),
        passed=work.proofed.passed,
    )


def _counts(work: Work, items: Items) -> CountsView:
    record, open_ = work.proofed.record, {one.item.id for one in work.proofed.open}
    asked = wanted(work, items)
    return CountsView(
        queries=len(asked),
        settled=sum(one.item.id not in open_ for one in asked),
        figures=len(record.measures),
        steps=len(record.steps),
        kit=len(record.tools) + len(record.materials),
        errata=len(listed_errata(work)) + len(record.follow_ups) + len(record.doubts),
        unplaced=len(work.proofed.unplaced) + len(work.aside),
    )


def _lost(work: Work) -> tuple[LostView, ...]:
    lost = [
        LostView(
            id=one.ruling.id, act=act_words(one.ruling), words=one.ruling.on.words, clock=clock(one.ruling.on.start),
            why=one.why,
        )
        for one in work.proofed.unplaced
    ]  # fmt: skip
    torn = [
        LostView(id="", act=f"line {one.line} of rulings.json", words=one.text, clock="", why=one.why)
        for one in work.aside
    ]
    return (*lost, *torn)


def _last(ruling: OnItem | Pass | None) -> LastView | None:
    if ruling is None:
        return None
    item = "" if isinstance(ruling, Pass) else ruling.on.id
    return LastView(id=ruling.id, item=item, words=act_words(ruling))
