"""What speaks for and against a statement's being taken back by the remark it stands beside."""

from __future__ import annotations

from extract.corrections.evidence import Reasons
from extract.corrections.openings import opens
from extract.corrections.scene import Scene
from extract.corrections.signs import Signs
from extract.corrections.statements import BACK, Statement, swapped

_ZONE = (
    "quote", "recall", "confess", "discard", "amend", "deny", "strong", "pause", "reread", "bare_wrong", "session",
    "affirm", "change", "others",
)  # fmt: skip
_TALK = ("confess", "discard", "amend", "reread", "quote", "session", "pause", "recall")
_NAME = 4
_HALF = 0.5
_DENYING = frozenset({"not", "isn't", "wasn't", "aren't", "don't", "never", "no", "weren't", "ain't"})
_PARTICLES = frozenset(
    {"in", "out", "on", "off", "up", "down", "over", "under", "with", "against", "first", "last", "along", "across",
     "start", "end", "more", "less", "before", "after", "today", "second", "light", "time", "he", "she", "his", "her"}
)  # fmt: skip
"""Words that stand for one another, but also by themselves for many things."""
_DOUBTING = frozenset({"might", "may", "maybe", "perhaps", "possibly", "dunno", "reckon", "wonder"})
_NOUNS = frozenset({"NN", "NNS", "NNP", "NNPS", "JJ", "VBG"})


def statement_reasons(scene: Scene, signs: Signs, one: Statement) -> Reasons:
    """What speaks for and against a claim's being taken back."""
    pieces = scene.pieces
    begin, end = min(one.begin, one.answer[0]), max(one.answer[1], one.begin + 1)
    zone = (max(0, begin - 6), end)
    found: Reasons = {name: 1.0 for name in _ZONE if signs.within(name, *zone)}
    found[f"by_{one.anchor}"] = 1.0
    found["quoted"] = float(one.quoted)
    for name in ("confess", "reread", "discard", "amend", "bare_wrong"):
        found[f"{name}_behind"] = float(signs.within(name, end, end + 10) is not None)
    claim, answer = scene.content(range(*one.claim)), scene.content(range(*one.answer))
    shared = claim & answer
    found["answer_signs"] = _covered(signs, one.answer)
    found["claim_signs"] = _covered(signs, one.claim)
    found["shared"] = min(len(shared), 3) / 3
    swaps = swapped(scene, one.claim, one.answer)
    found["work"] = float(signs.within("work", *zone) is not None)
    found["swap"] = float(any(word not in _PARTICLES for word in swaps))
    found["swap_small"] = float(bool(swaps) and not found["swap"])
    found["swap_shared"] = float(bool(found["swap"]) and bool(shared))
    found["denied"] = float(_denied(scene, one, claim))
    known = [word for word in claim if scene.mentioned(word, one.begin)]
    found["said_before"] = len(known) / len(claim) if claim and one.quoted else 0.0
    found["named"] = float(_named(scene, signs, one))
    found["short"] = float(one.answer[1] - one.answer[0] <= _NAME)
    found["long"] = float(one.answer[1] - one.answer[0] > 12)
    found["figures"] = float(any(pieces[at].measured for at in range(*one.answer)))
    found["figures_both"] = float(
        any(pieces[at].figure for at in range(*one.answer)) and any(pieces[at].figure for at in range(*one.claim))
    )
    found["asked"] = float(any(pieces[at].mark == "?" for at in range(*one.claim)))
    found["asking"] = float(any(pieces[at].mark == "?" for at in range(*one.answer)))
    found["empty_claim"] = float(not claim)
    found["opens"] = float(opens(scene, one.begin))
    found["next"] = float(0 <= one.answer[0] - max(one.claim[1], one.begin) <= 6)
    found["far"] = float(begin - one.claim[1] > BACK)
    found["you"] = float(any(pieces[at].text in ("you", "you're", "you'll", "your") for at in range(*one.answer)))
    found["own"] = float(any(pieces[at].text in ("i", "i've", "i'm", "i'd") for at in range(*one.answer)))
    turned = any(
        signs.within(name, one.claim[1] if one.quoted else begin, end)
        for name in ("confess", "deny", "discard", "amend", "bare_wrong", "strong", "reread")
    )
    found["quote_turned"] = float(one.quoted and turned)
    found["quote_session"] = float(one.quoted and "session" in found)
    found["session_turned"] = float("session" in found and turned)
    found["session_unturned"] = float(one.anchor == "session" and not turned)
    found["shared_turned"] = float(bool(shared) and turned and not one.quoted)
    found["swap_turned"] = float(bool(found["swap"]) and turned)
    found["quote_named"] = float(one.quoted and bool(found["named"]))
    found["quote_shared"] = float(one.quoted and bool(shared))
    found["quote_said"] = float(one.quoted and found["said_before"] > _HALF)
    found["lone_no"] = float(
        one.anchor == "strong" and scene.pieces[one.begin].text in ("no", "nope") and not opens(scene, one.begin)
    )
    turning = signs.within("spoiled", one.claim[0], one.answer[1]) is not None
    found["spoiled"] = float(turning)
    told = one.quoted or signs.within("quote", *one.claim) is not None
    found["told_then"] = float("session" in found and told and "affirm" not in found)
    found["told_spoiled"] = float(bool(found["told_then"]) and (turning or turned))
    found["did_spoiled"] = float(one.anchor == "session" and turning)
    found["retraced"] = float(one.anchor in ("strong", "amend") and _retraced(scene, one))
    found["repeated"] = float(one.anchor in ("strong", "amend") and _repeated(scene, one))
    found["doubted"] = float(any(pieces[at].text in _DOUBTING for at in range(*one.answer)))
    found["firm"] = float(one.anchor in ("strong", "amend") and _firmly(scene, one.begin))
    holds = signs.within("holds", one.answer[0], one.answer[0] + 2)
    found["held"] = float(one.anchor in ("strong", "amend") and holds is not None)
    owned = [n for n in ("confess", "discard", "amend", "strong", "reread", "deny", "quote", "recall") if n in found]
    found["signs"] = min(len(owned), 4) / 4
    return {name: value for name, value in found.items() if value}


