"""One value replaced by its path: validated, and nothing else touched."""

import pytest
from examples import CAR
from hypothesis import HealthCheck, given, settings

from fitcalc.documents.car import Car
from fitcalc.documents.edit import field_at, value_at, with_value
from fitcalc.documents.fields import Document
from fitcalc.documents.store import parse
from fitcalc.errors import InputError
from tests.strategies import cars


@pytest.fixture(scope="module")
def car():
    return parse(Car, CAR, "car.toml")


def places(value, path=""):
    """Path and value of everything in a document."""
    if isinstance(value, Document):
        entries = [(name, getattr(value, name)) for name in type(value).model_fields]
    else:
        entries = list(enumerate(value)) if isinstance(value, tuple) else []
    for name, entry in entries:
        yield f"{path}{name}", entry
        yield from places(entry, f"{path}{name}.")


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("name", "Other"),
        ("pedals.brake.arm", 255.0),
        ("harness.crotch.0.x", 1010.0),
        ("seat.profile.2.1", 560.0),
        ("footwell.obstacles.0.centre.z", 320.0),
        ("pedals.brake.cylinder.release", {"slave_bore": 20, "fork_ratio": 2, "needed": 10}),
        ("footwell.bulkhead", None),
    ],
)
def test_everything_off_the_path_is_the_same_object(car, path, value):
    now = dict(places(with_value(car, path, value)))
    for place, before in places(car):
        is_on_way = f"{path}.".startswith(f"{place}.") or place.startswith(f"{path}.")
        assert is_on_way or now[place] is before


def test_edit_changes_the_value_and_leaves_the_original(car):
    edited = with_value(car, "pedals.brake.arm", 255)
    assert (car.pedals.brake.arm, edited.pedals.brake.arm) == (250.0, 255.0)
    assert isinstance(edited.pedals.brake.arm, float)
    assert with_value(edited, "pedals.brake.arm", 250.0) == car


@pytest.mark.parametrize(
    ("path", "value", "field", "reason"),
    [
        ("pedals.brake.arm", 25, "pedals.brake.arm", "in cm (250 mm would fit)"),
        ("pedals.brake.arm", float("nan"), "pedals.brake.arm", "is nan"),
        ("pedals.brake.arm", "long", "pedals.brake.arm", 'is "long"'),
        ("pedals.brake.arm", None, "pedals.brake.arm", "is nothing"),
        ("pedals.brake.travel_angle", None, "pedals.brake", "either travel_angle or pad_travel"),
        ("pedals.brake.pivot.x", 1240.0, "pedals.brake.pivot.x", "seat.junction.x, which is 1250"),
        ("pedals.brake.bar.shape", "flt", "pedals.brake.bar.shape", "perhaps flat is meant"),
        ("harness.crotch.0.x", 9999, "harness.crotch.0.x", "from -1500 to 4500 mm"),
        ("harness.crotch.2.x", 1000, "harness.crotch.2", "the list has 2 entries"),
        ("harness.crotch", (), "harness.points", "needs 2 crotch anchors"),
        ("seat.profile.1", (5, 5), "seat", "must pass through [0, 0]"),
        ("steering_wheel.tilt", 10, "steering_wheel.tilt", "steering_wheel is not given"),
        ("pedals.brake.amr", 250, "pedals.brake.amr", "perhaps arm is meant"),
        ("pedals.brake.arm.x", 250, "pedals.brake.arm.x", "it has no fields"),
        ("", 1, "", "not a known field"),
        ("name", "\ud800", "name", "a text in quotes"),
    ],
)
def test_bad_edit_names_the_full_path(car, path, value, field, reason):
    with pytest.raises(InputError) as refused:
        with_value(car, path, value)
    assert refused.value.field == field
    assert reason in str(refused.value)


def test_value_at_reads_sections_lists_and_numbers(car):
    assert value_at(car, "harness.crotch.0.x") == 1000
    assert value_at(car, "seat.profile.2") == (250, 550)
    assert value_at(car, "pedals.brake") is car.pedals.brake
    with pytest.raises(InputError, match=r"pedals.brake.amr is not a known field"):
        value_at(car, "pedals.brake.amr")


def test_field_at_tells_what_a_form_needs():
    arm = field_at(Car, "pedals.brake.arm")
    assert (arm.title, arm.unit, arm.low, arm.high, arm.required) == ("arm length", "mm", 90, 450, True)
    assert arm.description == "From the pivot to the centre of the pad, along the arm."
    assert field_at(Car, "pedals.clutch.bar.bolt").choices == ("M5", "M6", "M8", "M10", "M12")
    assert field_at(Car, "seat.profile.7.1").unit == "mm"
    assert field_at(Car, "harness.crotch.0").kind == "section"
    assert field_at(Car, "footwell.half_widths").kind == "list"


@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
@given(car=cars())
def test_every_place_of_any_car_is_declared_and_can_be_set_to_itself(car):
    for path, value in places(car):
        assert field_at(Car, path).title
        assert with_value(car, path, value) == car


def numbers(kind, path=""):
    """Path of every number that a kind of document declares."""
    declared = field_at(kind, path) if path else None
    if declared is None or declared.kind == "section":
        names = declared.names if declared else kind.model_fields
        for name in names:
            yield from numbers(kind, f"{path}.{name}".lstrip("."))
    elif declared.kind == "number":
        yield path


@pytest.mark.parametrize("path", list(numbers(Car)))
def test_every_number_has_unit_bounds_and_description(path):
    declared = field_at(Car, path)
    assert declared.unit
    assert declared.description
    assert declared.low < declared.high
