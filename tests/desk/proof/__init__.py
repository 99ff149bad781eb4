"""The proof page: what it shows, what it keeps, and how it is worked."""
