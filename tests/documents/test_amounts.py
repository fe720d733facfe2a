"""Numbers as a person writes them, with units and fractions."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.documents.amounts import amount_of, factor_of


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("271.5", "mm", 271.5),
        ("271,5", "mm", 271.5),
        (" -3 ", "deg", -3.0),
        ("\N{MINUS SIGN}3", "deg", -3.0),
        ("10 5/8 in", "mm", 269.875),
        ("10-5/8in", "mm", 269.875),
        ('5/8"', "mm", 15.875),
        ("27 cm", "mm", 270.0),
        ("12 lb", "kg", 5.44310844),
        ("40\N{DEGREE SIGN}", "deg", 40.0),
        ("5.5", "-", 5.5),
        ("41.5 %", "%", 41.5),
    ],
)
def test_amounts_are_read_into_the_files_unit(text, unit, value):
    assert amount_of(text, unit) == pytest.approx(value)


@pytest.mark.parametrize(
    ("text", "unit"),
    [("", "mm"), ("long", "mm"), ("nan", "mm"), ("inf", "mm"), ("1e400", "mm"), ("1/0", "mm"), ("3 kg", "mm"),
     ("12 lb", "mm"), ("3 3", "mm"), ("2 in", "deg"), ("1e9", "mm")],
)  # fmt: skip
def test_what_is_no_amount_or_in_a_unit_that_does_not_belong_is_none(text, unit):
    assert amount_of(text, unit) is None


def test_a_unit_beside_the_number_holds_unless_the_number_names_its_own():
    assert amount_of("2", "mm", "in") == pytest.approx(50.8)
    assert amount_of("2 cm", "mm", "in") == pytest.approx(20.0)
    assert factor_of("stone", "kg") is None


@given(text=st.text(max_size=30), unit=st.sampled_from(["mm", "deg", "kg", "-"]))
def test_any_text_is_a_finite_number_or_none(text, unit):
    value = amount_of(text, unit)
    assert value is None or abs(value) < 1e9


@given(value=st.floats(-1e6, 1e6, allow_nan=False))
def test_a_number_comes_back_as_it_was(value):
    assert amount_of(repr(value), "mm") == pytest.approx(value)
