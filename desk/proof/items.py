"""Everything on the page that takes a ruling, made from a session at work."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from desk.proof.elsewhere import told_of
from desk.proof.figures import figure_view, readings
from desk.proof.said import Context
from desk.proof.views import ItemView, RuledView
from desk.proof.wording import GROUPS, PHASES, SAID_WRONG, WANTED, act_words
from desk.proof.work import Work
from extract.record import Correction, Finding, Measure, Mention, Remark, Step
from extract.rulings import Open, Rank
from extract.rulings.items import kit_id, remark_id
from extract.rulings.made import new_id
from extract.rulings.model import NAMED_ONCE, Add, Item, Kind, Note, OnItem, Pass, Split
from publish.kit import Names
from publish.kit.naming import mentions
from publish.kit.rulings.model import Said, Sort
from publish.moments import clock
from publish.wording import sentence

_NEAR = 20.0
"""Seconds between figures that one clip can hold; a conflict may lie an hour back."""
_BREATH = 4.0
"""Seconds that words are taken to last where no transcript tells."""


class Items:
    """Makes the items of one session; whatever is looked up for several of them is looked up once."""

    def __init__(self, work: Work) -> None:
        self._work = work
        self._context = Context(work.transcript)
        # What was settled or struck is not in the record as ruled; the untouched one has it, with the ids it goes by.
        records = (work.untouched.record, work.proofed.record)
        self._measures = {one.id: one for record in records for one in record.measures}
        self._findings = {one.id: one for record in records for one in record.findings}
        self._corrections = {one.id: one for record in records for one in record.corrections}
        self._remarks = {one.id: one for record in records for one in (*record.follow_ups, *record.doubts)}
        self._steps = {one.id: one for record in records for one in record.steps}
        self._rulings: dict[str, list[OnItem]] = {}
        for ruling in work.proofed.in_force:
            if not isinstance(ruling, Pass):
                self._rulings.setdefault(work.proofed.placed.get(ruling.id, ""), []).append(ruling)

    def knows(self, item_id: str) -> bool:
        """Whether the record has it, or had it before a ruling took it out."""
        kept = (self._findings, self._measures, self._corrections, self._remarks, self._steps)
        return any(item_id in one for one in kept)

    def query(self, item_id: str, rank: Rank, message: str, settled: bool) -> ItemView | None:
        """An item of the list of what needs a ruling; null where its record is gone."""
        made = self._by_id(item_id)
        if made is None:
            return None
        title = message if made.kind in ("finding", "measure", "correction") else made.title
        return made.model_copy(
            update={
                "group": GROUPS[rank],
                "wanted": "" if settled else WANTED[rank],
                "settled": settled,
                "title": title,
            }
        )

    def measure(self, one: Measure) -> ItemView:
        """A figure of the whole list of figures."""
        what = figure_view(one).what
        title = sentence(f"{what or f'“{one.quote}”'}: {one.display}").removesuffix(".")
        figures = (one,)
        made = self._item(
            "measure", one.id, PHASES[one.phase], title, one.start, one.end, one.quote, figures=figures,
        )  # fmt: skip
        if made.ruled is None and not one.stands:
            return made.model_copy(update={"ruled": RuledView(act="withdrawn", words="taken back on film")})
        return made

    def step(self, one: Step) -> ItemView:
        """A step of the procedure."""
        title = f"{one.number}. {one.text}" if one.number else one.text
        figures = tuple(self._measures[name] for name in one.measures if name in self._measures)
        made = self._item("step", one.id, "step", title, one.start, one.end, one.quote, text=one.text)
        return made.model_copy(update={"figures": tuple(figure_view(m).model_copy(update={"id": ""}) for m in figures)})

    def struck_step(self, item: Item) -> ItemView:
        """A step that was struck; of one that a ruling had made, only its words and its second are left."""
        if item.id in self._steps:
            return self.step(self._steps[item.id].model_copy(update={"number": 0}))
        end = self._context.cue_end(item.cue, item.start + _BREATH)
        text = self._made_texts().get(item.id, item.words)
        return self._item("step", item.id, "step", text, item.start, end, item.words, text=text)

    def named(self, kind: Kind, name: str, item_id: str, cue: int) -> ItemView:
        """A tool or material, at the cue that names it first."""
        start = self._context.cue_start(cue, 0.0)
        end = self._context.cue_end(cue, start + _BREATH)
        made = self._item(kind, item_id, kind, name, start, end, name, text=name)
        found = re.search(rf"\b{re.escape(name)}\S*", made.quote, re.IGNORECASE)
        if found is None:
            return made
        before, after = made.quote[: found.start()], made.quote[found.end() :]
        around = {"before": f"{made.before} {before}".strip(), "after": f"{after} {made.after}".strip()}
        return made.model_copy(update={**around, "quote": found[0]})

    def struck(self, item: Item) -> ItemView:
        """A correction, follow-up or doubt that was struck; of one that was added, its words and second are left."""
        if item.id in self._corrections:
            return self.correction(self._corrections[item.id])
        if item.id in self._remarks:
            return self.remark(item.kind, self._remarks[item.id])
        text = self._made_texts().get(item.id, item.words)
        end = self._context.cue_end(item.cue, item.start + _BREATH)
        return self._item(item.kind, item.id, item.kind, text, item.start, end, item.words, text=text)

    def _made_texts(self) -> dict[str, str]:
        """What the steps say that splits and additions made."""
        texts: dict[str, str] = {}
        for ruling in self._work.proofed.in_force:
            if isinstance(ruling, Split):
                texts |= {new_id("step", ruling.id, n): part.text for n, part in enumerate(ruling.into) if n}
            elif isinstance(ruling, Add):
                texts[ruling.on.id] = ruling.to.text or ruling.on.words
        return texts

    def _by_id(self, item_id: str) -> ItemView | None:
        if item_id in self._findings:
            return self._finding(self._findings[item_id])
        if item_id in self._measures:
            return self.measure(self._measures[item_id])
        if item_id in self._corrections:
            return self.correction(self._corrections[item_id])
        if item_id in self._remarks:
            return self.remark("doubt", self._remarks[item_id])
        if item_id in self._steps:
            return self.step(self._steps[item_id])
        return None

    def _finding(self, one: Finding) -> ItemView:
        measures = tuple(self._measures[name] for name in one.measures if name in self._measures)
        start, end = self._span(one, measures)
        because = "said_wrong" if one.kind in SAID_WRONG else "heard_wrong"
        made = self._item(
            "finding", one.id, "settle", one.message, start, end, one.quote, figures=measures, finding=one,
            because=because, source=one.source,
        )  # fmt: skip
        if made.ruled is not None:
            return made
        amended = [self._ruled(m.id) for m in measures]
        return made.model_copy(update={"ruled": next((ruled for ruled in amended if ruled is not None), None)})

    def _span(self, one: Finding, measures: tuple[Measure, ...]) -> tuple[float, float]:
        """The seconds of a finding's figures, of those that were said near it; else of its cue."""
        near = [measure for measure in measures if abs(measure.start - one.start) < _NEAR]
        if not near:
            return one.start, self._context.cue_end(max(one.cues, default=one.cue), one.start + _BREATH)
        return min(one.start, *(measure.start for measure in near)), max(measure.end for measure in near)

    def correction(self, one: Correction) -> ItemView:
        """A statement taken back; of one of an earlier session, with the statements that may be meant."""
        title = f"“{one.withdraws.text}”: read {one.replacement}"
        made = self._item(
            "correction", one.id, "correction", title, one.start, one.end, one.quote, text=one.replacement
        )
        traced, candidates = told_of(self._work, one.id)
        return made.model_copy(update={"traced": traced, "candidates": candidates}) if traced else made

    def remark(self, kind: Kind, one: Remark) -> ItemView:
        """Something left for later, or to look up."""
        end = self._context.cue_end(one.cue, one.start + _BREATH)
        return self._item(kind, one.id or remark_id(kind, one.text), kind, one.text, one.start, end, "", text=one.text)

    def _item(
        self, kind: str, item_id: str, group: str, title: str, start: float, end: float, quote: str, *,
        text: str = "", source: str = "", because: str = "heard_wrong", figures: tuple[Measure, ...] = (),
        finding: Finding | None = None,
    ) -> ItemView:  # fmt: skip
        said = self._context.around(start, max(end, start + 0.1), quote)
        return ItemView.model_validate(
            {
                "id": item_id, "kind": kind, "group": group, "wanted": "", "settled": False, "title": title,
                "wording": "", "text": text, "start": start, "end": max(end, start + 0.1), "clock": clock(start),
                "before": said.before, "quote": said.quote, "after": said.after, "source": source,
                "because": because, "figures": tuple(figure_view(one) for one in figures),
                "readings": readings(figures, finding), "ruled": self._ruled(item_id),
                "notes": tuple(one.text for one in self._rulings.get(item_id, ()) if isinstance(one, Note)),
            }
        )  # fmt: skip

    def _ruled(self, item_id: str) -> RuledView | None:
        """The last ruling on an item that is no note."""
        given = [one for one in self._rulings.get(item_id, ()) if not isinstance(one, Note)]
        return RuledView(act=given[-1].act, words=act_words(given[-1])) if given else None


