"""The trade map as it is usually wanted: what the seat and a pedal's bar may be together, about one rework."""

from fitcalc.documents.setup import Setup
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.result import Result
from fitcalc.fit.trade import MapOptions, trade_map
from fitcalc.fit.trade_axes import Pair, axis_values, pedals_apart, usual_pairs
from fitcalc.fit.variables import variables_for
from fitcalc.present.trade_record import TradeRecord, trade_record


def usual_trade(
    chosen: Result,
    recommended: Setup | None,
    rules: str | None = None,
    pair: Pair | None = None,
    progress: Progress = unheeded,
) -> TradeRecord | None:
    """The record of a map about one rework; None where the car lets no two such things move.

    Args:
        chosen: the rework that the map is made about, and its chosen point.
        recommended: a rework to be marked as well.
        rules: as they were chosen for the result; the car's own when None.
        pair: the two changes; the seat and the brake pedal's bar when None, or where this car can't change both.
        progress: told the part done; answers whether to go on.
    """
    car = chosen.car
    movable = {each.path: each for each in variables_for(car)}
    wanted = pair if pair is not None and movable.keys() >= {*pair} else next(iter(usual_pairs(car)), None)
    if wanted is None:
        return None
    first, second = (movable[path] for path in wanted)
    without = pedals_apart(car, wanted)
    axes = (first.path, axis_values(first)), (second.path, axis_values(second))
    options = MapOptions(rules, recommended, without=without)
    trade = trade_map(car, chosen.driver, chosen.setup, axes, options, progress)
    return trade_record(chosen, trade, (first, second), without)
