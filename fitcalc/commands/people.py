"""`fitcalc shared` and `fitcalc coverage`: one car for several drivers, and who of the population fits it."""

import argparse
from pathlib import Path

from fitcalc.body.survey import Sex
from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_drivers,
    ask_effort,
    ask_json,
    ask_picture,
    ask_rules,
    ask_setup,
    car_of,
    command,
    drivers_of,
    effort_of,
    setup_of,
    whole_number,
)
from fitcalc.commands.pictures import require_picture, write_charts
from fitcalc.commands.printing import print_record
from fitcalc.commands.waiting import watched
from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import save

BODIES, FEWEST, MOST = 300, 20, 20_000
"""Bodies of each sex, where nothing is asked for: a share is then known within about 3 %."""
SEXES: tuple[Sex, ...] = ("female", "male")


def add(commands: Commands) -> None:
    """Both commands."""
    told = "one car for several drivers: what is fixed for all, and what each driver sets"
    shared = command(commands, "shared", _shared, told)
    ask_car(shared)
    ask_drivers(shared)
    told = "every driver may bolt pads of his own on, besides the seat's hole, the pedal box and inserts in the seat"
    shared.add_argument("--pads", action="store_true", help=told)
    shared.add_argument(
        "--save", metavar="FOLDER", help="write a setup file for each driver into this folder"
    )
    for ask in (ask_effort, ask_rules, ask_json):
        ask(shared)
    told = "what part of the published population fits the car, and which limit turns away whom"
    coverage = command(commands, "coverage", _coverage, told)
    ask_car(coverage)
    coverage.add_argument(
        "--sex", choices=(*SEXES, "both"), default="both", help="whose survey; both without it"
    )
    told = f"bodies to draw of each sex, {FEWEST} to {MOST}"
    coverage.add_argument("--bodies", metavar="N", type=_bodies, default=BODIES, help=told)
    ask_setup(coverage, "a rework instead of the car as found")
    for ask in (ask_rules, ask_picture, ask_json):
        ask(coverage)


def _bodies(text: str) -> int:
    return whole_number(text, FEWEST, MOST)


def _shared(options: Options) -> int:
    from fitcalc.fit.shared import PAD, QUICK, share
    from fitcalc.present.shared_car_record import shared_car_record
    from fitcalc.present.shared_car_tables import shared_car_heading, shared_car_tables

    car, drivers, effort = car_of(options), drivers_of(options), effort_of(options)
    pads = tuple(f"{name}{PAD}" for name in car.fitted_pedals()) if options.pads else ()
    with watched("looking for what fits all") as progress:
        found = share(
            car, drivers, rules=options.rules, effort=effort, quick=(*QUICK, *pads), progress=progress
        )
    record = shared_car_record(car, drivers, found, options.rules, effort)
    if options.save:
        _save(options, [each.setup for each in record.drivers])
    print_record(record, options.json, shared_car_heading, shared_car_tables)
    return COMPUTED if record.fits_all else SOMETHING_FAILS


def _save(options: argparse.Namespace, setups: list[Setup]) -> None:
    """One setup for each driver, by the name that was given for him; two alike get numbers."""
    from fitcalc.paper.sheets import make_folder

    folder, taken = Path(options.save), set[str]()
    make_folder(folder)
    for at, (name, setup) in enumerate(zip(options.drivers, setups, strict=True), start=1):
        stem = Path(name).stem
        stem = f"{stem}-{at}" if stem in taken else stem
        taken.add(stem)
        save(setup, folder / f"{stem}.toml")
        if not options.json:
            print(folder / f"{stem}.toml")


def _coverage(options: Options) -> int:
    from fitcalc.fit.coverage import coverage
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.coverage_record import coverage_record
    from fitcalc.present.coverage_tables import coverage_charts, coverage_heading, coverage_tables

    require_picture(options)
    car, setup, rules = car_of(options), setup_of(options) or Setup(), options.rules
    somebody = Driver(name="the published population", measurements=Measurements(stature=1700.0))
    result = evaluate(car, somebody, setup, rules)
    with watched("seating bodies") as progress:
        found = [
            (sex, coverage(car, sex, setup, options.bodies, rules, progress))
            for sex in SEXES
            if options.sex in (sex, "both")
        ]
    record = coverage_record(result, found)
    if options.out:
        write_charts(coverage_charts(record), options, result)
    print_record(record, options.json, coverage_heading, coverage_tables)
    return COMPUTED
