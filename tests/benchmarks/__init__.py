"""Benchmarks: what is claimed about speed, measured."""
