"""`fitcalc pedals`: pedals before and after, bars to make, seat mounts."""

from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_driver,
    ask_json,
    ask_rules,
    ask_setup,
    car_of,
    command,
    driver_of,
    percent,
    setup_of,
)
from fitcalc.commands.printing import print_record
from fitcalc.documents.setup import Setup

RATIO_BAND = 10.0
"""Change of a pedal's ratio that is hardly felt, %: design inference."""


def add(commands: Commands) -> None:
    """The command."""
    pedals = command(commands, "pedals", _pedals, "pedals before and after, bars to make, seat mounts")
    ask_setup(pedals, "a rework instead of the one that `fit` finds")
    told = "change of ratio that a mix may make"
    pedals.add_argument("--band", metavar="PERCENT", type=percent, default=RATIO_BAND, help=told)
    for ask in (ask_car, ask_driver, ask_rules, ask_json):
        ask(pedals)


def _pedals(options: Options) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.present.pedal_record import pedals_record
    from fitcalc.present.pedal_tables import pedal_heading, pedal_tables

    car, driver, setup = car_of(options), driver_of(options), setup_of(options)
    if setup is not None:
        found, after = (evaluate(car, driver, each, options.rules) for each in (Setup(), setup))
    else:
        fitted = fit(car, driver, options.rules)
        found, after = fitted.found, fitted.after
    record = pedals_record(found, after, options.band)
    print_record(record, options.json, pedal_heading, pedal_tables)
    return SOMETHING_FAILS if any(check.status == "fail" for check in record.checks) else COMPUTED
