"""The proof page: every doubtful statement with its second at hand, and a person's ruling on it."""

from desk.proof.section import proof_section, session_path

__all__ = ["proof_section", "session_path"]
