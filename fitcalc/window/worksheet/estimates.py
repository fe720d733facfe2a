"""What is taken for the body where nothing was measured, by ref."""

from dataclasses import dataclass

from fitcalc.body.dimensions import FIELDS
from fitcalc.body.estimate import estimate
from fitcalc.documents.driver import Driver


@dataclass(frozen=True)
class Taken:
    """One body figure as the calculation takes it, in the document's unit; 90 % lie between low and high."""

    value: float
    low: float
    high: float
    measured: bool


def taken_for(driver: Driver) -> dict[str, Taken]:
    """Every figure of the body that a driver file can give."""
    body = estimate(driver)
    place = {name: at for at, name in enumerate(body.names)}
    return {
        _ref(field): Taken(
            float(body.mean[place[name]]),
            float(body.low[place[name]]),
            float(body.high[place[name]]),
            bool(body.measured[place[name]]),
        )
        for field, name in FIELDS.items()
    }


def _ref(field: str) -> str:
    return "driver.mass" if field == "mass" else f"driver.measurements.{field}"
