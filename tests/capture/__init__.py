"""Tests of capture."""
