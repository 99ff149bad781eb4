"""Records for other programs: CSV, JSON and Markdown, read again by libraries."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace

import jsonschema
import markdown
import pytest
from html5lib import HTMLParser

from extract.record import Record, Ruled, record_schema
from publish.exports import as_csv, as_json, as_markdown
from publish.exports.markdown import escaped
from tests.publish.hostile import HOSTILE, hostile_source
from tests.publish.session import source


def test_csv_has_a_line_a_figure_and_reads_back() -> None:
    # RFC 4180: CRLF line ends and a heading line; read by the standard library.
    text = as_csv([source()])
    assert text.count("\r\n") >= len(source().record.measures) + 1
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    assert [row["id"] for row in rows] == [one.id for one in source().record.measures]
    assert [float(row["value"]) for row in rows] == [one.value for one in source().record.measures]
    assert {row["stands"] for row in rows} == {"yes", "no"}


def test_a_formula_in_a_talk_stays_words_in_a_spreadsheet() -> None:
    session = source()
    hostile = session.record.measures[0].model_copy(update={"quote": '=HYPERLINK("http://heron.example")'})
    record = session.record.model_copy(update={"measures": (hostile,)})
    (row,) = csv.DictReader(io.StringIO(as_csv([replace(session, record=record)]), newline=""))
    assert row["quote"].startswith("'=")


def test_json_holds_whole_records_that_are_valid_by_the_schema() -> None:
    (one,) = json.loads(as_json([source()]))
    jsonschema.Draft202012Validator(record_schema()).validate(one["record"])
    assert Record.model_validate(one["record"]) == source().record


def test_what_a_person_struck_is_told_and_not_worked_to() -> None:
    session = source()
    ruled = Ruled(verdict="strike", ruling="r-1")
    measures = (session.record.measures[0].model_copy(update={"ruling": ruled}), *session.record.measures[1:])
    steps = (session.record.steps[0].model_copy(update={"ruling": ruled}), *session.record.steps[1:])
    struck = replace(session, record=session.record.model_copy(update={"measures": measures, "steps": steps}))
    text = as_markdown([struck])
    assert "(struck)" in text
    assert escaped(steps[0].text) not in text
    assert next(csv.DictReader(io.StringIO(as_csv([struck]), newline="")))["ruling"] == "strike"


def test_markdown_reads_as_a_page() -> None:
    html = markdown.markdown(as_markdown([source()]), extensions=["tables"])
    tree = HTMLParser(namespaceHTMLElements=False).parse(html)
    assert [one.text for one in tree.iter("h2")] == [
        "Figures", "Procedure", "Errata", "Cautions", "To settle, to check", "Left for later", "To look up", "Tools",
        "Materials",
    ]  # fmt: skip
    assert len(list(tree.iter("tr"))) == len(source().record.measures) + 1
    assert "local codes" in html


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_make_no_markup(text: str) -> None:
    html = markdown.markdown(as_markdown([hostile_source(text)]), extensions=["tables"])
    tree = HTMLParser(namespaceHTMLElements=False).parse(html)
    assert {one.tag for one in tree.iter() if isinstance(one.tag, str)} <= {
        "html", "head", "body", "h1", "h2", "p", "ul", "ol", "li", "table", "thead", "tbody", "tr", "th", "td",
    }  # fmt: skip


@pytest.mark.parametrize("text", ["1. no list", "- no list", "# no heading", "*not* `code`", "a & b < c", "[no](link)"])
def test_marks_are_escaped(text: str) -> None:
    html = markdown.markdown(escaped(text))
    tree = HTMLParser(namespaceHTMLElements=False).parse(html)
    assert "".join(tree.itertext()).strip() == text
    assert {one.tag for one in tree.iter()} <= {"html", "head", "body", "p"}
