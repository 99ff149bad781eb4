"""Teaching the ear that ships: an adapter for Whisper base, learnt from spoken measures in many synthetic voices.

`python -m tests.benchmarks.teach_ear speak VOICES FOLDER` makes the lines into sound, `... learn FOLDER ADAPTER` learns
from them (PyTorch and a GPU; the extra `teach`). The adapter that ships was learnt in one run of 734 steps on an H100
from 738 lines of Kokoro's voices and 1,000 of Flite's and espeak-ng's, by a first form of these programs: it has not
been learnt anew since they were put in order.
"""
