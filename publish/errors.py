"""What can keep a site from being published."""

from __future__ import annotations

from pathlib import Path

from capture.errors import SpokeshaveError


class PublishError(SpokeshaveError):
    """A site that can't be written."""

    def __init__(self, path: Path, problem: str, remedy: str) -> None:
        self.path = path
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{path}: {problem}; {remedy}")


class PublishBusyError(PublishError):
    """Another process is publishing the same shop."""

    def __init__(self, path: Path) -> None:
        super().__init__(path, "another spokeshave is publishing this shop", "wait for it to end, then publish again")


class UnsettledError(SpokeshaveError):
    """Strict publishing met statements that nobody settled, or sessions that can't be published."""

    def __init__(self, problems: tuple[str, ...]) -> None:
        self.problems = problems
        count = f"{len(problems)} problems, the first: " if len(problems) > 1 else ""
        super().__init__(f"not published: {count}{problems[0]}; settle it, or publish without strict")


class LostCautionError(PublishError):
    """A page was rendered without one of its cautions: a template left it out."""

    def __init__(self, path: Path, caution: str) -> None:
        self.caution = caution
        super().__init__(
            path, f"the page lacks a caution ({caution!r})", "mend publish/templates so that every caution is shown"
        )


class WrittenTwiceError(PublishError):
    """Two parts of the site claim the same file."""

    def __init__(self, path: Path) -> None:
        super().__init__(path, "two parts of the site claim this file", "rename one of them")
