"""A person's rulings on the procedure library, and the log that keeps them."""
