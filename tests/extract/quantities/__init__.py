"""Tests of extract/quantities."""
