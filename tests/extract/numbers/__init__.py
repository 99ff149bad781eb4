"""Tests of extract/numbers."""
