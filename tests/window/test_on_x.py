"""The program on a real X server, seen from outside by a screenshot."""

import os
import shutil
import subprocess
import sys
import time

import pytest
from PySide6.QtGui import QImage

pytestmark = [
    pytest.mark.xvfb,
    pytest.mark.skipif(shutil.which("Xvfb") is None, reason="Xvfb is not installed"),
]
SCRIPT = """
import sys
from fitcalc.window.start import load_core
load_core()
from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QApplication
from fitcalc.window.program import open_window
application = QApplication([])
window = open_window(application, [])
window.show()
def keep():
    if window.findings.model.rowCount() == 0:
        QTimer.singleShot(100, keep)
        return
    QTimer.singleShot(300, shoot)
def shoot():
    window.screen().grabWindow(0).save(sys.argv[1])
    window.close()
QTimer.singleShot(500, keep)
print(application.platformName(), flush=True)
sys.exit(application.exec())
"""


@pytest.fixture
def display(tmp_path):
    """An X server of its own, on a number that it chose itself."""
    read, write = os.pipe()
    server = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1300x820x24", "-nolisten", "tcp"],
        pass_fds=(write,), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    )  # fmt: skip
    os.close(write)
    with os.fdopen(read) as told:
        number = told.readline().strip()
    yield f":{number}"
    server.terminate()
    server.wait()


@pytest.fixture
def environment(display):
    own = {"DISPLAY": display, "QT_QPA_PLATFORM": "xcb"}
    return {name: value for name, value in os.environ.items() if name != "WAYLAND_DISPLAY"} | own


def test_the_window_stands_on_a_real_screen_and_closes(environment, tmp_path):
    shot = tmp_path / "screen.png"
    ran = subprocess.run(
        [sys.executable, "-c", SCRIPT, str(shot)], env=environment, capture_output=True, text=True, timeout=60
    )
    assert ran.returncode == 0, ran.stderr
    assert ran.stdout == "xcb\n"
    image = QImage(str(shot))
    assert (image.width(), image.height()) == (1300, 820)
    seen = {image.pixelColor(x, y).name() for x in range(0, 1280, 2) for y in range(0, 800, 2)}
    assert len(seen) > 20
    assert seen >= {"#f1f2ef", "#fcfcfa", "#a83200"}


def test_the_program_starts_and_ends_there(environment):
    program = subprocess.Popen([sys.executable, "-m", "fitcalc"], env=environment, stderr=subprocess.PIPE)
    time.sleep(2.5)
    alive = program.poll() is None
    program.terminate()
    _, told = program.communicate(timeout=20)
    assert alive, told.decode()
