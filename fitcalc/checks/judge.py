"""Figures against the rows of a limit set."""

from collections.abc import Iterable
from functools import partial

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import ROUNDING, Check, Figure
from fitcalc.checks.limit_rows import Limit
from fitcalc.checks.limits import LimitSet
from fitcalc.checks.quantities import quantities
from fitcalc.units import Bools, Floats

UPRIGHT_UP_TO = 30.0
"""Torso line from the vertical, deg; 30.0 is upright (FSAE Rules 2026 T.2.1.d-e, FS Rules 2025 T5.1.3-4)."""


def is_reclined(case: Case) -> Bools:
    """Where the torso line lies further back than the student rules call upright, `(n,)`."""
    return case.full(case.sitting.trunk.recline) > UPRIGHT_UP_TO + ROUNDING


def judge(
    figures: Iterable[Figure], rules: LimitSet, workshop: LimitSet, reclined: Bools
) -> tuple[Check, ...]:
    """Each figure against every row that limits it, in the order of the figures, the chosen rules first.

    Args:
        figures: what was measured.
        rules: the chosen set.
        workshop: the set that is always on.
        reclined: `(n,)`, which rows of a pair hold, see `is_reclined`.

    Returns:
        One check per figure and row; a figure without a row only where its quantity is always shown.
    """
    return tuple(check for figure in figures for check in _judged(figure, (rules, workshop), reclined))


def _judged(figure: Figure, sets: tuple[LimitSet, ...], reclined: Bools) -> list[Check]:
    rows = [(each.id, row) for each in sets for row in _rows(each, figure.quantity)]
    if rows:
        return [_check(figure, at == 0, *row, reclined) for at, row in enumerate(rows)]
    return [_unlimited(figure, sets[0].id)] if quantities()[figure.quantity].always_show else []


def _rows(limits: LimitSet, quantity: str) -> list[tuple[Limit, Limit]]:
    """The rows on a quantity; each stands as the one for upright and the one for reclined seats."""
    rows = limits.on(quantity)
    by_seat = {row.when: row for row in rows if row.when}
    pair = [(by_seat["upright"], by_seat["reclined"])] if by_seat else []
    return [*pair, *((row, row) for row in rows if row.when is None)]


def _check(figure: Figure, first: bool, rules: str, pair: tuple[Limit, Limit], reclined: Bools) -> Check:
    row, quantity = pair[1] if reclined[0] else pair[0], quantities()[figure.quantity]
    low, high, recommended_low, recommended_high = _bounds(pair, reclined)
    return Check(
        id=figure.id if first else f"{figure.id}@{row.id}",
        figure=figure,
        low=low,
        high=high,
        recommended_low=recommended_low,
        recommended_high=recommended_high,
        rules=rules,
        limit=row.id,
        source=row.source,
        too_low=quantity.too_low,
        too_high=quantity.too_high,
    )


def _bounds(pair: tuple[Limit, Limit], reclined: Bools) -> tuple[Floats | None, ...]:
    """Low, high and the two recommended; each case has those of its own kind of seat."""
    upright, lying = pair
    if upright is lying:
        return upright.bounds
    return tuple(map(partial(_by_seat, reclined), upright.bounds, lying.bounds))


def _by_seat(reclined: Bools, upright: Floats | None, lying: Floats | None) -> Floats | None:
    if upright is None or lying is None:
        return None
    return upright if upright == lying else np.where(reclined, lying, upright)


def _unlimited(figure: Figure, rules: str) -> Check:
    return Check(figure.id, figure, None, None, None, None, rules, "", None, "", "")
