"""What else a figure may have been."""
