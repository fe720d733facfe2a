"""A monkey at the real window, offscreen: random events for minutes, while faults are caught and memory is watched.

    PYTHONPATH=. nice python tests/reliability/monkey_run.py [seconds] [seed]

A fault is an exception that nobody caught, a warning of Python or Qt, a thread or a timer left, an act that hangs, or
memory that ends more than a tenth above what it was after the warm-up. Memory is compared at equal work: a fresh window
on the first sample, everything put away and collected. The warm-up opens every panel, study and dialog once, because
what the program loads when it is first needed is no leak, and then lets the monkey act for a fifth of the time.
"""

import ctypes
import faulthandler
import gc
import os
import random
import sys
import tempfile
import threading
import time
import traceback
import warnings
from collections import Counter, deque
from pathlib import Path

HANG_S = 120.0
"""An act that takes longer by the clock hangs, also on a machine that others keep busy."""
WARM_UP = 0.2
"""Part of the run after which memory must stay flat."""
NOT_TOURED = ("quit", "remove_driver", "undo", "redo")
ALLOWED = 1.10
SAMPLE_S = 10.0


def own_home():
    """Settings, recovery and documents of this run alone."""
    home = tempfile.TemporaryDirectory()
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
        os.environ[name] = home.name
    return home


HOME = own_home()

import contextlib

from monkey_acts import Monkey, files_in
from PySide6.QtCore import QEvent, QTimer, qInstallMessageHandler
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QFileDialog, QMessageBox
from shiboken6 import isValid

from fitcalc.window.autosave import recovery_folder
from fitcalc.window.memory import give_back
from fitcalc.window.program import open_window


def resident():
    """Memory in use, MB, after what can be given back was given back."""
    gc.collect()
    with contextlib.suppress(OSError, AttributeError):
        ctypes.CDLL("libc.so.6").malloc_trim(0)
    return resident_now()


def resident_now():
    return int(Path("/proc/self/statm").read_text().split()[1]) * os.sysconf("SC_PAGESIZE") / 1e6


class Watch:
    """Everything that must not happen, in words, with the acts before it."""

    def __init__(self):
        self.faults, self.acts = Counter(), deque(maxlen=12)
        sys.excepthook = lambda kind, error, trace: self.note(
            "".join(traceback.format_exception(kind, error, trace))
        )
        threading.excepthook = lambda given: self.note(
            f"in a thread: {given.exc_type.__name__} {given.exc_value}"
        )
        sys.unraisablehook = lambda given: self.note(f"unraisable: {given.exc_value!r} in {given.object!r}")
        qInstallMessageHandler(self.heard)
        warnings.simplefilter("error")

    def heard(self, kind, context, text):
        """Whatever Qt says, but for what its offscreen plugin says of itself."""
        if not text.startswith("This plugin does not support"):
            self.note(f"Qt {kind.name}: {text}")

    def note(self, words):
        self.faults[words] += 1
        if self.faults[words] == 1:
            print(f"FAULT after {' | '.join(self.acts)}\n{words}", flush=True)


