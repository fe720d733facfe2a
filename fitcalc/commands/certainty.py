"""`fitcalc certainty`: how sure a rework is before anything is cut."""

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
    whole_number,
)
from fitcalc.commands.pictures import require_picture, write_charts
from fitcalc.commands.printing import print_record
from fitcalc.commands.waiting import watched

DRAWS, FEWEST, MOST = 20_000, 100, 2_000_000
"""Of cars and bodies, where nothing is asked for: a probability is then known within about 0.5 %."""


def add(commands: Commands) -> None:
    """The command."""
    told = "how sure a rework is: intervals of lengths and angles, odds of each check, what to measure again"
    sure = command(commands, "certainty", _certainty, told)
    ask_car(sure)
    ask_driver(sure)
    ask_setup(sure, "a rework instead of the one that `fit` finds")
    told = f"cars and bodies to draw, {FEWEST} to {MOST}"
    sure.add_argument(
        "--draws", metavar="N", type=lambda text: whole_number(text, FEWEST, MOST), default=DRAWS, help=told
    )
    told = "another number draws other cars and bodies; the same number always the same"
    sure.add_argument(
        "--seed", metavar="N", type=lambda text: whole_number(text, 0, 2**31), default=1, help=told
    )
    ask_rules(sure)
    ask_picture(sure)
    ask_json(sure)


def _certainty(options: Options) -> int:
    from fitcalc.fit.certainty import Sampling, certainty
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.present.certainty_chart import certainty_charts
    from fitcalc.present.certainty_record import certainty_record
    from fitcalc.present.certainty_tables import certainty_heading, certainty_tables

    require_picture(options)
    car, driver, setup, rules = car_of(options), driver_of(options), setup_of(options), options.rules
    result = fit(car, driver, rules).after if setup is None else evaluate(car, driver, setup, rules)
    with watched("drawing cars and bodies") as progress:
        sampling = Sampling(draws=options.draws, seed=options.seed)
        sure = certainty(car, driver, result.setup, rules, sampling, progress)
    record = certainty_record(result, sure)
    if options.out:
        write_charts(certainty_charts(record), options, result)
    print_record(record, options.json, certainty_heading, certainty_tables)
    return SOMETHING_FAILS if result.anything_fails else COMPUTED
