"""The measuring guide for car and driver."""

import numpy as np
import pytest

from fitcalc.documents.car import Car
from fitcalc.documents.declared import declared_at
from fitcalc.documents.driver import Driver
from fitcalc.documents.edit import field_at
from fitcalc.documents.guide import example_path, guide_for, guides
from fitcalc.documents.setup import Setup

POINTS = ({"x", "y", "z"}, {"x", "z"})
UNMEASURED = ("format", "tape", "targets", "photo")
GUIDES = [(kind, guide) for kind in (Car, Driver) for guide in guides(kind).values()]
each_guide = pytest.mark.parametrize(("kind", "guide"), GUIDES, ids=lambda value: getattr(value, "field", ""))


def measured(kind, names, above=""):
    """Every path below a section whose value is a number, a point or a line."""
    for name in names:
        if name not in UNMEASURED:
            yield from measured_at(kind, f"{above}{name}")


def measured_at(kind, path):
    declared = declared_at(kind, path)
    entry = declared_at(kind, f"{path}.0") if declared.kind == "list" else None
    if entry is not None and entry.kind == "section":
        yield from measured_at(kind, f"{path}.0")
    elif declared.kind in ("number", "list") or set(declared.names) - {"tolerance", "note"} in POINTS:
        yield path
    elif declared.kind == "section":
        yield from measured(kind, declared.names, f"{path}.")


@pytest.mark.parametrize("path", [*measured(Car, Car.model_fields)])
def test_every_measurement_of_the_car_has_a_guide(path):
    assert guide_for(Car, path) is not None


@pytest.mark.parametrize("path", [*measured(Driver, Driver.model_fields)])
def test_every_measurement_of_the_driver_has_a_guide_of_its_own(path):
    assert guide_for(Driver, path).field == path


@pytest.mark.parametrize("kind", [Car, Driver])
def test_nothing_else_has_a_guide(kind):
    found = {guide_for(kind, path).field for path in measured(kind, kind.model_fields)}
    assert found == set(guides(kind))


@pytest.mark.parametrize(
    ("path", "field"),
    [
        ("pedals.clutch.arm", "pedals.*.arm"),
        ("pedals.throttle.pivot.z", "pedals.*.pivot"),
        ("seat.mounts.2.x", "seat.mounts.*"),
        ("seat.slots.1.z", "seat.slots.*"),
        ("seat.slots.1.length", "seat.slots.*.length"),
        ("footwell.obstacles.0.radius", "footwell.obstacles.*.radius"),
        ("footwell.floor.1.0", "footwell.floor"),
        ("gear_lever.knobs", "gear_lever.knobs.*"),
        ("harness.guide.diameter", "harness.guide.diameter"),
    ],
)
def test_a_path_finds_the_guide_of_its_pattern(path, field):
    assert guide_for(Car, path).field == field


@pytest.mark.parametrize(
    ("kind", "path"),
    [(Car, "name"), (Car, "pedals"), (Car, "pedals.brake"), (Driver, "name"), (Setup, "seat_travel")],
)
def test_what_is_not_measured_has_no_guide(kind, path):
    assert guide_for(kind, path) is None


@each_guide
def test_texts_come_from_the_file_s_own_fields_and_add_to_them(kind, guide):
    declared = field_at(kind, example_path(guide.field.removesuffix(".*")))
    assert (guide.title, guide.how) == (declared.title, declared.description)
    assert guide.how != ""
    assert guide.care.endswith(".")
    assert guide.decides.endswith(".")
    assert guide.error > 0


@each_guide
def test_drawing_stays_in_its_box(kind, guide):
    drawing = guide.drawing
    runs = [*drawing.lines, *drawing.thin, *(tape.ends for tape in drawing.tapes)]
    runs += [drawing.spots, *(run for arc in drawing.arcs for run in (arc.legs(), arc.curve()))]
    spots = np.array([spot for run in runs for spot in run])
    circles = np.array(drawing.circles).reshape(-1, 3)
    assert spots.min() >= 0
    assert spots.max() <= 100
    assert (circles[:, :2] >= circles[:, 2:]).all()
    assert (circles[:, :2] + circles[:, 2:] <= 100).all()


@each_guide
def test_drawing_shows_where_to_measure(kind, guide):
    drawing = guide.drawing
    assert drawing.tapes or drawing.arcs or drawing.spots
    assert all(start != end for start, end in (tape.ends for tape in drawing.tapes))
    assert all(arc.radius > 0 and arc.start != arc.end for arc in drawing.arcs)


@pytest.mark.parametrize("guide", [*guides(Car).values()], ids=lambda guide: guide.field)
def test_an_angle_is_drawn_as_an_arc_and_a_weight_as_a_scale(guide):
    assert bool(guide.drawing.arcs) == (guide.unit == "deg")
    assert (not guide.drawing.tapes and not guide.drawing.arcs) == (guide.unit == "kg")
