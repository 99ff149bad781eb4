"""Tests of what tools and materials are called in a shop."""