def beginning(work: Work, items: Items, most: int) -> tuple[ItemView, ...]:
    """The first queries up to the `most`th that is still open, with all that was settled among them."""
    return tuple(_up_to(queries(work, items), most))


def _up_to(made: Iterable[ItemView], most: int) -> Iterator[ItemView]:
    for one in made:
        yield one
        most -= not one.settled
        if most <= 0:
            return


def queries(work: Work, items: Items) -> Iterator[ItemView]:
    """What needs a ruling, the worst first, what was settled kept in its place."""
    now = {one.item.id for one in work.proofed.open}
    for one in wanted(work, items):
        made = items.query(one.item.id, one.rank, one.message, one.item.id not in now)
        if made is not None:
            yield made


def wanted(work: Work, items: Items) -> list[Open]:
    """What needs a ruling, or needed one before it was settled, and is in the record still; the worst first."""
    found: dict[str, Open] = {one.item.id: one for one in (*work.untouched.open, *work.proofed.open)}
    return sorted((one for one in found.values() if items.knows(one.item.id)), key=_worst_first)


def _worst_first(one: Open) -> tuple[int, float]:
    return list(GROUPS).index(one.rank), one.item.start


def figures(work: Work, items: Items) -> tuple[ItemView, ...]:
    """All measures, by phase, struck ones among them."""
    phases = list(PHASES)
    ordered = sorted(work.proofed.record.measures, key=lambda one: (phases.index(one.phase), one.start))
    return tuple(items.measure(one) for one in ordered)


