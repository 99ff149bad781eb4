"""The files of one session's published folder."""

from __future__ import annotations

from pathlib import Path

from capture.shop import ShopSettings
from capture.step_stills import tenths_of
from publish.captions import captions, chapters, plain_text
from publish.card import make_card
from publish.context import SessionPage
from publish.film import BENEATH, SLIPS, errata_stills, slip_cues, slips_of
from publish.galley import Galley
from publish.gather import Gathered
from publish.parts import PARTS
from publish.procedure import STILLS
from publish.render import Renderer


def session_texts(one: Gathered, page: SessionPage, renderer: Renderer) -> dict[str, str]:
    """Every file of a session's published folder that is made of text, by name."""
    source = one.source
    texts = {
        "index.html": renderer.session(page),
        "record.json": source.record.to_json() + "\n",
        "chapters.vtt": chapters(source.record),
    }
    if source.transcript is not None:
        texts["captions.vtt"] = captions(page.spoken)
        texts["transcript.txt"] = plain_text(page.spoken)
        texts["transcript.json"] = source.transcript.to_json() + "\n"
    if page.beneath:
        texts[BENEATH] = page.beneath
    slips = slips_of(Galley(source, ShopSettings(), taken=PARTS.reserved()))
    if slips:
        texts[SLIPS] = slip_cues(slips)
        texts |= {name: renderer.still(still) for name, still in errata_stills(page.title, slips).items()}
    card = make_card(page, source.record)
    if card is not None:
        texts["card.html"] = renderer.card(card)
    return texts


def session_files(one: Gathered) -> dict[str, Path]:
    """Every other file of it: the recording and pictures, by name, where they lie."""
    files = {name: picture for picture, name in one.note.pictures}
    stills = one.source.stills
    shown = (tenths_of(step.start) for step in one.source.record.steps)
    files |= {f"{STILLS}/{tenths}.jpg": stills[tenths] for tenths in shown if tenths in stills}
    if one.recording is not None and one.source.recording is not None:
        files[one.source.recording] = one.recording
    return files
