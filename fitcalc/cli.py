"""The command line: parse, call, print."""

import argparse
import json
import shutil
import sys
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fitcalc.documents.driver import Driver
from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver, load_setup, save
from fitcalc.errors import InputError
from fitcalc.present.tables import Table, as_text
from fitcalc.present.wording import CAUTIONS

if TYPE_CHECKING:
    from fitcalc.present.worksheet_rows import Kind

COMPUTED, SOMETHING_FAILS, BAD_INPUT = 0, 1, 2
RATIO_BAND = 10.0
"""Change of a pedal's ratio that is hardly felt, %: design inference."""
MOST_BAND = 100.0
DRAWS = 1_000
"""Cars and bodies drawn for the intervals of the bench sheets."""
PAGE = 150
"""Width of tables where the output is no terminal, characters."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; the exit status is 0 computed, 1 computed and a limit is broken, 2 bad input."""
    options = _parser().parse_args(arguments)
    try:
        return options.run(options)
    except InputError as error:
        print(f"fitcalc: {error}", file=sys.stderr)
        return BAD_INPUT
    except BrokenPipeError:
        sys.stderr.close()
        return COMPUTED


def _check(options: argparse.Namespace) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.present.beside import beside_table
    from fitcalc.present.record import check_record

    car, driver = load_car(_file(options.car, sample_cars())), _driver(options)
    setup = load_setup(options.setup) if options.setup else Setup()
    result = evaluate(car, driver, setup, options.rules)
    record = check_record(result)
    _show(record, options)
    if options.beside and not options.json:
        other = check_record(evaluate(car, driver, setup, options.beside))
        print("\n" + as_text(beside_table(record, other), _width()))
    return SOMETHING_FAILS if result.anything_fails else COMPUTED


def _fit(options: argparse.Namespace) -> int:
    from fitcalc.fit.rework import fit
    from fitcalc.present.record import fit_record

    found = fit(load_car(_file(options.car, sample_cars())), _driver(options), options.rules)
    if options.save:
        save(found.after.setup, options.save)
    _show(fit_record(found), options)
    return SOMETHING_FAILS if found.after.anything_fails else COMPUTED


def _pedals(options: argparse.Namespace) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.present.pedal_record import pedals_record
    from fitcalc.present.pedal_tables import pedal_heading, pedal_tables

    car, driver = load_car(_file(options.car, sample_cars())), _driver(options)
    if options.setup:
        setups = (Setup(), load_setup(options.setup))
        found, after = (evaluate(car, driver, setup, options.rules) for setup in setups)
    else:
        fitted = fit(car, driver, options.rules)
        found, after = fitted.found, fitted.after
    record = pedals_record(found, after, options.band)
    if options.json:
        print(record.model_dump_json(indent=2))
    else:
        print(pedal_heading(record), end="\n\n")
        _print_tables(pedal_tables(record))
    return SOMETHING_FAILS if any(check.status == "fail" for check in record.checks) else COMPUTED


def _straps(options: argparse.Namespace) -> int:
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.present.strap_record import straps_record
    from fitcalc.present.strap_tables import strap_heading, strap_tables

    car = load_car(_file(options.car, sample_cars()))
    drivers = [load_driver(_file(name, sample_drivers())) for name in options.drivers]
    if options.setup:
        setup = load_setup(options.setup)
        results = [evaluate(car, driver, setup, options.rules) for driver in drivers]
    else:
        results = [fit(car, driver, options.rules).after for driver in drivers]
    record = straps_record(results)
    if options.json:
        print(record.model_dump_json(indent=2))
    else:
        print(strap_heading(record), end="\n\n")
        _print_tables(strap_tables(record))
    return SOMETHING_FAILS if record.anything_fails else COMPUTED


def _sheets(options: argparse.Namespace) -> int:
    from fitcalc.fit.certainty import Sampling, certainty
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.fit.rework import fit
    from fitcalc.paper.job import job
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.sheets import write_sheets
    from fitcalc.present.record import check_record, fit_record

    car, driver = load_car(_file(options.car, sample_cars())), _driver(options)
    if options.setup:
        found, after = (
            evaluate(car, driver, each, options.rules) for each in (Setup(), load_setup(options.setup))
        )
        record = check_record(after)
    else:
        fitted = fit(car, driver, options.rules)
        found, after, record = fitted.found, fitted.after, fit_record(fitted)
    sure = certainty(car, driver, after.setup, options.rules, Sampling(DRAWS, DRAWS))
    written = write_sheets(
        job(found, after, record, _today(), sure), PAPERS[options.paper], Path(options.out)
    )
    print("\n".join(str(path) for path in written))
    return SOMETHING_FAILS if after.anything_fails else COMPUTED


