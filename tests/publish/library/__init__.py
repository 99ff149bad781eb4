"""The library over all sessions."""
