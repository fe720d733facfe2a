"""Whether Qt can plainly start here, found out without starting it, because Qt ends a process that it can't start in."""

import ctypes
import os
import sys
from importlib.util import find_spec
from pathlib import Path

PLUGINS = {"offscreen": "libqoffscreen.so", "xcb": "libqxcb.so"}


def plainly_starts() -> bool:
    """Whether the platform plugin loads and, on X, the display answers; False where only a trial can tell."""
    platform = _platform()
    if not sys.platform.startswith("linux") or platform not in PLUGINS:
        return False
    try:
        ctypes.CDLL(str(_plugin_folder() / PLUGINS[platform]))
        return platform == "offscreen" or _display_answers()
    except OSError:
        return False


def _platform() -> str:
    """The platform that Qt will take; empty where that is not plain."""
    asked = os.environ.get("QT_QPA_PLATFORM", "")
    if asked or "QT_PLUGIN_PATH" in os.environ or "QT_QPA_PLATFORM_PLUGIN_PATH" in os.environ:
        return asked
    return "" if "WAYLAND_DISPLAY" in os.environ or "DISPLAY" not in os.environ else "xcb"


def _plugin_folder() -> Path:
    spec = find_spec("PySide6")
    places = spec.submodule_search_locations if spec else None
    return Path(next(iter(places or ["."]))) / "Qt" / "plugins" / "platforms"


def _display_answers() -> bool:
    """Whether the X server named by DISPLAY lets this process in."""
    xcb = ctypes.CDLL("libxcb.so.1")
    xcb.xcb_connect.restype = ctypes.c_void_p
    xcb.xcb_connect.argtypes = (ctypes.c_char_p, ctypes.c_void_p)
    xcb.xcb_connection_has_error.argtypes = (ctypes.c_void_p,)
    xcb.xcb_disconnect.argtypes = (ctypes.c_void_p,)
    connection = xcb.xcb_connect(None, None)
    answers = xcb.xcb_connection_has_error(connection) == 0
    xcb.xcb_disconnect(connection)
    return answers
