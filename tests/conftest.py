"""Shared set-up: no silent arithmetic, no display, no settings of the person who runs the tests."""

import os

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # on systems this small, threads only wait for one another

import numpy as np
import pytest
from hypothesis import settings

settings.register_profile("fast", max_examples=30, deadline=None)
settings.register_profile("thorough", max_examples=1_000, deadline=None)
settings.load_profile("fast")


@pytest.fixture(autouse=True)
def strict_arithmetic():
    with np.errstate(invalid="raise", divide="raise", over="raise"):
        yield


@pytest.fixture(autouse=True)
def own_home(tmp_path, monkeypatch):
    home = tmp_path / "home"
    home.mkdir()
    for name in ("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
        monkeypatch.setenv(name, str(home))


@pytest.fixture(autouse=True)
def wide_terminal(monkeypatch):
    monkeypatch.setenv("COLUMNS", "150")
