"""Recording to the disk: pieces, plugs pulled, and what becomes of what was cut off."""