def _retraced(scene: Scene, one: Statement) -> bool:
    """The answer begins with two words of the claim: "slide the motor, no, slide the hub"."""
    said = [piece.text for piece in scene.pieces[one.claim[0] : one.claim[1]]]
    again = [piece.text for piece in scene.pieces[one.answer[0] : one.answer[0] + 2]]
    return len(again) > 1 and any(said[at : at + 2] == again for at in range(len(said) - 1))


def _repeated(scene: Scene, one: Statement) -> bool:
    """The first word of weight in the answer is of the claim, so that it is only stressed: "and I mean a touch"."""
    first = next((word for at in range(*one.answer) if (word := scene.content(range(at, at + 1)))), frozenset())
    return bool(first) and first <= scene.content(range(*one.claim)) and not _retraced(scene, one)


def _firmly(scene: Scene, begin: int) -> bool:
    """More than a lone word takes back: "no, sorry", "ah. No. Other way about"."""
    end = scene.edit_ends.get(begin, 0)
    return end - begin > 1


def _covered(signs: Signs, span: tuple[int, int]) -> float:
    """How much of a statement only says that something was wrong, or was said."""
    return sum(signs.explained(at, _TALK) for at in range(*span)) / max(1, span[1] - span[0])


def _denied(scene: Scene, one: Statement, claim: frozenset[str]) -> bool:
    """A word of the claim is denied behind it: "oil, not grease"."""
    for at in range(max(one.claim[1], min(one.begin, one.answer[0])), one.answer[1]):
        if scene.pieces[at].text in _DENYING and claim & scene.content(range(at + 1, min(at + 4, len(scene.pieces)))):
            return True
    return False


def _named(scene: Scene, signs: Signs, one: Statement) -> bool:
    """The answer names a thing: "it's oak", "right hinge"."""
    start = one.answer[0]
    held = signs.within("holds", start, start + 1)
    if held:
        start = held[1]
    near = [scene.pieces[at] for at in range(start, min(start + _NAME, one.answer[1]))]
    return bool(near) and (held is not None or len(near) < _NAME) and any(piece.tag in _NOUNS for piece in near)
