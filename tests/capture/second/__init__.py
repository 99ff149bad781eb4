"""Figures held against their rivals."""
