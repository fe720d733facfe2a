"""`fitcalc sheets`: the bench sheets as files in one folder."""

from pathlib import Path
from typing import TYPE_CHECKING

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

DRAWS = 1_000
"""Cars and bodies drawn for the intervals of the bench sheets."""
SURE_DRAWS, FEW = 20_000, 2_000
"""The same with `--certainty`, for the odds and for what takes longest: as many as `fitcalc certainty` draws."""

if TYPE_CHECKING:
    from fitcalc.fit.certainty import Certainty
    from fitcalc.fit.result import Result
    from fitcalc.present.chart import Chart


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
    from fitcalc.fit.certainty import Sampling, certainty
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.paper.job import job
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
    sampling = Sampling(SURE_DRAWS, FEW) if options.certainty else Sampling(DRAWS, DRAWS)
    sure = certainty(car, driver, after.setup, options.rules, sampling)
    charts = [*_trade(after, options), *(_odds(after, sure) if options.certainty else [])]
    made = job(found, after, record, today(), sure, charts)
    written = write_sheets(made, PAPERS[options.paper], Path(options.out))
    print("\n".join(str(path) for path in written))
    return SOMETHING_FAILS if after.anything_fails else COMPUTED


def _trade(after: "Result", options: Options) -> "list[Chart]":
    """What the seat and the brake pedal's bar may be together, about the rework."""
    from fitcalc.present.trade_chart import trade_chart
    from fitcalc.present.usual_trade import usual_trade

    record = usual_trade(after, None, options.rules)
    return [] if record is None else [trade_chart(record)]


def _odds(after: "Result", sure: "Certainty") -> "list[Chart]":
    from fitcalc.present.certainty_chart import certainty_charts
    from fitcalc.present.certainty_record import certainty_record

    return certainty_charts(certainty_record(after, sure))
