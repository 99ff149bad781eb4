"""Makes the sound, the films and truth.json of the demo sessions from their scripts.

Run `python -m demo_sessions.build` after `pip install -e '.[demo-build]'`, with Debian's flite installed. Nothing else
in Spokeshave needs this package.
"""
