"""Numbers as a person reads them."""

import pytest

from fitcalc.present.wording import amount, signed, span


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (12.4, "mm", "+12 mm"),
        (-12.6, "mm", "-13 mm"),
        (-0.3, "mm", "-0.3 mm"),
        (0.04, "deg", "+0.04 deg"),
        (-0.0002, "mm", "0 mm"),
        (0.0, "mm", "0 mm"),
        (1.234, "ratio", "+1.23"),
    ],
)
def test_a_margin_is_never_rounded_onto_its_limit(value, unit, text):
    assert signed(value, unit) == text


@pytest.mark.parametrize(("value", "text"), [(-0.3, "0 mm"), (None, "-"), (7.5, "8 mm")])
def test_an_amount_has_no_negative_zero(value, text):
    assert amount(value, "mm") == text


@pytest.mark.parametrize(
    ("low", "high", "unit", "text"),
    [
        (152.5, None, "mm", "at least 152.5 mm"),
        (None, 50.8, "mm", "at most 50.8 mm"),
        (0.0, 76.0, "mm", "0 to 76 mm"),
        (-10.0, 20.0, "deg", "-10.0 to 20.0 deg"),
        (1.5, None, "-", "at least 1.50"),
        (None, None, "mm", "-"),
    ],
)
def test_a_bound_is_shown_as_its_rule_gives_it(low, high, unit, text):
    assert span(low, high, unit) == text
