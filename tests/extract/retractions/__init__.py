"""What a later session takes back of an earlier one."""
