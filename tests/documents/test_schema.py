"""The JSON Schemas describe every file that loads."""

import tomllib

import pytest
from examples import CAR, DRIVER, SETUP
from hypothesis import HealthCheck, given, settings
from jsonschema import Draft202012Validator

from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.schema import schema_for
from fitcalc.errors import InputError
from tests.strategies import cars, drivers, setups

quick = settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))
FILES = [("car", path.read_text("utf-8")) for path in sample_cars().values()]
FILES += [("driver", path.read_text("utf-8")) for path in sample_drivers().values()]
FILES += [("car", CAR), ("driver", DRIVER), ("setup", SETUP)]


def validator(kind):
    Draft202012Validator.check_schema(schema_for(kind))
    return Draft202012Validator(schema_for(kind))


@pytest.mark.parametrize(("kind", "text"), FILES)
def test_files_are_valid(kind, text):
    validator(kind).validate(tomllib.loads(text))


@pytest.mark.parametrize("strategy", [cars, drivers, setups])
def test_any_document_is_valid(strategy):
    check = validator(strategy.__name__.rstrip("s"))

    @quick
    @given(document=strategy())
    def validate(document):
        check.validate(document.model_dump(mode="json"))

    validate()


@pytest.mark.parametrize("spoilt", [{"arm": 25}, {"arm": "250"}, {"amr": 250}])
def test_bad_values_are_invalid(spoilt):
    data = tomllib.loads(CAR)
    data["pedals"]["brake"] |= spoilt
    assert not validator("car").is_valid(data)


def test_field_carries_title_unit_description_and_bounds():
    arm = schema_for("car")["$defs"]["Pedal"]["properties"]["arm"]
    assert (arm["title"], arm["unit"], arm["minimum"], arm["maximum"]) == ("arm length", "mm", 90, 450)
    assert arm["description"].startswith("From the pivot")


def test_unknown_kind_is_refused():
    with pytest.raises(InputError, match="perhaps car is meant"):
        schema_for("cart")
