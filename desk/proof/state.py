"""All of one session that the page shows."""

from __future__ import annotations

from desk.proof.items import Items, figures, queries, steps, struck_steps
from desk.proof.views import LastView, LostView, StateView
from desk.proof.wording import act_words
from desk.proof.work import Work
from extract.rulings import may_redo, may_undo
from extract.rulings.model import OnItem, Pass
from publish.moments import clock


def state_of(work: Work) -> StateView:
    """The session's state, for the page."""
    items = Items(work)
    facts = work.session.settings
    return StateView(
        title=facts.title,
        subject=facts.subject,
        queries=queries(work, items),
        figures=figures(work, items),
        steps=steps(work, items),
        struck=struck_steps(work, items),
        unplaced=_lost(work),
        undo=_last(may_undo(work.rulings)),
        redo=_last(may_redo(work.rulings)),
        musts=sum(one.rank == "stop" for one in work.proofed.open),
        passed=work.proofed.passed,
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
