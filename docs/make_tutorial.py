"""The tutorial's outputs: runs each command of `docs/tutorial.md` and puts what it prints below it.

Run: python docs/make_tutorial.py

A block marked `console` starts with `$` and the command; `...` on a line of its own below stands for what is left out
at that end, and a number in brackets behind the mark says how many lines are shown: `console 12` the first twelve,
`console after WORDS 8` eight from the first line that starts with these words.
"""

import io
import os
import re
import shlex
from contextlib import chdir, redirect_stdout
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

from fitcalc.cli import main as run

PAGE = Path(__file__).with_name("tutorial.md")
WIDTH = "110"
BLOCK = re.compile(
    r"```console(?: after (?P<words>[^\n]*?))? (?P<count>\d+)\n\$ (?P<command>[^\n]*)\n.*?```", re.DOTALL
)
FILE = re.compile(r"```toml (?P<name>\S+)\n(?P<text>.*?)```", re.DOTALL)


def page(text: str) -> str:
    """The page with the outputs that the commands give now."""
    with TemporaryDirectory() as folder, chdir(folder), patch.dict(os.environ, COLUMNS=WIDTH):
        for file in FILE.finditer(text):
            Path(file["name"]).write_text(file["text"], encoding="utf-8")
        return BLOCK.sub(filled, text)


def filled(block: re.Match[str]) -> str:
    """One block with what its command prints now."""
    head = block[0].partition("\n")[0]
    return "\n".join((head, f"$ {block['command']}", *shown(printed(block["command"]), block), "```"))


def printed(command: str) -> list[str]:
    """What a command prints, or what it writes to a file that is shown with `cat`."""
    program, *words = shlex.split(command)
    if program == "cat":
        return Path(words[0]).read_text("utf-8").splitlines()
    told = io.StringIO()
    with redirect_stdout(told):
        run(words)
    return told.getvalue().splitlines()


def shown(lines: list[str], block: re.Match[str]) -> list[str]:
    """The part of an output that the page shows."""
    words, count = block["words"] or "", int(block["count"])
    start = next(at for at, line in enumerate(lines) if line.startswith(words))
    part = [line.rstrip() for line in lines[start : start + count]]
    return [*(["..."] if start else []), *part, *(["..."] if start + count < len(lines) else [])]


def main() -> None:
    """Brings the page's outputs up to date."""
    PAGE.write_text(page(PAGE.read_text("utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
