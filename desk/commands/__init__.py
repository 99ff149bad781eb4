"""One module a subcommand: it parses, calls, prints."""
