"""The command `spokeshave`: finds the subcommand, runs it, and turns errors into one clear line."""

from __future__ import annotations

import importlib
import sys
from keyword import iskeyword

import click

from capture.errors import SpokeshaveError

COMMANDS = (
    "record", "writeup", "proof", "retraction", "transcribe", "extract", "publish", "find", "procedure", "kit",
    "export", "import", "figure", "demo",
)  # fmt: skip
"""Subcommands in the order of the job; each is `command` in desk/commands/<name>.py."""


class _Commands(click.Group):
    """Loads a subcommand's module only when it is named, so that `--help` stays quick."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        if cmd_name not in COMMANDS:
            return None
        found: click.Command = importlib.import_module(f"desk.commands.{_module(cmd_name)}").command
        return found


def _module(name: str) -> str:
    """The module of a subcommand; a name that Python keeps for itself has a line behind."""
    return f"{name}_" if iskeyword(name) else name


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(package_name="spokeshave", prog_name="spokeshave")
def spokeshave() -> None:
    """Turn what you say at the bench, on film, into notes that can be trusted.

    Everything happens on this machine; nothing is sent anywhere.
    """


def main() -> None:
    """Run the command line. Exit codes: 0 done, 2 bad input (one clear line says what), 130 stopped by the person."""
    try:
        code = spokeshave.main(standalone_mode=False)
    except SpokeshaveError as error:
        _say(str(error))
        sys.exit(2)
    except click.ClickException as error:
        error.show()
        sys.exit(2)
    except (click.Abort, KeyboardInterrupt):
        _say("stopped; run the same command again to go on from here")
        sys.exit(130)
    except OSError as error:
        # What the rooms foresee comes as a SpokeshaveError; a disk can still fill up or vanish at any write.
        _say(f"{error.filename or 'disk'}: {error.strerror or error}; make room or mend it, then run this again")
        sys.exit(2)
    sys.exit(code if isinstance(code, int) else 0)


def _say(line: str) -> None:
    from desk.console import printable

    click.echo(f"spokeshave: {printable(' '.join(line.split()))}", err=True)
