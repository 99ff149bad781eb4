"""Tests of extract/steps."""
