"""The program with a window: what must be there before it, and what it opens with."""

import gc
import os
import sys
from typing import TYPE_CHECKING

from fitcalc.window.display import plainly_starts

if TYPE_CHECKING:
    from subprocess import Popen

LIBRARIES = (
    "libegl1 libgl1 libxkbcommon0 libdbus-1-3 libfontconfig1 libxcb-icccm4 libxcb-keysyms1 libxcb-image0 "
    "libxcb-render-util0 libxkbcommon-x11-0 libxcb-shape0 libxcb-cursor0"
)
"""Debian and Ubuntu packages that Qt needs."""
TRIAL = "import sys; from PySide6.QtWidgets import QApplication; QApplication(sys.argv[:1])"
TRIAL_LIMIT_S = 30
CANNOT_START = 2


def start(paths: list[str]) -> int:
    """Opens the window on these files, or on a sample; the exit status is 2 where a window can't be had.

    Until the window stands no garbage is looked for: what is made stays, and each look would go through all of it.
    From then on the window does it (`window.garbage`).
    """
    is_plain = plainly_starts()
    trial = None if is_plain else _trial()
    gc.disable()
    load_core()
    if trial is not None and not _succeeds(trial):
        gc.enable()
        sys.stderr.write(f"fitcalc: {no_window()}\n")
        return CANNOT_START
    from fitcalc.window.program import run

    return run(paths)


def no_window() -> str:
    """Why there is no window and what to do, as one sentence."""
    return (
        "the window can't start because a system library or a display is missing: on Debian or Ubuntu install "
        f"{LIBRARIES}, or set QT_QPA_PLATFORM=offscreen where there is no display; the other commands need neither."
    )


def _trial() -> "Popen[bytes]":
    """Qt started in a process of its own, because Qt ends the process that it can't start in."""
    import subprocess

    environment = os.environ | {"QT_FATAL_WARNINGS": ""}
    return subprocess.Popen(
        [sys.executable, "-c", TRIAL], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=environment
    )


def load_core() -> None:
    """Loads all that needs no Qt: while the trial runs, and before Qt, which makes every later import dearer.

    Of pydantic's plugins there are none here; to look for them it would read about every installed package.
    """
    os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "__all__")
    import fitcalc.documents.samples
    import fitcalc.documents.store
    import fitcalc.window.pictures
    import fitcalc.window.previews  # noqa: F401


def _succeeds(trial: "Popen[bytes]") -> bool:
    from subprocess import TimeoutExpired

    try:
        return trial.wait(TRIAL_LIMIT_S) == 0
    except TimeoutExpired:
        trial.kill()
        return False
