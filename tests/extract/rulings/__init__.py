"""Tests of a person's rulings."""
