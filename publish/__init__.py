"""From proofed records to pages."""
