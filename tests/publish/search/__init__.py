"""The search of the site itself finds what `spokeshave find` finds."""
