"""Of what a figure is said, where its sentence has a subject: "the bridge is 2 mm"."""

from __future__ import annotations

from extract.corrections.scene import Scene
from extract.corrections.turns import unit_at
from extract.roots import root

_SUBJECT = 4
_CLAIM = 6
_LEAD = 4
"""Words before "I told you" that name the thing: "that going weight, I told you"."""
_CLITIC = 3
_NEAR = 4
"""Words before a figure among which "is" ties it to its subject."""
_BE = frozenset({"is", "was", "are", "were", "wants", "want", "needs", "takes", "gets", "get", "has"})
_PHRASE = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "DT", "PRP$", "CD", "VBG", "VBN"})
_WEIGHED = frozenset({"JJ", "NN", "NNS", "VBG", "VBN"})
_NO_THING = frozenset({"it", "that", "there", "this", "here", "what", "he", "she", "#", "one", "they", "ones"})
_FIGURE = frozenset(
    {"value", "figure", "number", "reading", "amount", "answer", "book", "label", "card", "sheet", "tin"}
)


def of_another(scene: Scene, begin: int, wrong: int, right: int) -> bool:
    """The sentence of the second figure has a subject that was not spoken of with the first, quoted from `begin` on."""
    start = max(unit_at(scene, right)[0], wrong + 1)
    subject = _subject(scene, start, right)
    if not subject:
        return False
    end = min(unit_at(scene, wrong)[1], wrong + _CLAIM, start if start > wrong + 1 else right)
    known = _roots(scene, range(max(0, begin - _LEAD), end))
    first = scene.pieces[wrong].measured
    if first is not None:
        known |= {root(word) for word in " ".join(filter(None, (first.item, first.attribute, first.where))).split()}
        for at in scene.said_before(first, begin):
            known |= _roots(scene, range(*unit_at(scene, at)))
    if start == wrong + 1:
        known -= subject - _roots(scene, range(max(0, begin - _LEAD), wrong))
    return not subject & known


def _roots(scene: Scene, places: range) -> set[str]:
    return {root(scene.pieces[at].text) for at in places}


def _subject(scene: Scene, start: int, right: int) -> set[str]:
    """Roots of the words that name the subject, before "is" or before an "'s"."""
    pieces = scene.pieces
    near = range(right - 1, max(start, right - _NEAR) - 1, -1)
    verb = next((at for at in near if _is_verb(pieces[at].text)), None)
    if verb is None or any(pieces[at].tag == "PRP" for at in range(verb + 1, right)):
        return set()
    head = pieces[verb].text.split("'")[0]
    if pieces[verb - 1].text in _FIGURE or head in _FIGURE or (head and head in _NO_THING):
        return set()
    begin = verb if len(pieces[verb].text) > _CLITIC and pieces[verb].text.endswith(("'s", "'re")) else verb - 1
    subject: set[str] = set()
    for at in range(begin, max(start - 1, begin - _SUBJECT), -1):
        if at < begin and (pieces[at].mark or pieces[at].tag not in _PHRASE):
            break
        if pieces[at].tag in _WEIGHED or at == verb:
            subject.add(root(pieces[at].text.removesuffix("'re")))
    return subject - scene.words.empty - _NO_THING


def _is_verb(text: str) -> bool:
    return text in _BE or text.endswith(("'s", "'re"))
