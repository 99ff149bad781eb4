"""Marked talks in which the same procedures come back, and what recognising them scores."""
