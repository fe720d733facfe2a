"""What is shown while a command works for more than a moment: how far it is, where a person watches."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fitcalc.fit.progress import Progress


@contextmanager
def watched(doing: str) -> "Iterator[Progress]":
    """A progress to hand to a calculation: one line on a terminal, wiped at the end; nothing elsewhere."""
    shown = sys.stderr.isatty()

    def progress(done: float) -> bool:
        if shown:
            print(f"\r{doing}: {100 * min(done, 1.0):.0f} %", end="", file=sys.stderr, flush=True)
        return True

    try:
        yield progress
    finally:
        if shown:
            print("\r\033[K", end="", file=sys.stderr, flush=True)
