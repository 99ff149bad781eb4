"""A thing named anew: what it is, or which it is, put in the place of what it was called.

Takes "I think it's the rubber flapper. Hang on. It's leather", "that's beech, look at the flecks, not oak" where oak
was said before, "oh, and it isn't nickel, that's a silver case" and "I told you boxwood. That's plum"; refuses "the
top is spruce, the back is maple", "not oak but close to it" and "is it brass? No, it's steel".
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.corrections.openings import opens
from extract.corrections.plain import PlainWords, plain_words
from extract.corrections.scene import Draft, Scene
from extract.corrections.signs import signs_of
from extract.corrections.turns import before, is_stated, unit_at
from extract.record import Scope

_NAME = 4
"""Words of a name behind "it's" among which its noun stands."""
_BESIDE = 16
"""Words from a denied name to the one that holds."""
_TOLD, _ANSWER = 6, 22
_SESSION = 14
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS"})
_NAMING = frozenset({"it's", "that's", "they're", "it", "these", "that"})
_THE = frozenset({"the", "his", "her", "that", "my"})
_BARE = frozenset({"it", "these", "that"})
_NOT = frozenset({"not", "isn't", "aren't", "wasn't", "weren't", "ain't"})
_BETWEEN = 3
_REMARK = 6


def find_named_anew(scene: Scene) -> Iterator[Draft]:
    """Each thing that is called something else than before."""
    yield from _told(scene)
    yield from _denied(scene)
    yield from _turned(scene)
    yield from _not_that(scene)


def _told(scene: Scene) -> Iterator[Draft]:
    """ "I told you boxwood, look at that shaving, that's plum", "the pulley's plastic. I called it brass"."""
    words, pieces = plain_words(), scene.pieces
    for begin, end in signs_of(scene).all("quote"):
        wrong = next((at for at in range(end, min(end + _TOLD, len(pieces))) if _is_stuff(scene, at)), None)
        if wrong is None or signs_of(scene).within("others", max(0, begin - 2), begin + 1):
            continue
        last = min(wrong + _ANSWER, len(pieces) - 1)
        places = [*range(wrong + 1, last), *range(begin - 1, max(0, unit_at(scene, max(0, begin - 1))[0]) - 1, -1)]
        right = next((at for at in places if _is_stuff(scene, at) and pieces[at].text != pieces[wrong].text), None)
        if (
            right is None
            or not _is_name(scene, right, words)
            or _said_after(scene, wrong, max(wrong, right) + 1, words)
        ):
            continue
        known = any(place < begin for place in scene.places_of(pieces[wrong].text, begin))
        session = signs_of(scene).last("session", max(0, begin - _SESSION), wrong + _SESSION) is not None
        scope: Scope = "earlier_session" if session and not known else "this_session"
        start, until = min(begin, right), max(right, wrong) + 1
        yield Draft(start, until, scope, (end, wrong + 1), _name(scene, right), said_again=True)


def _said_after(scene: Scene, wrong: int, begin: int, words: PlainWords) -> bool:
    """The name taken back would be given again behind: "the old one's elm, the new one's larch"."""
    after = range(begin, min(begin + _TOLD, len(scene.pieces)))
    return any(scene.pieces[at].text == scene.pieces[wrong].text and _is_name(scene, at, words) for at in after)


def _denied(scene: Scene) -> Iterator[Draft]:
    """ "It isn't nickel, that's silver", "that's beech, not oak": what is denied was stated before."""
    words, pieces = plain_words(), scene.pieces
    for at in range(1, len(pieces) - 1):
        if pieces[at].text not in _NOT:
            continue
        wrong = next((k for k in range(at + 1, min(at + _BETWEEN, len(pieces))) if _is_stuff(scene, k)), None)
        if wrong is None or any(pieces[k].text not in words.small for k in range(at + 1, wrong)):
            continue
        claim = _stated(scene, wrong, at)
        if claim is None or not _closes(scene, wrong):
            continue
        places = [*range(at - 1, max(0, at - _BESIDE // 2), -1), *range(wrong + 1, min(wrong + _BESIDE, len(pieces)))]
        right = next((k for k in places if _is_stuff(scene, k) and pieces[k].text != pieces[wrong].text), None)
        if right is not None and _is_name(scene, right, words) and right > claim:
            begin, until = min(at - 1, right), max(right, wrong) + 1
            yield Draft(begin, until, "this_session", unit_at(scene, claim), _name(scene, right))


def _stated(scene: Scene, wrong: int, at: int) -> int | None:
    """Where the denied name was said of the same thing before: no other thing's name stands before the denial."""
    pieces = scene.pieces
    found = scene.places_of(pieces[wrong].text, at)
    if not found:
        return None
    near = range(max(unit_at(scene, at)[0], at - _NAME), at)
    thing = scene.content(near) - {pieces[wrong].text}
    other = any(pieces[k].tag in _NOUNS for k in near[-_BETWEEN:])
    return next((k for k in reversed(found) if not other or thing & scene.content(range(*unit_at(scene, k)))), None)


def _turned(scene: Scene) -> Iterator[Draft]:
    """ "It's the front bearing, no, it's the back one", "the bush is bronze. Wait. It's nylon"."""
    words, pieces = plain_words(), scene.pieces
    at = 2
    while at < len(pieces) - 2:
        length = words.turning.at(pieces, at)
        end = at
        firm = False
        while end < len(pieces) - 2 and (length := words.turning.at(pieces, end)):
            firm = firm or bool(words.firm & {piece.text for piece in pieces[end : end + length]})
            end += length
        if end > at and (firm or opens(scene, at)):
            found = _between(scene, at, end, firm)
            if found is not None:
                yield found
        at = max(end, at + 1)


