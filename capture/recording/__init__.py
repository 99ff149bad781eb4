"""Sound and film from the bench to the disk, piece by piece, so that a pulled plug costs two seconds at most.

    session folder
      session.toml          written before the first piece
      recording.weba        the recording itself, playable at every moment (.webm with picture, .wav from PortAudio)
      recording.journal     which pieces are on the disk; there only until the recording is whole
      marks.json            moments that the person marked
      stills/               pictures taken while recording

`take` writes, `finish` makes whole, `recovery` finds what was cut off. Nothing here knows of pages or servers.
"""

from capture.recording.finish import Finished, came_to_nothing, finish
from capture.recording.kinds import Kind, kind_of
from capture.recording.marks import Mark, keep_marks, read_marks
from capture.recording.recovery import CutOff, cut_off
from capture.recording.room import Room, room_for
from capture.recording.stills import keep_still
from capture.recording.take import Take, TakeError

__all__ = [
    "CutOff",
    "Finished",
    "Kind",
    "Mark",
    "Room",
    "Take",
    "TakeError",
    "came_to_nothing",
    "cut_off",
    "finish",
    "keep_marks",
    "keep_still",
    "kind_of",
    "read_marks",
    "room_for",
]
