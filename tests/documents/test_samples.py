"""The bundled samples are found, load, and are told by name."""

import subprocess
import sys

import pytest

from fitcalc.documents import samples
from fitcalc.documents.store import load_car, load_driver
from fitcalc.errors import InputError


@pytest.mark.parametrize("path", samples.sample_cars().values(), ids=samples.sample_cars().keys())
def test_sample_car_loads(path):
    assert load_car(path).name


@pytest.mark.parametrize("path", samples.sample_drivers().values(), ids=samples.sample_drivers().keys())
def test_sample_driver_loads(path):
    assert load_driver(path).name


def test_sample_is_found_by_name():
    assert load_car(samples.sample_path("hillclimb")).pedals.brake
    name = next(iter(samples.sample_drivers()))
    assert load_driver(samples.sample_path(name)).measurements.stature
    with pytest.raises(InputError, match=r"hilclimb\" is not a sample: .*; perhaps hillclimb is meant"):
        samples.sample_path("hilclimb")


def test_samples_inside_the_package_come_first(tmp_path, monkeypatch):
    inside = tmp_path / "fitcalc" / "sample_chassis"
    (inside / "drivers").mkdir(parents=True)
    (inside / "only.toml").touch()
    monkeypatch.setattr(samples, "__file__", str(tmp_path / "fitcalc" / "documents" / "samples.py"))
    assert samples.sample_path("only") == inside / "only.toml"


def test_loading_imports_nothing_heavy():
    code = "import sys, fitcalc.documents.store; print(*{name.partition('.')[0] for name in sys.modules})"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(run.stdout.split()) - set(sys.stdlib_module_names)
    assert not loaded & {"numpy", "shapely", "tomlkit", "matplotlib", "scipy", "PySide6", "hypothesis"}
