"""`fitcalc solve` and `fitcalc effort`: the least work that passes, and what work costs."""

import argparse
from typing import TYPE_CHECKING

from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_driver,
    ask_effort,
    ask_json,
    ask_rules,
    car_of,
    command,
    driver_of,
    effort_of,
    number_within,
)
from fitcalc.commands.printing import print_record
from fitcalc.commands.waiting import watched
from fitcalc.documents.store import save

if TYPE_CHECKING:
    from fitcalc.present.solve_record import SolveRecord

LEAST_CHANCE, MOST_CHANCE = 0.5, 0.99


def add(commands: Commands) -> None:
    """Both commands."""
    told = "the least work that passes every check, the next best, or which limits shut each other out"
    solve = command(commands, "solve", _solve, told)
    for ask in (ask_car, ask_driver, ask_effort):
        ask(solve)
    told = "the rework that passes with at least this probability, 0.5 to 0.99, with what tape and body leave open"
    solve.add_argument("--chance", metavar="P", type=_chance, help=told)
    solve.add_argument("--save", metavar="FILE", help="write the rework to this setup file")
    ask_rules(solve)
    ask_json(solve)
    effort = command(commands, "effort", _effort, "what may be changed and what it costs, as a file to edit")
    effort.add_argument("car", nargs="?", metavar="CAR", help="fill in how far things go on this car")


def _solve(options: Options) -> int:
    from fitcalc.present.solve_tables import solve_heading, solve_tables

    record = _found(options)
    if options.save:
        save(record.best.setup, options.save)
    print_record(record, options.json, solve_heading, solve_tables)
    return COMPUTED if record.passes else SOMETHING_FAILS


def _found(options: Options) -> "SolveRecord":
    from fitcalc.fit.robust import robust
    from fitcalc.fit.solve import solve
    from fitcalc.present.solve_record import robust_record, solve_record

    car, driver, effort, chance = car_of(options), driver_of(options), effort_of(options), options.chance
    with watched("looking for the least work") as progress:
        if chance is None:
            found = solve(car, driver, options.rules, effort, progress=progress)
            return solve_record(car, driver, found, options.rules, effort)
        sure = robust(car, driver, chance, options.rules, effort, progress=progress)
    return robust_record(car, driver, sure, chance, options.rules, effort)


def _effort(options: Options) -> int:
    from fitcalc.present.effort_text import effort_text

    print(effort_text(car_of(options) if options.car else None), end="")
    return COMPUTED


def _chance(text: str) -> float:
    try:
        return number_within(text, LEAST_CHANCE, MOST_CHANCE)
    except argparse.ArgumentTypeError:
        unit = f"%, or from {LEAST_CHANCE:g} to {MOST_CHANCE:g}"
        return number_within(text.rstrip("% "), 100 * LEAST_CHANCE, 100 * MOST_CHANCE, unit) / 100
