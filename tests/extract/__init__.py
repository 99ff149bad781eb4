"""Tests of the extract room."""
