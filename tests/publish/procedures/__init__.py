"""The procedure library: recognising, setting beside one another, a person's rulings, pages."""
