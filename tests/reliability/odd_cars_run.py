"""Each odd car through the commands and the window: computed, or refused with one sentence; never a fault.

    PYTHONPATH=. nice python tests/reliability/odd_cars_run.py [part of a name]

`sheets` takes most of the time; with QUICK set in the environment it is left out.

What a car comes to is printed by command: computed (with or without a limit broken), refused, or FAULT.
"""

import contextlib
import io
import os
import sys
import time
import traceback
import warnings
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

os.environ["QT_QPA_PLATFORM"] = "offscreen"
FOLDER = TemporaryDirectory()
for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"):
    os.environ[name] = FOLDER.name

import numpy as np
import tomlkit
from odd_cars import odd_cars
from PySide6.QtCore import QEvent, qInstallMessageHandler
from PySide6.QtWidgets import QApplication

from fitcalc.cli import main
from fitcalc.window.program import open_window

WORDS = {0: "computed", 1: "computed", 2: "refused"}
COMMANDS = (
    "check",
    "check --json",
    "fit",
    "pedals",
    "straps",
    *(() if "QUICK" in os.environ else ("sheets",)),
)
SLOW_S = 20.0


def command(words, car, driver, out):
    """What one command comes to, and what it printed."""
    name, *options = words.split()
    options += ["--out", out] if name == "sheets" else []
    printed, told = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(told):
        status = main([name, car, driver, *options])
    sentence = told.getvalue().strip()
    if status == 2 and ("\n" in sentence or not sentence):
        raise AssertionError(f"not one sentence: {sentence}")
    if any(word in printed.getvalue().lower().split() for word in ("nan", "inf", "-inf")):
        raise AssertionError("a number that is none was printed")
    return WORDS[status], sentence


def shown(application, path):
    """What the window comes to: every view and the sweep drawn."""
    window, faults = open_window(application, [str(path)]), []
    sys.excepthook = lambda kind, error, trace: faults.extend(traceback.format_exception(kind, error, trace))
    window.show()
    application.processEvents()
    window.session.finish_evaluation()
    for view in ("side", "plan", "pads"):
        window.centre.show_view(view)
        application.processEvents()
    opened = window.session.path_of(window.session.work.car) is not None
    for at in range(window.centre.sweep.what.count()):
        window.centre.sweep.what.setCurrentIndex(at)
        window.centre.sweep.what.activated.emit(at)
        window.centre.sweep.worst.click()
        application.processEvents()
    window._may_close = True
    window.close()
    window.deleteLater()
    application.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    sys.excepthook = sys.__excepthook__
    if faults:
        raise AssertionError("".join(faults[-2:]))
    return "computed" if opened else "refused", ""


def outcome(act, *given):
    """What came of it, in a word and a sentence."""
    began = time.process_time()
    try:
        with np.errstate(invalid="raise", divide="raise", over="raise"):
            word, told = act(*given)
    except Exception as error:
        frames = [each for each in traceback.extract_tb(error.__traceback__) if "/fitcalc/" in each.filename]
        where = " < ".join(f"{Path(each.filename).name}:{each.lineno}" for each in reversed(frames[-3:]))
        return "FAULT", f"{type(error).__name__}: {error} ({where})"
    seconds = time.process_time() - began
    return ("FAULT", f"{seconds:.0f} s") if seconds > SLOW_S else (word, told)


def run(wanted):
    """Prints what each car comes to; 1 where there is a fault."""
    warnings.simplefilter("error")
    application, heard = QApplication([]), []
    qInstallMessageHandler(lambda kind, context, text: heard.append(text))
    count = Counter()
    for name, car in odd_cars().items():
        if wanted not in name:
            continue
        path = Path(FOLDER.name, "odd.toml")
        path.write_text(tomlkit.dumps(car), encoding="utf-8")
        found = {words: outcome(command, words, str(path), "robin", FOLDER.name) for words in COMMANDS}
        found["window"] = outcome(shown, application, path)
        count.update(word for word, _ in found.values())
        print(f"{name}: {', '.join(f'{words} {word}' for words, (word, _) in found.items())}", flush=True)
        for told in dict.fromkeys(told for _, told in found.values() if told):
            print(f"    {told}", flush=True)
    spoken = [text for text in heard if not text.startswith("This plugin does not support")]
    print(*dict.fromkeys(spoken), sep="\n")
    print(dict(count), f"{len(spoken)} warnings of Qt")
    return 1 if count["FAULT"] or spoken else 0


if __name__ == "__main__":
    status = run(" ".join(sys.argv[1:]))
    sys.stdout.flush()
    os._exit(status)
