"""The author's own words: Markdown in, harmless markup out."""

from __future__ import annotations

from pathlib import Path

import html5lib
import pytest

from publish.note import render_note
from tests.publish.likeness import picture

HOSTILE = (
    "<script>alert(1)</script>",
    "[press](javascript:alert(1))",
    "[press](JaVaScRiPt:alert(1))",
    "[press](data:text/html,<script>alert(1)</script>)",
    "[press](vbscript:x)",
    "<img src=x onerror=alert(1)>",
    "<img src='https://tracker.example/x.png'>",
    "![x](https://tracker.example/x.png)",
    "<iframe src='https://a.example'></iframe>",
    "<style>body{display:none}</style>",
    "<a href='https://a.example' onclick='alert(1)' style='color:red' id='main'>x</a>",
    "<svg><script>alert(1)</script></svg>",
    "<form action='https://a.example'><input name=a><button>go</button></form>",
    "<base href='https://a.example'>",
    "<meta http-equiv=refresh content='0;url=https://a.example'>",
    "<h1 id='errata'>no</h1>",
    "<math><mtext></mtext><mglyph><svg><style></svg></style></mglyph></math>",
    "</main></body>",
)


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_hostile_is_left(text: str, tmp_path: Path) -> None:
    markup = str(render_note(text, tmp_path).html)
    tree = html5lib.parseFragment(markup, treebuilder="etree", namespaceHTMLElements=False)
    for element in tree.iter():
        assert element.tag not in {"script", "iframe", "style", "form", "input", "base", "meta", "svg", "math", "h1"}
        assert not set(element.attrib) & {"onclick", "onerror", "style", "id", "class"}
        assert not element.attrib.get("href", "").lower().startswith(("javascript:", "data:", "vbscript:"))
        assert element.tag != "img", "a picture from elsewhere is a request to a third party"


def test_headings_stand_below_the_pages_own(tmp_path: Path) -> None:
    markup = render_note("# First\n\n### Deep\n\n# Again\n\n###### Deeper", tmp_path).html
    tree = html5lib.parseFragment(str(markup), namespaceHTMLElements=False)
    assert [element.tag for element in tree if str(element.tag).startswith("h")] == ["h3", "h4", "h3", "h4"]


def test_a_picture_of_the_session_is_shown_and_named_for_copying(tmp_path: Path) -> None:
    file = picture(tmp_path / "stills" / "crack 1.png")
    note = render_note("![The crack](stills/crack%201.png)", tmp_path)
    assert note.pictures == ((file, "pictures/stills-crack 1.png"),)
    assert 'src="pictures/stills-crack%201.png"' in note.html
    assert 'alt="The crack"' in note.html


@pytest.mark.parametrize("named", ["../outside.png", "/etc/passwd", "missing.png", "notes.md", "stills"])
def test_a_picture_that_is_none_is_left_out_and_told(named: str, tmp_path: Path) -> None:
    folder = tmp_path / "session"
    picture(tmp_path / "outside.png")
    picture(folder / "stills" / "a.png")
    (folder / "notes.md").write_text("x")
    note = render_note(f"![x]({named})", folder)
    assert not note.pictures
    assert "<img" not in note.html
    assert named in note.warnings[0]


def test_plain_prose_lists_tables_and_links_come_through(tmp_path: Path) -> None:
    text = "A *word* on [glue](https://glue.example/why).\n\n- one\n- two\n\n| a | b |\n|---|---|\n| 1 | 2 |\n"
    markup = render_note(text, tmp_path).html
    assert "<em>word</em>" in markup
    assert '<a href="https://glue.example/why" rel="noopener noreferrer">glue</a>' in markup
    assert "<li>two</li>" in markup
    assert "<td>2</td>" in markup


def test_no_note_is_empty(tmp_path: Path) -> None:
    assert not render_note(" \n", tmp_path).html
