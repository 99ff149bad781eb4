"""`python -m desk` is the command `spokeshave`."""

from desk.cli import main

main()
