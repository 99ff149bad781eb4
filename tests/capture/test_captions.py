"""Caption and transcript files become transcripts, and no word of them is lost or made up."""

from __future__ import annotations

import json
from pathlib import Path

import av
import pysubs2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.captions import is_caption_file, read_captions
from capture.errors import TranscriptError
from capture.transcript import Transcript
from tests.capture.cases import Case, cases


def shown(transcript: Transcript) -> str:
    return "\n".join(f"{cue.start:.3f} {cue.end:.3f} {cue.text}" for cue in transcript.cues)


def holds_together(transcript: Transcript) -> None:
    before = 0.0
    for cue in transcript.cues:
        assert cue.text == " ".join(word.text for word in cue.words)
        assert cue.words
        assert before <= cue.start <= cue.end
        times = [cue.start, *(moment for word in cue.words for moment in (word.start, word.end)), cue.end]
        assert times == sorted(times)
        assert all(word.text.split() == [word.text] for word in cue.words)
        before = cue.end


@pytest.mark.parametrize("case", cases("captions.txt"), ids=lambda case: case.title)
def test_caption_files(case: Case, tmp_path: Path) -> None:
    ends = "\r\n" if "Windows" in case.title else "\n"
    path = tmp_path / ("talk.vtt" if case.given.startswith("WEBVTT") else "talk.srt")
    path.write_bytes((case.given + "\n").replace("\n", ends).encode())
    transcript = read_captions(path)
    assert shown(transcript) == case.expected
    holds_together(transcript)
    assert (transcript.source, transcript.ear, transcript.word_times) == (path.name, None, "spread")


def write(path: Path, content: str | bytes) -> Path:
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return path


def test_a_byte_order_mark_is_no_text(tmp_path: Path) -> None:
    path = write(tmp_path / "a.vtt", b"\xef\xbb\xbfWEBVTT\r\n\r\n00:01.000 --> 00:02.000\r\nbone\r\n")
    assert shown(read_captions(path)) == "1.000 2.000 bone"


def test_times_are_spread_by_length(tmp_path: Path) -> None:
    path = write(tmp_path / "a.vtt", "WEBVTT\n\n00:00.000 --> 00:04.000\nabc abcdefg abc\n")
    words = read_captions(path).cues[0].words
    assert [(word.start, word.end) for word in words] == [(0, 1), (1, 3), (3, 4)]
    assert all(word.probability is None for word in words)


def test_timestamp_tags_time_their_words(tmp_path: Path) -> None:
    # WebVTT 4.2.2: a timestamp tag is the moment from which what follows it applies.
    path = write(
        tmp_path / "a.vtt",
        "WEBVTT\n\n00:00.000 --> 00:04.000\nset<00:01.000><c> it</c><00:03.000><c> to three</c>\n",
    )
    words = read_captions(path).cues[0].words
    assert [(word.text, word.start) for word in words[:3]] == [("set", 0), ("it", 1), ("to", 3)]


@pytest.mark.parametrize(("name", "expected"), [("a.vtt", True), ("A.SRT", True), ("a.json", True), ("a.mp4", False)])
def test_names_of_caption_files(name: str, expected: bool) -> None:
    assert is_caption_file(Path(name)) is expected


def said_of(path: Path) -> str:
    with pytest.raises(TranscriptError) as caught:
        read_captions(path)
    line = str(caught.value)
    assert "\n" not in line
    assert line.startswith(f"{path}: ")
    assert "; " in line, "a remedy is missing"
    return line


@pytest.mark.parametrize(
    ("name", "content", "problem"),
    [
        ("empty.vtt", "", "the file is empty"),
        ("blank.srt", "\n \n", "the file is empty"),
        ("header.vtt", "WEBVTT\n\nNOTE nothing yet\n", "holds no captions"),
        ("letter.srt", "Dear customer,\nyour clock is ready.\n", "holds no captions"),
        ("binary.vtt", bytes(range(256)) * 4, "is no text file"),
        ("wide.srt", "1\n00:00:01,000 --> 00:00:02,000\nbone\n".encode("utf-16"), "is written in UTF-16"),
        ("latin.srt", "1\n00:00:01,000 --> 00:00:02,000\n½ inch\n".encode("latin-1"), "line 3 is not in UTF-8"),
        (
            "times.vtt",
            "WEBVTT\n\n00:01.000 --> 00:02.000\na\n\n0:1.5 -> 0:2\nb\n\n00:00:03 --> 00:00:04\nc\n",
            "the times in line 9 can't be read (00:00:03 --> 00:00:04)",
        ),
        ("unnumbered.srt", "00:00:01,000 --> 00:00:02,000\nbone\n", "is neither WebVTT nor SRT"),
        ("torn.json", '{"schema": "spokeshave-transcript/1", ', "is not JSON"),
        ("other.json", '{"schema": "someone-elses/3", "cues": []}', "its schema is 'someone-elses/3'"),
        ("newer.json", '{"schema": "spokeshave-transcript/9"}', "its schema is 'spokeshave-transcript/9'"),
        ("list.json", "[1, 2]", "is not a transcript"),
        ("bare.json", '{"schema": "spokeshave-transcript/1"}', "is not a transcript (source: field required)"),
    ],
)
def test_files_that_cannot_be_read(tmp_path: Path, name: str, content: str | bytes, problem: str) -> None:
    assert problem in said_of(write(tmp_path / name, content))


