"""`fitcalc sheets`: the bench sheets as files in one folder."""

from pathlib import Path

from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_driver,
    ask_paper,
    ask_rules,
    ask_setup,
    car_of,
    command,
    driver_of,
    setup_of,
    today,
)
from fitcalc.documents.setup import Setup


def add(commands: Commands) -> None:
    """The command."""
    told = "bench sheets: PDF, cut list, true-scale parts as DXF and SVG"
    sheets = command(commands, "sheets", _sheets, told)
    ask_car(sheets)
    ask_driver(sheets)
    ask_setup(sheets, "a rework instead of the one that `fit` finds")
    told = (
        "add pages on how sure it is: odds of each check, and what the measurements leave open of each angle"
    )
    sheets.add_argument("--certainty", action="store_true", help=told)
    ask_rules(sheets)
    ask_paper(sheets)


def _sheets(options: Options) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.paper.job import whole_job
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.sheets import write_sheets
    from fitcalc.present.record import check_record, fit_record

    car, driver, setup = car_of(options), driver_of(options), setup_of(options)
    if setup is not None:
        found, after = (evaluate(car, driver, each, options.rules) for each in (Setup(), setup))
        record = check_record(after)
    else:
        fitted = fit(car, driver, options.rules)
        found, after, record = fitted.found, fitted.after, fit_record(fitted)
    made = whole_job(found, after, record, today(), options.rules, options.certainty)
    written = write_sheets(made, PAPERS[options.paper], Path(options.out))
    print("\n".join(str(path) for path in written))
    return SOMETHING_FAILS if after.anything_fails else COMPUTED