def _not_that(scene: Scene) -> Iterator[Draft]:
    """ "It isn't the governor, it's the fan pulley", "not the stern post, it's the transom": said of it just before."""
    pieces = scene.pieces
    for at in range(2, len(pieces) - 3):
        if pieces[at].text not in _NOT or pieces[at + 1].text not in _THE or pieces[at + 1].mark:
            continue
        start = at - 1 if pieces[at - 1].text in _NAMING and not pieces[at - 1].mark else at
        start = start - 1 if pieces[start - 1].text in ("no", "oh", "and") and not opens(scene, start) else start
        wrong = _noun(scene, at + 1)
        claim = before(scene, start) if opens(scene, start) else None
        if wrong is None or claim is None or wrong + 2 >= len(pieces) or not is_stated(scene, claim):
            continue
        again = wrong + 1
        said = [pieces[k].text for k in range(*claim)]
        if pieces[again].text not in ("it's", "that's", "they're") or pieces[wrong].text not in said:
            continue
        right = _noun(scene, again + 1)
        if (
            right is not None
            and pieces[right].text != pieces[wrong].text
            and pieces[again + 1].text not in ("not", "just")
        ):
            yield Draft(start, right + 1, "this_session", claim, (again + 1, right + 1))


def _between(scene: Scene, begin: int, end: int, firm: bool) -> Draft | None:
    words, pieces = plain_words(), scene.pieces
    if end + 1 >= len(pieces) or pieces[end].text not in _NAMING or pieces[end - 1].mark == "?":
        return None
    start = end + 1 + (pieces[end].text in _BARE and pieces[end + 1].text in ("is", "was", "are"))
    right = _noun(scene, start)
    claim = before(scene, begin)
    if right is None or claim is None or not is_stated(scene, claim):
        return None
    if right + 1 < len(pieces) and not pieces[right].mark and pieces[right + 1].text in words.later:
        return None
    wrong = _named_in(scene, claim, right)
    if wrong is None or not (firm or _is_stuff(scene, right)):
        return None
    until = right + 1
    return Draft(begin, until, "this_session", claim, (start, until))


def _named_in(scene: Scene, claim: tuple[int, int], right: int) -> int | None:
    """The name in the statement before: a stuff for a stuff, or a thing behind "it's" for a thing."""
    words, pieces = plain_words(), scene.pieces
    stuff = _is_stuff(scene, right)
    for at in range(claim[1] - 1, claim[0] - 1, -1):
        if stuff and _is_stuff(scene, at) and pieces[at].text != pieces[right].text:
            return at
    for at in range(claim[0], claim[1]):
        if pieces[at].text in ("it's", "that's", "they're") and (wrong := _noun(scene, at + 1)) is not None:
            same = pieces[wrong].text == pieces[right].text and pieces[wrong - 1].text == pieces[right - 1].text
            article = pieces[at + 1].text in words.small and pieces[at + 1].tag == "DT"
            return wrong if wrong < claim[1] and article and not same else None
    return None


def _noun(scene: Scene, begin: int) -> int | None:
    """The last word of the name at a place: "a rubber flapper", "the back one"."""
    pieces = scene.pieces
    found = None
    for at in range(begin, min(begin + _NAME, len(pieces))):
        one = scene.text(at, at + 1).lower() == "one"
        other = pieces[at].figure or pieces[at].tag not in _NOUNS | {"DT", "JJ", "PRP$"}
        if other and not (one or _is_stuff(scene, at)):
            break
        if one or pieces[at].tag in _NOUNS or _is_stuff(scene, at):
            found = at
        if pieces[at].mark or (at + 1 < len(pieces) and pieces[at + 1].cue != pieces[at].cue):
            break
    return found


def _is_stuff(scene: Scene, at: int) -> bool:
    text = scene.pieces[at].text.removesuffix("'s")
    return text in plain_words().substances


def _is_name(scene: Scene, at: int, words: PlainWords) -> bool:
    """The stuff is named as what a thing is: "it's plum", "that's a silver case", "Leather."."""
    pieces = scene.pieces
    start = at
    while start > 0 and at - start < _BETWEEN and not pieces[start - 1].mark:
        if pieces[start - 1].text not in words.small and pieces[start - 1].tag != "JJ":
            break
        start -= 1
    lead = pieces[start - 1] if start else None
    named = lead is not None and (lead.text in words.naming or lead.text.endswith(("'s", "'re", "aren't")))
    after = at + 1 < len(pieces) and not pieces[at].mark and pieces[at + 1].text in words.later
    return not after and (named or (opens(scene, start) and opens(scene, at + 1)))


def _name(scene: Scene, at: int) -> tuple[int, int]:
    """The name and the noun behind it: "silver case"."""
    pieces = scene.pieces
    joined = at + 1 < len(pieces) and not opens(scene, at + 1) and pieces[at + 1].tag in _NOUNS
    before_it = at - 1 if at and pieces[at - 1].tag == "JJ" and not pieces[at - 1].mark else at
    return before_it, at + 1 + joined


def _closes(scene: Scene, wrong: int) -> bool:
    """Nothing goes on comparing behind the denied name: "not oak but close to it"."""
    pieces = scene.pieces
    return wrong + 1 >= len(pieces) or pieces[wrong + 1].text not in ("but", "or", "enough", "exactly", "colour")