def test_missing_files_and_folders(tmp_path: Path) -> None:
    assert "there is no such file" in said_of(tmp_path / "gone.vtt")
    assert "is a folder" in said_of(tmp_path)


def test_a_transcript_comes_back_as_it_was_written(tmp_path: Path) -> None:
    captions = write(tmp_path / "a.vtt", "WEBVTT\n\n00:00.000 --> 00:04.000\nabc def ½\n")
    transcript = read_captions(captions)
    kept = write(tmp_path / "transcript.json", transcript.to_json())
    assert read_captions(kept) == transcript
    assert json.loads(transcript.to_json())["schema"] == "spokeshave-transcript/1"


TEXT = st.lists(
    st.text(alphabet="abcdefgh0123456789½,.'-/", min_size=1, max_size=8).filter(lambda word: word[0] != "-"),
    min_size=1,
    max_size=9,
).map(" ".join)
CUES = st.lists(st.tuples(st.integers(1, 900), st.integers(1, 5000), TEXT), min_size=1, max_size=12)


def laid_out(drawn: list[tuple[int, int, str]]) -> list[tuple[int, int, str]]:
    clock, cues = 0, []
    for pause, length, text in drawn:
        cues.append((clock + pause, clock + pause + length, text))
        clock += pause + length
    return cues


def stamp(milliseconds: int, mark: str) -> str:
    seconds, rest = divmod(milliseconds, 1000)
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}{mark}{rest:03}"


@given(CUES, st.sampled_from(["vtt", "srt"]))
def test_what_is_written_is_read(
    tmp_path_factory: pytest.TempPathFactory, drawn: list[tuple[int, int, str]], form: str
) -> None:
    cues = laid_out(drawn)
    mark = "." if form == "vtt" else ","
    blocks = [
        f"{number}\n{stamp(start, mark)} --> {stamp(end, mark)}\n{text}\n"
        for number, (start, end, text) in enumerate(cues, 1)
    ]
    content = "\n".join((["WEBVTT\n"] if form == "vtt" else []) + blocks)
    path = write(tmp_path_factory.mktemp("captions") / f"a.{form}", content)
    transcript = read_captions(path)
    assert [(round(cue.start * 1000), round(cue.end * 1000), cue.text) for cue in transcript.cues] == cues
    holds_together(transcript)
    # References: FFmpeg's demuxer, and for SRT pysubs2.
    with av.open(str(path)) as container:
        packets = [packet for packet in container.demux() if packet.size]
        assert [(packet.pts, packet.duration) for packet in packets] == [(start, end - start) for start, end, _ in cues]
    if form == "srt":
        assert [(event.start, event.end) for event in pysubs2.load(str(path))] == [cue[:2] for cue in cues]


@given(st.lists(st.tuples(st.integers(0, 9000), st.integers(0, 9000), TEXT), min_size=1, max_size=12))
def test_cues_hold_together_whatever_their_times(
    tmp_path_factory: pytest.TempPathFactory, drawn: list[tuple[int, int, str]]
) -> None:
    blocks = [f"{stamp(start, '.')} --> {stamp(end, '.')}\n{text}\n" for start, end, text in drawn]
    path = write(tmp_path_factory.mktemp("captions") / "a.vtt", "\n".join(["WEBVTT\n", *blocks]))
    transcript = read_captions(path)
    holds_together(transcript)
    assert sorted(" ".join(text for _, _, text in drawn).split()) == sorted(transcript.text.split())


@given(st.text(max_size=300))
def test_any_text_is_read_or_refused_in_one_line(tmp_path_factory: pytest.TempPathFactory, content: str) -> None:
    path = write(tmp_path_factory.mktemp("captions") / "a.vtt", "WEBVTT\n\n00:01.000 --> 00:02.000\n" + content)
    try:
        holds_together(read_captions(path))
    except TranscriptError as error:
        assert "\n" not in str(error)  # noqa: PT017 - a refusal is one of two right answers
