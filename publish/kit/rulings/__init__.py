"""A person's rulings on what tools and materials are called in the whole shop, and the log that keeps them."""
