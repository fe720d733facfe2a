"""`fitcalc check` and `fitcalc fit`: how the driver sits, and the rework."""

from typing import TYPE_CHECKING

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
    setup_of,
)
from fitcalc.commands.printing import print_json, print_tables, table_text
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import save

if TYPE_CHECKING:
    from fitcalc.present.record import ResultRecord


def add(commands: Commands) -> None:
    """Both commands."""
    check = command(commands, "check", _check, "how the driver sits, as found or with a rework")
    ask_setup(check, "a rework to check instead of the car as found")
    check.add_argument("--beside", metavar="SET", help="a second limit set to show beside the first")
    fitted = command(commands, "fit", _fit, "the rework: seat offset first, then pedal extensions")
    fitted.add_argument("--save", metavar="FILE", help="write the rework to this setup file")
    for each in (check, fitted):
        each.add_argument(
            "--all", action="store_true", help="every check and figure, not only the telling ones"
        )
        for ask in (ask_car, ask_driver, ask_rules, ask_json):
            ask(each)


def _check(options: Options) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.beside import beside_table
    from fitcalc.present.record import check_record

    car, driver, setup = car_of(options), driver_of(options), setup_of(options) or Setup()
    result = evaluate(car, driver, setup, options.rules)
    record = check_record(result)
    other = check_record(evaluate(car, driver, setup, options.beside)) if options.beside else None
    _show(record, options)
    if other is not None and not options.json:
        print("\n" + table_text(beside_table(record, other)))
    return SOMETHING_FAILS if result.anything_fails else COMPUTED


def _fit(options: Options) -> int:
    from fitcalc.fit.rework import fit
    from fitcalc.present.record import fit_record

    found = fit(car_of(options), driver_of(options), options.rules)
    if options.save:
        save(found.after.setup, options.save)
    _show(fit_record(found), options)
    return SOMETHING_FAILS if found.after.anything_fails else COMPUTED


def _show(record: "ResultRecord", options: Options) -> None:
    from fitcalc.present.summary import heading, left_out, tables

    if options.json:
        print_json(record)
        return
    print(heading(record) if options.all else f"{heading(record)}\n{left_out(record)}", end="\n\n")
    print_tables(tables(record, options.all))