def _worksheet(options: argparse.Namespace) -> int:
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.worksheet_set import write_worksheet

    car = load_car(_file(options.car, sample_cars())) if options.car else None
    driver = _driver(options) if options.driver else None
    if options.read:
        return _read_worksheet(options, {"car": car, "driver": driver})
    if not options.out:
        raise InputError("--out", "missing", "must name a folder", "or name a filled-in file with --read")
    written = write_worksheet(car, driver, options.all, PAPERS[options.paper], Path(options.out), _today())
    print("\n".join(str(path) for path in written))
    return COMPUTED


def _read_worksheet(options: argparse.Namespace, documents: "Mapping[Kind, Any]") -> int:
    from fitcalc.paper.worksheet_file import applied, changes_table, preview, read_worksheet

    entered = read_worksheet(Path(options.read))
    for kind, document in documents.items():
        if document is None:
            continue
        changes = preview(entered, kind, document)
        changed = applied(changes, document)
        print(as_text(changes_table(kind, changes), _width()) or f"{kind}: nothing changes")
        if options.write and changes:
            save(changed, getattr(options, kind))
    return COMPUTED


def _today() -> str:
    from datetime import datetime

    return f"{datetime.now().astimezone():%Y-%m-%d}"


def _body(options: argparse.Namespace) -> int:
    from fitcalc.present.body_table import body_remarks, body_table, links_table

    driver = _driver(options)
    table = body_table(driver)
    if options.json:
        print(json.dumps([dict(zip(table.header, row, strict=True)) for row in table.rows], indent=2))
        return COMPUTED
    for remark in body_remarks(driver):
        print(remark, end="\n\n")
    _print_tables([table, links_table(driver)])
    return COMPUTED


def _limits(options: argparse.Namespace) -> int:
    from fitcalc.present.limits_tables import limits_tables

    _print_tables(limits_tables())
    return COMPUTED


def _schema(options: argparse.Namespace) -> int:
    from fitcalc.documents.schema import schema_for
    from fitcalc.present.parts import Record
    from fitcalc.present.pedal_record import PedalsRecord
    from fitcalc.present.record import ResultRecord
    from fitcalc.present.strap_record import StrapsRecord

    records: dict[str, type[Record]] = {
        "result": ResultRecord,
        "pedals": PedalsRecord,
        "straps": StrapsRecord,
    }
    record = records.get(options.kind)
    schema = schema_for(options.kind) if record is None else record.model_json_schema()
    print(json.dumps(schema, indent=2, ensure_ascii=False))
    return COMPUTED


def _completion(options: argparse.Namespace) -> int:
    from fitcalc.checks.limits import limit_set_names
    from fitcalc.completion import completion

    names = {"CAR": list(sample_cars()), "DRIVER": list(sample_drivers()), "SET": limit_set_names()}
    print(completion(_parser(), options.shell, names), end="")
    return COMPUTED


def _version(options: argparse.Namespace) -> int:
    from importlib.metadata import PackageNotFoundError, version

    try:
        print(f"fitcalc {version('fitcalc')}")
    except PackageNotFoundError:
        print("fitcalc (not installed)")
    return COMPUTED


def _window(options: argparse.Namespace) -> int:
    from fitcalc.window.start import start

    return start([] if options.car is None else [options.car])


def _driver(options: argparse.Namespace) -> Driver:
    return load_driver(_file(options.driver, sample_drivers()))


def _file(name: str, samples: Mapping[str, Path]) -> Path:
    """The named file, or the sample of that name where there is no such file."""
    path = Path(name)
    return samples[name] if name in samples and not path.exists() else path


def _show(record: Any, options: argparse.Namespace) -> None:
    from fitcalc.present.summary import heading, tables

    if options.json:
        print(record.model_dump_json(indent=2))
        return
    print(heading(record), end="\n\n")
    _print_tables(tables(record))


def _print_tables(tables: list[Table]) -> None:
    print("\n\n".join(text for table in tables if (text := as_text(table, _width()))), end="\n\n")
    print("Cautions\n" + "\n".join(f"- {line}" for line in CAUTIONS))


def _width() -> int:
    return shutil.get_terminal_size((PAGE, 24)).columns


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="fitcalc",
        description="Fit a driver to an open single-seater: seat offset, pedal extensions, straps, clearances.",
        epilog="Exit status: 0 computed and no limit broken, 1 computed and a limit is broken, 2 bad input.",
    )
    parser.set_defaults(run=_window, car=None)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    check = _command(commands, "check", _check, "how the driver sits, as found or with a rework")
    check.add_argument("--setup", metavar="FILE", help="a rework to check instead of the car as found")
    check.add_argument("--beside", metavar="SET", help="a second limit set to show beside the first")
    fitted = _command(commands, "fit", _fit, "the rework: seat offset first, then pedal extensions")
    fitted.add_argument("--save", metavar="FILE", help="write the rework to this setup file")
    for command in (check, fitted, _add_pedals(commands)):
        command.add_argument("car", metavar="CAR", help="a car file, or the name of a sample")
        command.add_argument("driver", metavar="DRIVER", help="a driver file, or the name of a sample")
        command.add_argument(
            "--rules", metavar="SET", help="limit set, or a file of your own; else the car's own"
        )
        command.add_argument("--json", action="store_true", help="print the full result as JSON")
    _add_straps(commands)
    _add_paper_commands(commands)
    _add_body(commands)
    _command(commands, "limits", _limits, "every check, what it measures, and which rules limit it")
    schema = _command(commands, "schema", _schema, "JSON Schema of a file or of the result")
    schema.add_argument("kind", choices=("car", "driver", "setup", "result", "pedals", "straps"))
    _add_shell(parser, commands)
    window = _command(commands, "window", _window, "open the window (also without any command)")
    window.add_argument("car", nargs="?", metavar="CAR", help="a car file to open")
    return parser


