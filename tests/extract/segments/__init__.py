"""Tests of extract/segments."""
