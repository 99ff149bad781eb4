"""The capture page: record at the bench, mark moments, and have it written up."""

from desk.record.section import record_section

__all__ = ["record_section"]
