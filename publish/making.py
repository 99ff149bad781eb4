"""How a page was made, in words: by which ear, and how far a person has read it."""

from __future__ import annotations

from publish.context import Making, Proof
from publish.source import SessionSource
from publish.wording import count, sentence


def proof_of(source: SessionSource) -> Proof:
    """How far a person has proofed the session."""
    musts = sum(one.severity == "stop" for one in source.record.findings)
    if musts:
        return Proof("unsettled", f"not proofed: {count(musts, 'statement')} to settle")
    if source.proofed:
        return Proof("proofed", "proofed")
    return Proof("unread", "machine-made, not yet proofed")


_PROOFS = {
    "unsettled": "The statements listed under “To settle, to check” wait for a person; till then, trust the recording.",
    "unread": "No person has passed these notes yet; where they and the recording differ, the recording is right.",
    "proofed": "A person has passed these notes against the recording.",
}


def making_of(source: SessionSource, proof: Proof) -> Making:
    """Who heard it, how its seconds were found and who has read it."""
    transcript = source.transcript
    if transcript is None:
        return Making("The record stands here without its transcript.", "", _PROOFS[proof.state])
    ear = transcript.ear
    heard = (
        f"Heard by the speech model {ear.model} ({ear.compute_type} on {ear.device}), on the shop’s own machine."
        if ear
        else f"Read from the caption file {transcript.source}."
    )
    times = (
        "Each word was timed by the model."
        if transcript.word_times == "heard"
        else "The captions time whole lines; the seconds of single words were spread over each line."
    )
    return Making(sentence(heard), times, _PROOFS[proof.state])
