"""`fitcalc straps`: straps, places of their anchors, slots to cut, for one or several drivers."""

from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_drivers,
    ask_json,
    ask_rules,
    ask_setup,
    car_of,
    command,
    drivers_of,
    setup_of,
)
from fitcalc.commands.printing import print_record


def add(commands: Commands) -> None:
    """The command."""
    told = "straps, places of their anchors, slots to cut; for several drivers"
    straps = command(commands, "straps", _straps, told)
    ask_car(straps)
    ask_drivers(straps)
    ask_setup(straps, "one rework for all instead of what `fit` finds for each")
    ask_rules(straps)
    ask_json(straps)


def _straps(options: Options) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.present.strap_record import straps_record
    from fitcalc.present.strap_tables import strap_heading, strap_tables

    car, drivers, setup = car_of(options), drivers_of(options), setup_of(options)
    if setup is not None:
        results = [evaluate(car, driver, setup, options.rules) for driver in drivers]
    else:
        results = [fit(car, driver, options.rules).after for driver in drivers]
    record = straps_record(results)
    print_record(record, options.json, strap_heading, strap_tables)
    return SOMETHING_FAILS if record.anything_fails else COMPUTED
