"""What quantities measure, of what, where and when."""
