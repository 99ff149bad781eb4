"""Tests of extract/units.py and extract/convert.py."""
