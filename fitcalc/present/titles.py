"""Title and legend of every view."""

from fitcalc.fit.result import Result
from fitcalc.present.picture import Legend


def title(result: Result) -> str:
    """What is drawn."""
    return f"{result.car.name} \N{EN DASH} {result.driver.name}"


def legend(result: Result, found: Result | None, other: Result | None) -> tuple[Legend, ...]:
    """What the weights of line stand for."""
    after = Legend("body", f"{result.driver.name}, after the rework" if found else result.driver.name)
    grey = [Legend("as found", "as found")] if found else []
    second = [Legend("other driver", other.driver.name)] if other else []
    return (after, *grey, *second, Legend("extreme", "pedal at its stop"))
