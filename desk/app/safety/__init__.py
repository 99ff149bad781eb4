"""Who may come in, from where, and what every answer carries; one rule a file.

Each is a plain ASGI middleware. The order is the table in `desk.app.build`: what is cheapest to refuse comes first.
"""
