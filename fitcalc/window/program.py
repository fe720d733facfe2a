"""The application: one window, its guard against bugs, and work that an earlier run left behind."""

import gc
import sys
from pathlib import Path

from PySide6.QtCore import QLoggingCategory
from PySide6.QtWidgets import QApplication

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.window.autosave import discard, left_behind, recover
from fitcalc.window.crash import CrashGuard
from fitcalc.window.look import Look
from fitcalc.window.main_window import MainWindow
from fitcalc.window.memory import give_back
from fitcalc.window.preferences import load_preferences
from fitcalc.window.session import Session
from fitcalc.window.work import new_work

QUIET = "qt.gui.imageio*=false"
"""What Qt need not say: of a spoilt photo the window tells the person itself."""
SWITCH_S = 0.0005
"""How long an evaluation may keep the window's thread from running: a paint asks for its turn some twenty times."""
FIRST_CAR, FIRST_DRIVER = "hillclimb", "robin"


def run(paths: list[str]) -> int:
    """Shows the window until it is closed."""
    give_back()
    application = QApplication(sys.argv[:1])
    window = open_window(application, paths)
    guard = CrashGuard(window.autosave.keep, window.autosave.text, window.notice.say)
    window.show()
    gc.freeze()
    sys.setswitchinterval(SWITCH_S)
    status = application.exec()
    guard.release()
    return status


def open_window(application: QApplication, paths: list[str]) -> MainWindow:
    """A window on the files named; else on what a crash left behind; else on a sample."""
    application.setApplicationName("fitcalc")
    QLoggingCategory.setFilterRules(QUIET)
    application.setStyle("Fusion")
    preferences = load_preferences()
    session = Session(new_work(*first_documents()), preferences)
    window = MainWindow(session, Look(application, preferences))
    session.setParent(window)
    for path in paths:
        window.filing.open(_path(path))
    session.undo_stack.clear()
    if not paths:
        take_back(window)
    return window


def first_documents() -> tuple[Car, Driver]:
    """The sample that the first start opens."""
    return load_car(sample_path(FIRST_CAR)), load_driver(sample_path(FIRST_DRIVER))


def take_back(window: MainWindow) -> None:
    """Goes on with the newest work that a crash left behind."""
    path, kept = next(((path, kept) for path in left_behind() if (kept := recover(path))), (None, None))
    if path is None or kept is None:
        return
    begun = window.session.work
    window.session.take_over(kept.work, kept.originals, kept.files)
    window.autosave.keep()
    discard(path)
    window.notice.say(
        f"The last run ended unexpectedly. The work is back as it was at {kept.when}; it is not saved.",
        ("Start afresh", lambda: window.session.push("start afresh", begun)),
    )


def _path(name: str) -> Path:
    """The file, or the sample of that name where there is no such file."""
    path = Path(name)
    return path if path.exists() or path.suffix else sample_path(name)
