"""From a recording or a caption file to a `Transcript`."""
