"""Trades: words, bands and hazards as data."""
