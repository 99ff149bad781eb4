"""What did not change is not made again, and nobody can tell."""
