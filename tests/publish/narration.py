"""A session of our own invention, told as cues: nobody in it lives, and the instrument was never built."""

from __future__ import annotations

from capture.transcript import Cue, Ear, Transcript, Word

CUES = (
    "Right. On the bench is the octave mandola, the one they call the Heron, and its bridge is lifting.",
    "Before anything comes off, the figures as it came in.",
    "Action at the twelfth fret, treble side, is 7/64, no, hang on,",
    "wrong edge of the rule, it is 5/64 in.",
    "Bass side is 7/64 in, about 2.8 mm.",
    "Relief at the seventh fret is 0.012 in with the capo on, and I want 8 thou.",
    "Scale length is 20 7/8 inches, which is 550 mm.",
    "The gap under the back edge of the bridge takes a 0.010 in feeler and nearly the 0.012.",
    "Strings off. Slacken them in pairs so the neck does not jump.",
    "Mask the top with low-tack tape, two layers, all round the bridge.",
    "Now the heat. Plate to 160 °F, sorry, 140 °F,",
    "and no more, or the lacquer blisters.",
    "Hide glue lets go at about 60 °C, so five minutes a side.",
    "Work the palette knife in from the back edge, with the grain, never across it.",
    "There. It is off. Look at that, they glued it on over the lacquer.",
    "Scrape the footprint back to clean spruce, 1/16 in short of the outline all round.",
    "The bridge plate inside is 3/32 thick, maple, sound.",
    "Bottom of the bridge wants to match the dome, radius 25 feet, so sand it on paper taped to the top.",
    "Dry run with the clamps first. Three of them, and the caul inside.",
    "Hot hide glue now, 192 gram strength, and clamp within 30 seconds.",
    "Leave it clamped for 12, overnight really.",
    "Next day. Saddle slot was 3/32 wide and is now 0.100 in after cleaning.",
    "New saddle from bone, 1/8 in thick, sanded down to fit.",
    "Saddle compensation moves the 12th fret back 16 in, that is 250 mm from the nut.",
    "Strung up, 0.012 to 0.042, and left for two hours to settle.",
    "Action at the twelfth fret now: treble 4/64, bass 6/64 in.",
    "Relief is 8 thou, at least 6, and I would not go under that.",
    "In the last film I said to use 20 thou under the bass side. Make that 10 to 12 thou.",
    "And I said two layers of tape earlier, it was three by the end.",
    "Humidity in the shop was 48 percent while the glue went off.",
    "Wear a mask when you sand bone, the dust is nasty.",
    "The tailpiece screw is stripped, I will plug that next week.",
    "I think the top is Engelmann spruce, but do not quote me.",
    "That is it. She plays.",
)
"""What is said, a cue a line."""

SECONDS_A_CUE = 6.2
PAUSE = 0.4


def transcript() -> Transcript:
    """The narration with its words spread evenly over each cue, as if a model had heard it."""
    return Transcript(
        source="heron-bridge.mp4",
        duration=len(CUES) * SECONDS_A_CUE + 3.0,
        ear=Ear(model="whisper-base", device="cpu", compute_type="int8", prime="The action is five sixty-fourths."),
        cues=tuple(_cue(number, text) for number, text in enumerate(CUES)),
    )


def _cue(number: int, text: str) -> Cue:
    start = round(number * SECONDS_A_CUE + 1.0, 3)
    end = round(start + SECONDS_A_CUE - PAUSE, 3)
    words = text.split()
    share = (end - start) / len(words)
    timed = tuple(
        Word(
            text=word,
            start=round(start + at * share, 3),
            end=round(start + (at + 1) * share, 3),
            probability=0.9,
        )
        for at, word in enumerate(words)
    )
    return Cue(start=start, end=end, text=text, words=timed)
