"""The capture page: its addresses, its page in a real browser, and plugs pulled."""
