"""Memory of work that is over is given back to the system, where the C library would keep it for its threads."""

import ctypes
import sys

TRIM, MMAP, ARENAS = -1, -3, -8
"""Parameters of glibc's `mallopt`: M_TRIM_THRESHOLD, M_MMAP_THRESHOLD, M_ARENA_MAX."""
SETTINGS = ((ARENAS, 1), (MMAP, 1_000_000), (TRIM, 4_000_000))


def give_back() -> bool:
    """One heap for all threads, and large arrays outside it; whether the C library could be told so."""
    if not sys.platform.startswith("linux"):
        return False
    tell = getattr(ctypes.CDLL(None), "mallopt", None)
    return tell is not None and all(tell(*setting) == 1 for setting in SETTINGS)
