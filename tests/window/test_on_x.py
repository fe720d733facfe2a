"""The program on a real X server, seen from outside by a screenshot."""

import os
import shutil
import subprocess
import sys

import pytest
from PySide6.QtGui import QImage

pytestmark = [
    pytest.mark.xvfb,
    pytest.mark.skipif(shutil.which("Xvfb") is None, reason="Xvfb is not installed"),
]
WANTED = {"#f1f2ef", "#fcfcfa", "#a83200"}
"""Panel, paper, and the word of a finding that fails: on the screen as soon as the results are."""
PATIENCE_S = 50
SHOOT = """
import sys
import time
from PySide6.QtWidgets import QApplication

def seen_in(image):
    return {image.pixelColor(x, y).name() for x in range(0, 1280, 2) for y in range(0, 800, 2)}

def shot_of(screen):
    \"\"\"The first screenshot that shows what is wanted, or the last one that patience allows.\"\"\"
    file, patience, *wanted = sys.argv[1:]
    until = time.monotonic() + float(patience)
    while True:
        shot = screen.grabWindow(0)
        if time.monotonic() > until or seen_in(shot.toImage()) >= set(wanted):
            shot.save(file)
            return
        yield
"""
FROM_WITHIN = f"""{SHOOT}
from fitcalc.window.start import load_core
load_core()
from PySide6.QtCore import QTimer
from fitcalc.window.program import open_window
application = QApplication([])
window = open_window(application, [])
window.show()
looks = shot_of(window.screen())

def look():
    if next(looks, "taken") == "taken":
        window.close()
    else:
        QTimer.singleShot(200, look)

look()
print(application.platformName(), flush=True)
sys.exit(application.exec())
"""
FROM_WITHOUT = f"""{SHOOT}
application = QApplication([])
for _ in shot_of(application.primaryScreen()):
    time.sleep(0.2)
"""


@pytest.fixture
def display():
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


@pytest.fixture
def shot(tmp_path, environment):
    """Runs a script that takes a screenshot; how it ended, and the picture."""

    def taken(script):
        file = tmp_path / "screen.png"
        command = [sys.executable, "-c", script, str(file), str(PATIENCE_S), *WANTED]
        ran = subprocess.run(command, env=environment, capture_output=True, text=True, timeout=2 * PATIENCE_S)
        assert ran.returncode == 0, ran.stderr
        return ran, QImage(str(file))

    return taken


def colours_of(image):
    return {image.pixelColor(x, y).name() for x in range(0, 1280, 2) for y in range(0, 800, 2)}


def test_the_window_stands_on_a_real_screen_and_closes(shot):
    ran, image = shot(FROM_WITHIN)
    assert ran.stdout == "xcb\n"
    assert (image.width(), image.height()) == (1300, 820)
    assert len(colours_of(image)) > 20
    assert colours_of(image) >= WANTED


def test_the_program_starts_there_and_goes_on(environment, shot):
    program = subprocess.Popen([sys.executable, "-m", "fitcalc"], env=environment, stderr=subprocess.PIPE)
    _, image = shot(FROM_WITHOUT)
    alive = program.poll() is None
    program.terminate()
    _, told = program.communicate(timeout=20)
    assert alive, told.decode()
    assert colours_of(image) >= WANTED
