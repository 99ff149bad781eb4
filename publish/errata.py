"""The errata: what was said, what to read instead, and which session it concerns."""

from __future__ import annotations

from extract.record import Correction, Measure
from publish.context import Erratum, Link
from publish.elsewhere import earlier_than, later_than
from publish.galley import Galley
from publish.said import said_figure
from publish.wording import SCOPES


def errata(
    galley: Galley, session: Link | None = None, prefix: str = "", to_sessions: str = "../"
) -> tuple[Erratum, ...]:
    """Every statement that this session takes back, in the order in which it was taken back.

    `prefix` is the address of the session's page where the errata are listed on another one, and `session` the
    link to it; `to_sessions` leads from that page to the folder of sessions.
    """
    return tuple(_erratum(galley, one, session, prefix, to_sessions) for one in galley.record.corrections)


def retractions(galley: Galley, session: Link, prefix: str, to_sessions: str) -> tuple[Erratum, ...]:
    """The errata that concern earlier sessions, to be listed on other pages."""
    return tuple(
        _erratum(galley, one, session, prefix, to_sessions)
        for one in galley.record.corrections
        if one.scope == "earlier_session"
    )


def _erratum(galley: Galley, correction: Correction, session: Link | None, prefix: str, to_sessions: str) -> Erratum:
    withdrawn = galley.measures.get(correction.withdraws.measure or "")
    holds = galley.replacement_of(correction)
    here = correction.scope == "this_session" and not prefix
    cue_anchor = None if correction.withdraws.cue is None else galley.cue_anchor(correction.withdraws.cue)
    wrong_anchor = galley.anchor("measure", withdrawn.id) if withdrawn else cue_anchor
    wrong_moment = galley.at(withdrawn.start) if withdrawn else galley.at_cue(correction.withdraws.cue)
    right_anchor = galley.anchor("measure", holds.id) if holds else None
    return Erratum(
        anchor=galley.anchor("correction", correction.id),
        wrong=_as_said(correction, withdrawn),
        wrong_href=f"#{wrong_anchor}" if here and wrong_anchor else None,
        wrong_moment=wrong_moment if here else None,
        right=said_figure(holds) if holds else correction.replacement,
        right_href=f"{prefix}#{right_anchor}" if right_anchor else None,
        moment=galley.at(correction.start),
        quote=correction.quote,
        scope=SCOPES[correction.scope],
        in_proof=correction.source == "proof",
        later=later_than(correction.ruling.later if correction.ruling else None, to_sessions),
        earlier=earlier_than(correction.earlier, to_sessions),
        session=session,
    )


def _as_said(correction: Correction, withdrawn: Measure | None) -> str:
    """What is taken back, in the words in which it was said; what was left out is put in in square brackets.

    Takes "7/64" as "7/64 [in]", and "three", before "no, four sixteenths", as "three [3/16 in]".
    """
    if withdrawn is None:
        return correction.withdraws.text or correction.quote
    words, read = correction.withdraws.text or withdrawn.quote, withdrawn.display
    if withdrawn.unit_said or withdrawn.unit is None or words != withdrawn.quote or read == words:
        return words
    return f"{words} [{read.removeprefix(words).strip()}]"
