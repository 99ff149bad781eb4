"""Tests of the working figures, held against published tables and other programs."""
