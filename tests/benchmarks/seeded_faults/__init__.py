"""Faults seeded into the marked narrations, to see how many the checks stop."""
