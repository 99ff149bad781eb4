"""Tests of the corrections."""