class Run:
    """One application, one window after another."""

    def __init__(self, seconds, seed):
        self.seconds, self.watch = seconds, Watch()
        self.chance = random.Random(seed)
        give_back()
        self.application = QApplication([])
        self.application.setQuitOnLastWindowClosed(False)
        self.slowest, self.acts, self.windows = {}, 0, 0
        self.folder = tempfile.TemporaryDirectory()
        self.files = files_in(Path(self.folder.name))
        self.unblock = QTimer(interval=300)
        self.unblock.timeout.connect(self.press_anything)
        self.unblock.start()

    def press_anything(self):
        """Answers questions that stop everything, as that a file is there already."""
        box = QApplication.activeModalWidget()
        if isinstance(box, QMessageBox) and isinstance(box.parent(), QFileDialog):
            buttons = [each for each in box.findChildren(QAbstractButton) if each.isVisible()]
            if buttons:
                self.chance.choice(buttons).click()

    def open(self):
        """A window as the first start opens it; what an earlier one left behind is taken back by chance."""
        if self.chance.random() < 0.5:
            for file in recovery_folder().glob("*"):
                file.unlink()
        window = open_window(self.application, [])
        window.show()
        QTest.qWaitForWindowExposed(window)
        window.session.finish_evaluation()
        self.windows += 1
        return window

    def tour(self):
        """Everything that can be opened, opened once."""
        window = self.open()
        for section in window.worksheet.sections:
            section.heading.click()
            QApplication.processEvents()
        for write in (window.paperwork.write_sheets, window.paperwork.write_worksheet):
            write(str(self.files[0] / "printed"))
            self.finish(window)
        for name, action in window.menus.actions.items():
            if name not in NOT_TOURED:
                action.trigger()
                self.finish(window)
                self.put_away(window)
        self.close(window)

    def finish(self, window):
        """Waits until what was asked for is shown."""
        window.session.finish_evaluation()
        while window.jobs.is_busy:
            QTest.qWait(20)
        QApplication.processEvents()

    def put_away(self, window):
        """Closes what opened beside a window."""
        for widget in QApplication.topLevelWidgets():
            if widget is not window and widget.isVisible():
                widget.close()

    def close(self, window):
        """Lets a window go, and everything with it."""
        window._may_close = True
        self.put_away(window)
        window.close()
        window.deleteLater()
        self.settle()

    def settle(self):
        for _ in range(3):
            QApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
            QApplication.processEvents()
        gc.collect()

    def one_act(self, monkey):
        faulthandler.dump_traceback_later(HANG_S, exit=True)
        began = time.perf_counter()
        try:
            told = monkey.act()
        except Exception:
            told = "an act failed"
            self.watch.note(traceback.format_exc())
        self.watch.acts.append(told)
        QApplication.processEvents()
        faulthandler.cancel_dump_traceback_later()
        name = told.split()[0]
        self.slowest[name] = max(self.slowest.get(name, (0.0, "")), (time.perf_counter() - began, told))
        self.acts += 1

    def monkey_for(self, seconds):
        """Acts for so long; a window that is left is followed by another."""
        window, until, sampled = self.open(), time.monotonic() + seconds, time.monotonic()
        monkey = Monkey(self.chance, window, self.files)
        while time.monotonic() < until:
            self.one_act(monkey)
            if not window.isVisible():
                self.close(window)
                window = self.open()
                monkey = Monkey(self.chance, window, self.files)
            if time.monotonic() - sampled > SAMPLE_S:
                sampled = time.monotonic()
                print(f"{self.acts} acts, {resident_now():.0f} MB", flush=True)
        self.close(window)

    def at_rest(self):
        """Memory with a fresh window on the first sample."""
        for file in recovery_folder().glob("*"):
            file.unlink()
        window = self.open()
        QTest.qWait(500)
        while window.session.evaluation.is_busy:
            QTest.qWait(50)
        found = resident()
        kinds = Counter(type(each).__name__ for each in gc.get_objects())
        self.close(window)
        return found, kinds

    def left(self):
        """Threads, timers and widgets that outlive the last window."""
        self.unblock.stop()
        self.settle()
        timers = [
            each for each in gc.get_objects() if type(each) is QTimer and isValid(each) and each.isActive()
        ]
        widgets = QApplication.topLevelWidgets()
        files = [each.name for each in recovery_folder().glob("*")]
        return [*threading.enumerate()[1:], *timers, *widgets, *files]

    def run(self):
        """Prints what came of it; 1 where anything is wrong."""
        cold, _ = self.at_rest()
        self.tour()
        self.monkey_for(WARM_UP * self.seconds)
        warm, before = self.at_rest()
        print(f"{cold:.0f} MB at first, {warm:.0f} MB after the warm-up", flush=True)
        self.monkey_for((1.0 - WARM_UP) * self.seconds)
        end, after = self.at_rest()
        print(f"{self.acts} acts in {self.windows} windows and {self.seconds:g} s")
        print(
            f"memory: {warm:.1f} MB after the warm-up, {end:.1f} MB at the end ({100 * (end / warm - 1):+.1f} %)"
        )
        grown = {name: after[name] - before[name] for name in after if after[name] > before[name] + 20}
        print("objects that became more:", dict(sorted(grown.items(), key=lambda each: -each[1])[:25]))
        for seconds, told in sorted(self.slowest.values(), reverse=True)[:6]:
            print(f"slowest: {seconds:.2f} s {told}")
        for each in self.left():
            self.watch.note(f"left: {each!r}")
        if end > ALLOWED * warm:
            self.watch.note("memory grew by more than a tenth")
        print(f"{sum(self.watch.faults.values())} faults of {len(self.watch.faults)} kinds")
        self.folder.cleanup()
        return 1 if self.watch.faults else 0


if __name__ == "__main__":
    given = [float(each) for each in sys.argv[1:]]
    seconds, seed = (*given, *(600.0, 9.0)[len(given) :])
    status = Run(seconds, int(seed)).run()
    HOME.cleanup()
    sys.stdout.flush()
    os._exit(status)
