"""What goes with the film: cues, the text beneath it, stills."""