def steps(work: Work, items: Items) -> tuple[ItemView, ...]:
    """The procedure as it stands."""
    return tuple(items.step(one) for one in work.proofed.record.steps)


def struck_steps(work: Work, items: Items) -> tuple[ItemView, ...]:
    """Steps that were struck, to have them back."""
    return tuple(items.struck_step(one.item) for one in work.proofed.struck if one.item.kind == "step")


def kit(work: Work, items: Items) -> tuple[ItemView, ...]:
    """Tools and materials, those that were struck behind them, to have them back."""
    record = work.proofed.record
    kept = [_named(items, work.names, sort, one) for sort, one in mentions(record)]
    gone = [one.item for one in work.proofed.struck if one.item.kind in NAMED_ONCE]
    return (*kept, *(items.named(one.kind, one.words, one.id, one.cue) for one in gone))


def _named(items: Items, names: Names, sort: Sort, one: Mention) -> ItemView:
    """A thing as the session has it, and what it is called in the whole shop where that is something else."""
    made = items.named(sort, one.name, one.id or kit_id(sort, one.name), min(one.cues, default=0))
    called = names.of(Said(sort=sort, name=one.name))
    if called is None or called.name == one.name:
        return made
    return made.model_copy(update={"wording": f"Called “{called.name}” in the whole shop"})
