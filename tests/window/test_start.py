import os
import subprocess
import sys

from PySide6.QtCore import QObject

from fitcalc.window.start import LIBRARIES, no_window, start

CALLS = 100_000


def test_no_display_is_one_sentence_with_the_packages_and_status_2(tmp_path):
    environment = {name: value for name, value in os.environ.items() if "DISPLAY" not in name}
    environment |= {"QT_QPA_PLATFORM": "xcb", "XDG_RUNTIME_DIR": str(tmp_path)}
    ended = subprocess.run([sys.executable, "-m", "fitcalc"], env=environment, capture_output=True, text=True)
    assert ended.returncode == 2
    assert ended.stdout == ""
    assert ended.stderr.count("\n") == 1
    assert LIBRARIES in ended.stderr
    assert "QT_QPA_PLATFORM=offscreen" in ended.stderr


def test_the_sentence_names_the_cursor_library_of_xcb():
    assert "libxcb-cursor0" in no_window()


def test_a_platform_that_does_not_exist_is_no_window(monkeypatch, capsys):
    monkeypatch.setenv("QT_QPA_PLATFORM", "nowhere")
    assert start([]) == 2
    assert "can't start" in capsys.readouterr().err


def test_a_hundred_thousand_calls_that_return_nothing_do_not_use_up_none():
    """PySide6 6.12.0 on Python 3.11 gives back one reference to None too many at each such call."""
    before, thing = sys.getrefcount(None), QObject()
    for _ in range(CALLS):
        thing.setObjectName("seat")
    assert sys.getrefcount(None) > before - CALLS // 10
