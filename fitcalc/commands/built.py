"""`fitcalc built`: after the work, what was really made and measured against the plan and the prediction."""

from pathlib import Path
from typing import TYPE_CHECKING

from fitcalc.commands.asking import (
    COMPUTED,
    SOMETHING_FAILS,
    Commands,
    Options,
    ask_car,
    ask_driver,
    ask_json,
    ask_paper,
    ask_rules,
    ask_setup,
    car_of,
    command,
    driver_of,
    setup_of,
    today,
)
from fitcalc.commands.printing import print_json, print_tables
from fitcalc.documents.as_built import Build, History, Readings
from fitcalc.documents.messages import shown
from fitcalc.documents.stamp import Stamp
from fitcalc.documents.store import load
from fitcalc.errors import InputError

if TYPE_CHECKING:
    from fitcalc.fit.result import Result
    from fitcalc.present.as_built_entry import Typed
    from fitcalc.present.as_built_record import BuiltRecord

TABLES = (".csv", ".xlsx", ".xlsm")


def add(commands: Commands) -> None:
    """The command."""
    built = command(commands, "built", _built, "as built: what was really made and measured, after the work")
    for ask in (ask_car, ask_driver, ask_rules, ask_json):
        ask(built)
    ask_setup(built, "the rework as planned, instead of the one that `fit` finds")
    told = "one value, as recline=41.5 or made.seat_travel=58; +-1 behind it says how sure, a unit may follow"
    built.add_argument("--set", metavar="KEY=VALUE", action="append", default=[], dest="typed", help=told)
    built.add_argument("--read", metavar="FILE", help="readings as TOML, or the filled-in CSV or XLSX")
    built.add_argument("--date", metavar="DAY", help="day of the measuring, as 2026-05-31; else today")
    built.add_argument("--note", metavar="TEXT", default="", help="anything worth remembering about it")
    built.add_argument("--history", metavar="FILE", help="the driver's as-built file, to show its builds")
    told = "with --history: add this build to the file, which is made where it is not there"
    built.add_argument("--save", action="store_true", help=told)
    ask_paper(built, required=False)


def _built(options: Options) -> int:
    from fitcalc.documents.digest import digest
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.as_built_comparison import built_record
    from fitcalc.present.as_built_entry import entered
    from fitcalc.present.as_built_history import build_of

    car, driver, planned = car_of(options), driver_of(options), _planned(options)
    history, stamp = _history(options, driver.name)
    file, typed = _given(options)
    said = entered(file, typed, planned)
    made = evaluate(car, driver, said.made, options.rules)
    day = options.date or (file.date if file else "") or today()
    papers = digest(car, driver, planned.setup)
    build = build_of(said, day, options.note, papers, car.name, "--date")
    record = built_record(build, planned, made, history, options.rules)
    if options.save:
        record = _saved(record, build, history, stamp, options)
    _show(record, options)
    return SOMETHING_FAILS if record.anything_fails else COMPUTED


def _planned(options: Options) -> "Result":
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit

    car, driver, setup = car_of(options), driver_of(options), setup_of(options)
    if setup is None:
        return fit(car, driver, options.rules).after
    return evaluate(car, driver, setup, options.rules)


def _history(options: Options, driver: str) -> tuple[History, Stamp | None]:
    """The builds so far; none where no file was named or there is none yet."""
    from fitcalc.present.as_built_history import history_in

    if options.save and not options.history:
        raise InputError(
            "--save", "given without --history", "needs a file to add to", "name it with --history"
        )
    if not options.history:
        return History(driver=driver), None
    return history_in(options.history, driver)


def _given(options: Options) -> "tuple[Readings | None, list[Typed]]":
    """The file of readings, and every value that stands in a filled-in sheet or on the command line."""
    typed = [_typed(text) for text in options.typed]
    if not options.read:
        return None, typed
    if Path(options.read).suffix.lower() not in TABLES:
        return load(Readings, options.read), typed
    from fitcalc.paper.as_built_file import read_as_built

    return None, [*read_as_built(Path(options.read)), *typed]


def _typed(text: str) -> "Typed":
    from fitcalc.present.as_built_entry import Typed

    key, sign, value = text.partition("=")
    if not sign or not key.strip():
        raise InputError("--set", shown(text), "must be KEY=VALUE", "as in --set recline=41.5")
    number, _, error = value.replace("\N{PLUS-MINUS SIGN}", "+-").partition("+-")
    return Typed(key=key.strip(), text=number.strip(), error=error.strip(), where=f"--set {shown(text)}")


def _saved(
    record: "BuiltRecord", build: Build, history: History, stamp: Stamp | None, options: Options
) -> "BuiltRecord":
    from fitcalc.present.as_built_history import with_kept

    if record.is_empty:
        raise InputError(
            "--save", "given without a reading", "there is nothing to add", "enter one with --set"
        )
    return with_kept(record, build, history, stamp, options.history)


def _show(record: "BuiltRecord", options: Options) -> None:
    from fitcalc.present.as_built_tables import built_heading, built_tables, reading_notes

    if options.out:
        from fitcalc.paper.as_built_set import write_as_built
        from fitcalc.paper.page import PAPERS

        written = write_as_built(record, PAPERS[options.paper], Path(options.out))
        print("\n".join(str(path) for path in written))
    elif options.json:
        print_json(record)
    else:
        print(built_heading(record), end="\n\n")
        print_tables(built_tables(record))
        told = record.explanation
        print("\n".join(["", *([told.verdict] if told else []), *reading_notes(record)]))
