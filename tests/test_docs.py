"""What the documents say is what there is."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from capture.shop import SessionSettings, ShopSettings
from desk.cli import COMMANDS, spokeshave
from extract.trade import trade_names

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text()
HEAVY = ("spacy", "pint", "ctranslate2", "faster_whisper", "onnxruntime", "av", "numpy", "starlette", "uvicorn")


def command_help() -> str:
    """The help text of every command, as README shows it."""
    runner = CliRunner()
    blocks = []
    for words in ([], *([name] for name in COMMANDS)):
        shown = runner.invoke(
            spokeshave, [*words, "--help"], prog_name="spokeshave", terminal_width=98, max_content_width=98
        )
        assert shown.exit_code == 0
        blocks.append("```text\n$ " + " ".join(["spokeshave", *words, "--help"]) + f"\n{shown.output.rstrip()}\n```")
    return "\n\n".join(blocks)


def test_readme_shows_the_help_of_every_command_as_it_is() -> None:
    shown = re.search(r"<!-- help -->\n(.*?)\n<!-- /help -->", README, re.DOTALL)
    assert shown is not None
    assert shown[1] == command_help(), "run: python -m tests.test_docs"


@pytest.mark.parametrize("settings", [ShopSettings, SessionSettings])
def test_readme_explains_every_setting(settings: type[ShopSettings] | type[SessionSettings]) -> None:
    assert [name for name in settings.model_fields if f"`{name}`" not in README] == []


def test_readme_names_every_trade() -> None:
    assert [name for name in trade_names() if name not in README] == []


def test_every_local_link_in_the_documents_leads_somewhere() -> None:
    lost = []
    for document in ("README.md", "DEVELOPERS.md", "CHANGELOG.md"):
        for target in re.findall(r"\]\((?!https?:|#)([^)#]+)", (ROOT / document).read_text()):
            if not (ROOT / target).exists():
                lost.append((document, target))
    assert lost == []


def test_help_loads_no_heavy_library() -> None:
    show = "import sys; from desk.cli import spokeshave; spokeshave.main(['--help'], standalone_mode=False)"
    tell = f"; print('loaded:', [name for name in {HEAVY!r} if name in sys.modules])"
    run = subprocess.run([sys.executable, "-c", show + tell], capture_output=True, text=True, check=True)
    assert run.stdout.splitlines()[-1] == "loaded: []"


if __name__ == "__main__":
    fresh = re.sub(
        r"(<!-- help -->\n).*?(\n?<!-- /help -->)",
        lambda _: f"<!-- help -->\n{command_help()}\n<!-- /help -->",
        README,
        flags=re.DOTALL,
    )
    (ROOT / "README.md").write_text(fresh)
