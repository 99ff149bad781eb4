"""Demo sessions of our own invention: their sound and film, and what each contains."""
