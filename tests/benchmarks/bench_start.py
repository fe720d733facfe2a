"""From the start of Python until the window is painted, beside a bare window that imports the same libraries.

Run from the root of the project: python tests/benchmarks/bench_start.py. Each start is a process of its own, the two
kinds by turns, both from compiled modules as an installed program has them.
Goal: the window is there within twice the time of the bare one. "evaluated" is when the findings too
are there; until then the window can be used already.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT, RUNS, GOAL = Path(__file__).resolve().parents[2], 9, 2.0
BARE = """
import numpy, shapely, tomllib
from pydantic import BaseModel
from PySide6.QtWidgets import QApplication, QMainWindow
application = QApplication([])
window = QMainWindow()
window.resize(1280, 800)
window.show()
application.processEvents()
print(time.time(), time.time())
"""
OWN = """
import gc, sys
from fitcalc.window.display import plainly_starts
from fitcalc.window.start import load_core
assert plainly_starts()
gc.disable()
load_core()
from PySide6.QtWidgets import QApplication
from fitcalc.window.program import SWITCH_S, open_window
application = QApplication([])
window = open_window(application, [])
window.show()
sys.setswitchinterval(SWITCH_S)
while not window.windowHandle().isExposed():
    application.processEvents()
window.repaint()
there = time.time()
window.session.finish_evaluation()
window.findings.refresh()
print(there, time.time())
"""


def seconds(code, compiled):
    """From the start of a process until its window is there, and until all of it is."""
    with tempfile.TemporaryDirectory() as home:
        folders = dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"), home)
        settings = {"QT_QPA_PLATFORM": "offscreen", "PYTHONPATH": str(ROOT), "PYTHONPYCACHEPREFIX": compiled}
        environment = os.environ | settings | folders
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        began = time.time()
        told = subprocess.run(
            [sys.executable, "-c", f"import time\n{code}"],
            env=environment,
            capture_output=True,
            text=True,
            check=True,
        )
    return [float(at) - began for at in told.stdout.split()]


def main():
    """Prints the medians and their ratio."""
    with tempfile.TemporaryDirectory() as compiled:
        for code in (BARE, OWN):
            seconds(code, compiled)
        times = [(seconds(BARE, compiled)[0], *seconds(OWN, compiled)) for _ in range(RUNS)]
    bare, there, evaluated = (statistics.median(each) for each in zip(*times, strict=True))
    print(
        f"bare window {bare:.3f} s, window {there:.3f} s ({there / bare:.2f} times), evaluated {evaluated:.3f} s"
    )
    print(f"goal {GOAL:g} times: {'held' if there <= GOAL * bare else 'missed'}")


if __name__ == "__main__":
    main()
