"""A narration's tokens as the lexemes that numbers are read from.

One token may give several: "5-1/2" is a whole number, a dash and a fraction, "10k" a number and a letter. A token such
as "EL34" or "12AX7", letters and digits run together, is a name and no number.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from extract.narration import Narration
from extract.numbers.vocabulary import Vocabulary, WordKind, vocabulary

if TYPE_CHECKING:
    from spacy.tokens import Doc

Kind = WordKind | Literal["digits", "decimal", "slash", "vulgar", "name", "word", "mark"]

_PIECE = re.compile(
    r"(?P<slash>\d+/\d+)(?:ths?|nds?|rds?)?(?![\d/])"
    r"|(?P<ordinal>\d+)(?P<ending>st|nd|rd|th)(?P<plural>s?)(?![a-z0-9])"
    r"|(?P<grouped>\d{1,3}(?:,\d{3})+(?:\.\d+)?)(?![\d,])"
    r"|(?P<comma>\d+,\d{1,2})(?![\d,])"
    r"|(?P<decimal>\d*\.\d+)"
    r"|(?P<digits>\d+)"
    r"|(?P<vulgar>[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅒])"
    r"|(?P<letters>[^\W\d_]+)"
    r"|(?P<other>\S)"
)
_NEGATION = re.compile(r"n't\b")
_NAME = re.compile(r"[^\W\d_]+[-]?\d|\d+[^\W\d_]+\d", re.UNICODE)
_SIZE_BY_SIZE = re.compile(r"\d+(?:\.\d+)?[x×]\d+(?:\.\d+)?[^\W\d_]{0,2}")


@dataclass(frozen=True, slots=True)
class Lexeme:
    """The smallest piece that a number or a unit can be made of."""

    text: str
    """As written, in lower case."""
    kind: Kind
    token: int
    """Index of the token it stands in."""
    glued: bool
    """True where no space stands before it."""
    value: Fraction = Fraction(0)
    denominator: int | None = None
    """The denominator of a written fraction."""
    decimals: int = 0
    plural: bool = False
    """True for "sixteenths", "64ths"."""
    raw: str = ""
    """As written, capitals kept."""
    breath: bool = False
    """True where a cue begins with it."""


def lex(doc: Doc) -> tuple[Lexeme, ...]:
    """All lexemes of a narration in order. Linear in its length."""
    words = vocabulary()
    narration: Narration | None = doc._.narration if doc.has_extension("narration") else None
    found: list[Lexeme] = []
    glued = False
    for token in doc:
        text = token.text
        following = doc[token.i + 1].lower_ if token.i + 1 < len(doc) else ""
        if _is_name(text):
            found.append(Lexeme(text.lower(), "name", token.i, glued, raw=text))
        else:
            found.extend(_pieces(text, token.i, glued, following, words))
        if narration and (token.i == 0 or narration.cue[token.i] != narration.cue[token.i - 1]):
            first = len(found) - sum(one.token == token.i for one in found[-8:])
            found[first] = replace(found[first], breath=True)
        glued = not token.whitespace_
    return tuple(found)


def _is_name(text: str) -> bool:
    return bool(_NAME.match(text)) and not _SIZE_BY_SIZE.fullmatch(text.lower())


def _pieces(text: str, token: int, glued: bool, following: str, words: Vocabulary) -> list[Lexeme]:
    pieces = []
    lowered = text.lower().replace("’", "'")
    for match in _PIECE.finditer(lowered):
        raw = text[match.start() : match.end()]
        after = lowered[match.end() :] or following
        pieces.append(_piece(match, raw, token, glued if match.start() == 0 else True, after, words))
    return pieces


def _piece(match: re.Match[str], raw: str, token: int, glued: bool, after: str, words: Vocabulary) -> Lexeme:
    said = match.group()
    match match.lastgroup:
        case "slash":
            return _written_fraction(match["slash"], said, token, glued, raw)
        case "plural" | "ordinal" | "ending":
            return Lexeme(
                said, "ordinal", token, glued, Fraction(match["ordinal"]), plural=bool(match["plural"]), raw=raw
            )
        case "grouped":
            return _decimal(said.replace(",", ""), said, token, glued, raw)
        case "comma":
            if after.lower() in words.comma_units:
                return _decimal(said.replace(",", "."), said, token, glued, raw)
            return Lexeme(said, "name", token, glued, raw=raw)
        case "decimal" | "digits":
            return _decimal(said, said, token, glued, raw)
        case "letters":
            return _word(said, token, glued, raw, words)
        case "vulgar":
            part = words.vulgar[said]
            return Lexeme(said, "vulgar", token, glued, part, denominator=part.denominator, raw=raw)
    kind: Kind = words.words[said][0] if said in words.words else "mark"
    return Lexeme(said, kind, token, glued, raw=raw)


def _word(said: str, token: int, glued: bool, raw: str, words: Vocabulary) -> Lexeme:
    kind: Kind = "word"
    value = 0
    if said in words.words:
        kind, value = words.words[said]
    plural = kind == "part" and said.endswith("s")
    singular = words.words.get(said.removesuffix("s"))
    if kind == "word" and singular and singular[0] == "ordinal":
        kind, value, plural = "ordinal", singular[1], True
    return Lexeme(said, kind, token, glued, Fraction(value), plural=plural, raw=raw)


def _written_fraction(figure: str, said: str, token: int, glued: bool, raw: str) -> Lexeme:
    above, below = (int(part) for part in figure.split("/"))
    if below == 0:
        return Lexeme(said, "name", token, glued, raw=raw)
    return Lexeme(said, "slash", token, glued, Fraction(above, below), denominator=below, raw=raw)


def _decimal(figure: str, said: str, token: int, glued: bool, raw: str) -> Lexeme:
    decimals = len(figure.partition(".")[2])
    kind: Kind = "decimal" if decimals else "digits"
    return Lexeme(said, kind, token, glued, Fraction(figure), decimals=decimals, raw=raw)


def split(phrase: str) -> tuple[str, ...]:
    """The texts of a phrase's lexemes: "ft-lb" gives "ft", "-" and "lb"; "don't" is cut as the tokeniser cuts it."""
    cut = _NEGATION.sub(" n't", phrase.lower().replace("’", "'"))
    return tuple(match.group() for match in _PIECE.finditer(cut))