def _add_pedals(commands: Any) -> argparse.ArgumentParser:
    pedals = _command(commands, "pedals", _pedals, "pedals before and after, bars to make, seat mounts")
    pedals.add_argument("--setup", metavar="FILE", help="a rework instead of the one that `fit` finds")
    told = "change of ratio that a mix may make"
    pedals.add_argument("--band", metavar="PERCENT", type=_percent, default=RATIO_BAND, help=told)
    return pedals


def _add_body(commands: Any) -> None:
    body = _command(commands, "body", _body, "what is taken for the driver's body, measured or estimated")
    body.add_argument("driver", metavar="DRIVER", help="a driver file, or the name of a sample")
    body.add_argument("--json", action="store_true", help="print the table as JSON")


def _add_straps(commands: Any) -> None:
    straps = _command(
        commands, "straps", _straps, "straps, places of their anchors, slots to cut; for several drivers"
    )
    straps.add_argument("car", metavar="CAR", help="a car file, or the name of a sample")
    straps.add_argument("drivers", metavar="DRIVER", nargs="+", help="driver files, or names of samples")
    straps.add_argument(
        "--setup", metavar="FILE", help="one rework for all instead of what `fit` finds for each"
    )
    straps.add_argument("--rules", metavar="SET", help="limit set, or a file of your own; else the car's own")
    straps.add_argument("--json", action="store_true", help="print the full result as JSON")


def _add_paper_commands(commands: Any) -> None:
    _add_sheets(commands)
    _add_worksheet(commands)


def _add_sheets(commands: Any) -> None:
    sheets = _command(
        commands, "sheets", _sheets, "bench sheets: PDF, cut list, true-scale parts as DXF and SVG"
    )
    sheets.add_argument("car", metavar="CAR", help="a car file, or the name of a sample")
    sheets.add_argument("driver", metavar="DRIVER", help="a driver file, or the name of a sample")
    sheets.add_argument("--setup", metavar="FILE", help="a rework instead of the one that `fit` finds")
    sheets.add_argument("--rules", metavar="SET", help="limit set, or a file of your own; else the car's own")
    _add_paper(sheets)


def _add_worksheet(commands: Any) -> None:
    told = "the measuring worksheet to print and fill in; filled in, its numbers are taken into the files"
    worksheet = _command(commands, "worksheet", _worksheet, told)
    worksheet.add_argument("car", nargs="?", metavar="CAR", help="a car file; without it the whole worksheet")
    worksheet.add_argument("driver", nargs="?", metavar="DRIVER", help="a driver file")
    worksheet.add_argument("--all", action="store_true", help="also what is measured already")
    worksheet.add_argument("--read", metavar="FILE", help="show what a filled-in CSV or XLSX would change")
    worksheet.add_argument(
        "--write", action="store_true", help="with --read: save the changes to CAR and DRIVER"
    )
    _add_paper(worksheet, required=False)


def _add_paper(command: argparse.ArgumentParser, required: bool = True) -> None:
    command.add_argument("--paper", choices=("a4", "letter"), default="a4", help="size of the pages")
    command.add_argument(
        "--out", metavar="FOLDER", required=required, help="folder to write to; made where it is not there"
    )


def _add_shell(parser: argparse.ArgumentParser, commands: Any) -> None:
    parser.add_argument(
        "--version", dest="run", action="store_const", const=_version, help="print the version"
    )
    shell = _command(commands, "completion", _completion, "script that makes a shell complete what is typed")
    shell.add_argument("shell", choices=("bash", "zsh"))


def _percent(text: str) -> float:
    try:
        value = float(text)
    except ValueError:
        value = -1.0
    if not 0.0 <= value <= MOST_BAND:
        raise argparse.ArgumentTypeError(f"{text} must be a number from 0 to {MOST_BAND:g} %")
    return value


def _command(commands: Any, name: str, run: Any, text: str) -> argparse.ArgumentParser:
    command: argparse.ArgumentParser = commands.add_parser(name, help=text, description=text)
    command.set_defaults(run=run)
    return command
