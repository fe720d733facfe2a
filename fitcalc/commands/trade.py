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
from fitcalc.commands.pictures import write_charts
from fitcalc.commands.printing import print_json, print_tables
from fitcalc.commands.waiting import watched
from fitcalc.documents.car import Car
from fitcalc.errors import InputError
from fitcalc.fit.variables import Variable, variables_for


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
    from fitcalc.fit.trade import MapOptions, trade_map
    from fitcalc.fit.trade_axes import axis_values, pedals_apart
    from fitcalc.present.trade_chart import trade_chart
    from fitcalc.present.trade_record import trade_record
    from fitcalc.present.trade_tables import trade_heading, trade_tables

    car, driver, own = car_of(options), driver_of(options), setup_of(options)
    pair = _pair(options, car)
    without = pedals_apart(car, (pair[0].path, pair[1].path))
    with watched("drawing the map") as progress:
        fitted = fit(car, driver, options.rules).after
        chosen = fitted if own is None else evaluate(car, driver, own, options.rules)
        first, second = ((each.path, axis_values(each)) for each in pair)
        shown = MapOptions(options.rules, fitted.setup, without=without)
        trade = trade_map(car, driver, chosen.setup, (first, second), shown, progress)
    record = trade_record(chosen, trade, pair, without)
    if options.out:
        write_charts([trade_chart(record)], options, chosen)
    if options.json:
        print_json(record)
    else:
        print(trade_heading(record), end="\n\n")
        print_tables(trade_tables(record))
    return COMPUTED if record.share > 0.0 and not record.elsewhere else SOMETHING_FAILS


def _pair(options: Options, car: Car) -> tuple[Variable, Variable]:
    """The two changes that were named, or the most telling ones that this car allows."""
    from fitcalc.fit.trade_axes import usual_pairs

    movable = {each.path: each for each in variables_for(car)}
    known = ", ".join(movable) or "nothing"
    if options.pair:
        first, second = options.pair
        for name in (first, second):
            if name not in movable:
                raise InputError("--pair", name, f"must be what this car allows to change: {known}")
        if first == second:
            raise InputError("--pair", f"{first} twice", "must name two different changes")
        return movable[first], movable[second]
    usual = usual_pairs(car)
    if not usual:
        raise InputError("--pair", "missing", f"must name two changes; this car allows {known}")
    return movable[usual[0][0]], movable[usual[0][1]]
