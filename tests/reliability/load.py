"""Large work: 10,000-point outlines, 200 drivers in one car, 1,000 findings; the time of what a person waits for.

    PYTHONPATH=. nice python tests/reliability/load.py [outlines|drivers|findings]

Times are the median of several goes, in s of the processor, so that other work on the machine does not count.
"""

import contextlib
import io
import os
import sys
import time
import tomllib
from math import cos, pi, sin
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

os.environ["QT_QPA_PLATFORM"] = "offscreen"
FOLDER = TemporaryDirectory()
for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"):
    os.environ[name] = FOLDER.name

import tomlkit
from PySide6.QtWidgets import QApplication

from fitcalc.checks.limits import BUILT_IN
from fitcalc.cli import main
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, save
from fitcalc.window.program import open_window

POINTS, DRIVERS, FINDINGS = 10_000, 200, 1_000


def timed(what, act, goes=3):
    """Prints how long something takes."""
    taken = []
    for _ in range(goes):
        began = time.process_time()
        found = act()
        taken.append(time.process_time() - began)
    print(f"{what}: {median(taken):.2f} s", flush=True)
    return found


def command(*words):
    """Runs a command without its print."""
    with contextlib.redirect_stdout(io.StringIO()) as printed:
        status = main([str(word) for word in words])
    if status not in (0, 1):
        raise AssertionError(f"status {status}")
    return printed.getvalue()


def sample(name):
    return tomllib.loads(sample_path(name).read_text(encoding="utf-8"))


def written(name, document):
    path = Path(FOLDER.name, name)
    path.write_text(tomlkit.dumps(document), encoding="utf-8")
    return path


def in_window(application, *paths):
    """The times of the window on these files; the window itself."""
    began = time.process_time()
    window = open_window(application, [str(path) for path in paths])
    window.show()
    application.processEvents()
    window.session.finish_evaluation()
    application.processEvents()
    print(f"window, until everything is shown: {time.process_time() - began:.2f} s", flush=True)
    steps = iter(range(1, 1000))

    def edit(ref="setup.seat_travel"):
        window.session.edit(ref, float(next(steps)), "edit")
        application.processEvents()

    def drag():
        gesture = window.session.gesture("drag")
        window.session.edit("setup.seat_travel", float(next(steps)), "drag", gesture="drag")
        application.processEvents()
        return gesture

    timed("window, one edit of the rework", edit, 5)
    timed("window, one step of a drag", drag, 9)
    timed("window, one undo", lambda: (window.session.undo_stack.undo(), application.processEvents()), 2)
    for view in ("plan", "pads", "side"):
        timed(
            f"window, {view} view",
            lambda view=view: (window.centre.show_view(view), application.processEvents()),
            1,
        )
    timed("window, work kept for recovery", window.autosave.keep, 3)
    timed(
        "window, worksheet sections opened",
        lambda: ([each.open() for each in window.worksheet.sections], application.processEvents()),
        1,
    )
    timed("window, an edit of the car with all sections open", lambda: edit("car.footwell.bulkhead"), 3)
    return window


def closed(window, application):
    window._may_close = True
    window.close()
    window.deleteLater()
    application.processEvents()


def outlines(application):
    """Floor, roof and an obstacle of 10,000 points each."""
    car = sample("hillclimb")
    xs = [-120.0 + 1.5e3 * at / POINTS for at in range(POINTS)]
    car["footwell"]["floor"] = [[round(x, 2), round(sin(x / 9), 1)] for x in xs]
    car["footwell"]["roof"] = [[round(x, 2), round(420 + x / 5 + sin(x / 7), 1)] for x in xs]
    turns = [2 * pi * at / POINTS for at in range(POINTS)]
    ring = [[round(845 + 40 * cos(t) * (1 + sin(90 * t) / 9), 1), round(41 + 40 * sin(t), 1)] for t in turns]
    car["footwell"]["obstacles"][1]["outline"] = ring
    path = written("outlines.toml", car)
    path.write_text(path.read_text().replace(", ", ","), encoding="utf-8")
    print(f"{path.stat().st_size / 1e6:.2f} MB")
    document = timed("load", lambda: load_car(path))
    timed("check", lambda: command("check", path, "robin"))
    timed("fit", lambda: command("fit", path, "robin"), 1)
    timed("sheets", lambda: command("sheets", path, "robin", "--out", FOLDER.name), 1)
    moved = document.model_copy(update={"note": "moved"})
    timed("save", lambda: save(moved, path), 1)
    closed(in_window(application, path), application)


def drivers(application):
    """200 drivers in one car."""
    paths = []
    for at in range(DRIVERS):
        driver = sample("robin")
        driver["name"] = f"Driver {at}"
        driver["measurements"]["stature"] = 1600.0 + at
        paths.append(written(f"driver{at}.toml", driver))
    timed(
        "straps of all, as found",
        lambda: command("straps", "hillclimb", *paths, "--setup", written("setup.toml", {"format": 1})),
        1,
    )
    window = open_window(application, [])
    window.show()
    application.processEvents()
    began = time.process_time()
    for path in paths:
        window.filing.open(path)
        application.processEvents()
    print(
        f"window, opening one more of {DRIVERS}: {(time.process_time() - began) / DRIVERS:.3f} s on average"
    )
    timed("window, the last one", lambda: (window.filing.open(paths[-1]), application.processEvents()))
    timed(
        "window, another driver chosen", lambda: (window.commands.next_driver(), application.processEvents())
    )
    timed(
        "window, an edit",
        lambda: (
            window.session.edit("setup.seat_travel", time.monotonic() % 50, "edit"),
            application.processEvents(),
        ),
    )
    timed("window, work kept for recovery", window.autosave.keep)
    closed(window, application)


def findings(application):
    """1,000 findings under a set of rules of one's own."""
    club = tomllib.loads((BUILT_IN / "club.toml").read_text(encoding="utf-8"))
    rows = [row for row in club["limit"] if not row.get("when")]
    many = [rows[at % len(rows)] | {"id": f"row{at}"} for at in range(FINDINGS)]
    path = written("many.toml", {"id": "many", "title": "Many", "editions": ["none"], "limit": many})
    listed = timed("check", lambda: command("check", "hillclimb", "robin", "--rules", path, "--json"))
    print(f"{listed.count(chr(34) + 'margin' + chr(34))} findings")
    timed("check, as tables", lambda: command("check", "hillclimb", "robin", "--rules", path, "--all"))
    timed("fit", lambda: command("fit", "hillclimb", "robin", "--rules", path), 1)
    timed("sheets", lambda: command("sheets", "hillclimb", "robin", "--rules", path, "--out", FOLDER.name), 1)
    os.chdir(FOLDER.name)
    window = in_window(application, written("car.toml", sample("hillclimb") | {"rules": "many.toml"}))
    print(f"window: {window.findings.model.rowCount()} findings")
    closed(window, application)


if __name__ == "__main__":
    parts = {each.__name__: each for each in (outlines, drivers, findings)}
    application = QApplication([])
    for name in sys.argv[1:] or parts:
        print(f"-- {name}")
        parts[name](application)
    sys.stdout.flush()
    os._exit(0)
