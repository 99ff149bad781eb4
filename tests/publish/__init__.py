"""From records to pages."""
