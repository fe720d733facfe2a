"""`fitcalc trade`: two changes against each other, as a table and as a picture."""

from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_driver,
    ask_json,
    ask_picture,
    ask_rules,
    ask_setup,
    car_of,
    command,
    driver_of,
    setup_of,
)
from fitcalc.commands.pictures import require_picture, write_charts
from fitcalc.commands.printing import print_record
from fitcalc.commands.waiting import watched
from fitcalc.documents.car import Car
from fitcalc.errors import InputError


def add(commands: Commands) -> None:
    """The command."""
    told = "two changes against each other: what passes, and where each limit lies"
    trade = command(commands, "trade", _trade, told)
    ask_car(trade)
    ask_driver(trade)
    told = "the two changes, as in `--pair seat_raise recline`; else the seat and the brake pedal's bar"
    trade.add_argument("--pair", nargs=2, metavar=("CHANGE", "CHANGE"), help=told)
    ask_setup(trade, "a rework to map about, instead of the one that `fit` finds")
    ask_rules(trade)
    ask_picture(trade)
    ask_json(trade)


def _trade(options: Options) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.present.trade_chart import trade_chart
    from fitcalc.present.trade_tables import trade_heading, trade_tables
    from fitcalc.present.usual_trade import usual_trade

    require_picture(options)
    car, driver, own = car_of(options), driver_of(options), setup_of(options)
    pair = _pair(options, car)
    with watched("drawing the map") as progress:
        fitted = fit(car, driver, options.rules).after
        chosen = fitted if own is None else evaluate(car, driver, own, options.rules)
        record = usual_trade(chosen, fitted.setup, options.rules, pair, progress)
    if record is None:
        raise InputError("--pair", "missing", f"must name two changes; this car allows {_movable(car)}")
    if options.out:
        write_charts([trade_chart(record)], options, chosen)
    print_record(record, options.json, trade_heading, trade_tables)
    return COMPUTED if record.share > 0.0 and not record.elsewhere else SOMETHING_FAILS


def _pair(options: Options, car: Car) -> tuple[str, str] | None:
    """The two changes that were named; None where none were."""
    if not options.pair:
        return None
    first, second = options.pair
    allowed = _allowed(car)
    for name in (first, second):
        if name not in allowed:
            raise InputError("--pair", name, f"must be what this car allows to change: {_movable(car)}")
    if first == second:
        raise InputError("--pair", f"{first} twice", "must name two different changes")
    return first, second


def _movable(car: Car) -> str:
    return ", ".join(_allowed(car)) or "nothing"


def _allowed(car: Car) -> list[str]:
    from fitcalc.fit.variables import variables_for

    return [each.path for each in variables_for(car)]
