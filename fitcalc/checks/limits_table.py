"""Every quantity with its points and the limits on it: for the docs and for `fitcalc limits`."""

from collections.abc import Sequence
from dataclasses import dataclass

from fitcalc.checks.limit_rows import Limit
from fitcalc.checks.limits import WORKSHOP, LimitSet, limit_set_names, load_limit_set
from fitcalc.checks.posture_limits import with_posture
from fitcalc.checks.quantities import Quantity, quantities
from fitcalc.documents.driver import Driver, Measurements

ANY_STATURE = 1750.0
"""Joint angles do not depend on it, mm."""


@dataclass(frozen=True)
class LimitUse:
    """One row of one set."""

    rules: str
    limit: Limit

    @property
    def bounds(self) -> str:
        """The row's bounds in words, as in `0 to 45, better 0 to 10 deg`."""
        row = self.limit
        must, should = _span(row.low, row.high), _span(row.recommended_low, row.recommended_high)
        parts = [must, f"better {should}" if must and should else should]
        seat = f" ({row.when})" if row.when else ""
        return f"{', '.join(part for part in parts if part)} {row.unit}{seat}"


@dataclass(frozen=True)
class QuantityUse:
    """One quantity and every row that limits it."""

    quantity: Quantity
    uses: tuple[LimitUse, ...]


def every_set() -> tuple[LimitSet, ...]:
    """The sets to choose from, then the always-on one with the joint angles of a driver who has no wishes."""
    anyone = Driver(name="", measurements=Measurements(stature=ANY_STATURE))
    return (*map(load_limit_set, limit_set_names()), with_posture(load_limit_set(WORKSHOP), anyone))


def limits_table(sets: Sequence[LimitSet] | None = None) -> tuple[QuantityUse, ...]:
    """Every quantity, with the rows that limit it in the given sets, by default in all."""
    chosen = sets or [load_limit_set(name) for name in (*limit_set_names(), WORKSHOP)]
    return tuple(
        QuantityUse(
            quantity, tuple(LimitUse(each.id, row) for each in chosen for row in each.on(quantity.id))
        )
        for quantity in quantities().values()
    )


def _span(low: float | None, high: float | None) -> str:
    if low is None:
        return "" if high is None else f"at most {high:g}"
    return f"at least {low:g}" if high is None else f"{low:g} to {high:g}"
