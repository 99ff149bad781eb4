"""The procedure library."""
