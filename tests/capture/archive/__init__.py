"""Tests of packing and unpacking a shop."""
