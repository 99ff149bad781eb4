"""Makes up a session page from a session's record and transcript."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from pathlib import PurePosixPath
from typing import Literal

from capture.shop import ShopSettings
from extract.record import Record
from publish import timeline
from publish.addresses import SCHEMA_FILE, SESSION_HOME, absolute, address
from publish.captions import chapter_marks
from publish.context import Erratum, Link, Player, SessionPage
from publish.dates import in_words
from publish.errata import errata
from publish.film import BENEATH, SLIPS, Slip, beneath, errata_stills, slips_of
from publish.galley import Galley
from publish.job_line import draw_job
from publish.library.comparing import Compared
from publish.library.reference import Key
from publish.linked_data import linked_data
from publish.making import making_of, proof_of
from publish.moments import clock
from publish.pairs import pair_up
from publish.parts import PARTS
from publish.procedure import cautions, named, queries, remarks, stages
from publish.rows import Rows
from publish.source import SessionSource
from publish.spoken import SpokenWords
from publish.summary import summarise
from publish.wording import STANDING_CAUTION

SOUND_ONLY = frozenset({".wav", ".mp3", ".m4a", ".aac", ".flac", ".ogg", ".oga", ".opus", ".aif", ".aiff", ".weba"})
_LANGUAGE = re.compile(r"[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*")
_COLUMNS = {
    "as_said": ("As said", "In other units"),
    "metric": ("Metric", "Inches, °F and kin"),
    "imperial": ("Inches, °F and kin", "Metric"),
}


@dataclass(frozen=True, slots=True)
class Company:
    """What a page is told of the shop's other sessions."""

    history: tuple[Link, ...] = ()
    """Other sessions on the same work, oldest first."""
    later_errata: tuple[Erratum, ...] = ()
    """What later sessions on the same work took back."""
    work: Link | None = None
    """The page of the work in the library."""
    procedures: tuple[Link, ...] = ()
    """The pages of its procedures over all sessions."""
    compared: tuple[tuple[Key, Compared], ...] = ()
    """The drawings of all the shop's figures of what it measured."""


def make_page(source: SessionSource, shop: ShopSettings, company: Company | None = None) -> SessionPage:
    """The page of one session, all lookups done."""
    company = company or Company()
    galley = Galley(source, shop, taken=PARTS.reserved())
    record, facts = galley.record, galley.record.session
    rows = Rows(galley)
    pairs = pair_up(rows)
    proof = proof_of(source)
    own_errata = errata(galley)
    web = absolute(shop.site_address, "sessions", source.slug)
    language = source.transcript.language if source.transcript else "en"
    spoken = SpokenWords(galley).spoken()
    steps = stages(galley, rows)
    slips = slips_of(galley)
    made = SessionPage(
        title=facts.title,
        date=facts.date or "",
        date_text=in_words(facts.date),
        subject=facts.subject or "",
        trade=facts.trade or "",
        author=shop.author,
        licence=shop.licence,
        shop=Link(f"{SESSION_HOME}index.html", shop.title),
        assets=f"{SESSION_HOME}assets/",
        address=web,
        length=clock(facts.duration),
        language=language if _LANGUAGE.fullmatch(language) else "en",
        proof=proof,
        player=_player(source, record, bool(slips)),
        summary=summarise(record, rows, pairs),
        note=source.note,
        queries=queries(galley, rows),
        pairs=pairs,
        aims=any(pair.aim for pair in pairs),
        standing_caution=STANDING_CAUTION,
        cautions=cautions(galley),
        job=draw_job(record, steps),
        stages=steps,
        columns=_COLUMNS[shop.units] if any(row.second for _, row in rows.all) else _COLUMNS[shop.units][:1],
        groups=rows.groups(),
        comparisons=(),
        materials=named(galley, record.materials),
        tools=named(galley, record.tools),
        errata=own_errata,
        later_errata=company.later_errata,
        follow_ups=remarks(galley, record.follow_ups),
        doubts=remarks(galley, record.doubts),
        history=company.history,
        work=company.work,
        procedures=company.procedures,
        spoken=spoken,
        making=making_of(source, proof),
        files=_files(source, slips),
        beneath="",
        linked_data=linked_data(source, shop.author, shop.licence, web, own_errata),
    )
    if source.recording is None:
        return made
    return replace(made, beneath=beneath(made, chapter_marks(record), slips, shop.text_room))


def _player(source: SessionSource, record: Record, corrected: bool) -> Player | None:
    if source.recording is None:
        return None
    sound_only = PurePosixPath(source.recording).suffix.lower() in SOUND_ONLY
    kind: Literal["video", "audio"] = "audio" if sound_only else "video"
    return Player(
        kind=kind,
        href=address(source.recording),
        name=source.recording,
        captions=source.transcript is not None,
        corrections=corrected,
        timeline=timeline.draw(record),
    )


def _files(source: SessionSource, slips: tuple[Slip, ...]) -> tuple[Link, ...]:
    heard = (
        Link("captions.vtt", "Captions, corrected in brackets (WebVTT)"),
        Link("transcript.txt", "Transcript as plain text"),
        Link("transcript.json", "Transcript with the seconds of every word (JSON)"),
    )
    stills = errata_stills(source.record.session.title, slips)
    of_film = (Link(BENEATH, "Text to set beneath the film"),)
    put_right = (
        Link(SLIPS, "What is put right, at the second it is said (WebVTT)"),
        *(Link(name, f"Still for the film: {still.desc.rstrip('.')} (SVG)") for name, still in stills.items()),
    )
    card = (Link("card.html", "Bench card: the procedure on one sheet, to print"),)
    return (
        *(card if source.record.steps else ()),
        Link("record.json", "The record (JSON)"),
        Link(f"{SESSION_HOME}{SCHEMA_FILE}", "What the record’s fields mean (JSON Schema)"),
        Link("chapters.vtt", "Chapters (WebVTT)"),
        *(put_right if slips else ()),
        *(of_film if source.recording is not None else ()),
        *(heard if source.transcript is not None else ()),
    )
