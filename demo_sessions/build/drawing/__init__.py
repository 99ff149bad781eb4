"""Draws the bench: a sheet of paper, its marks, and the things that lie on it."""
