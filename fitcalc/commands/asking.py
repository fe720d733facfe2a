"""What commands ask for alike: cars, drivers, reworks, limit sets; and where it is found."""

import argparse
from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from pathlib import Path
from typing import Any, TypeAlias

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver, load_effort, load_setup

COMPUTED, SOMETHING_FAILS, BAD_INPUT, STOPPED = 0, 1, 2, 130
"""Exit statuses; 130 is what shells expect after Ctrl-C."""
MOST_PERCENT = 100.0

Commands: TypeAlias = Any
"""What argparse makes subcommands from."""
Options: TypeAlias = argparse.Namespace
Run = Callable[[Options], int]


def command(commands: Commands, name: str, run: Run, text: str) -> argparse.ArgumentParser:
    """A new command; `text` is its line of help."""
    made: argparse.ArgumentParser = commands.add_parser(name, help=text, description=text)
    made.set_defaults(run=run)
    return made


def ask_car(parser: argparse.ArgumentParser) -> None:
    """CAR."""
    parser.add_argument("car", metavar="CAR", help="a car file, or the name of a sample")


def ask_driver(parser: argparse.ArgumentParser) -> None:
    """DRIVER."""
    parser.add_argument("driver", metavar="DRIVER", help="a driver file, or the name of a sample")


def ask_drivers(parser: argparse.ArgumentParser) -> None:
    """DRIVER [DRIVER ...]."""
    parser.add_argument("drivers", metavar="DRIVER", nargs="+", help="driver files, or names of samples")


def ask_setup(parser: argparse.ArgumentParser, told: str) -> None:
    """--setup FILE."""
    parser.add_argument("--setup", metavar="FILE", help=told)


def ask_rules(parser: argparse.ArgumentParser) -> None:
    """--rules SET."""
    parser.add_argument("--rules", metavar="SET", help="limit set, or a file of your own; else the car's own")


def ask_effort(parser: argparse.ArgumentParser) -> None:
    """--effort FILE."""
    told = (
        "what may be changed, how far, and what it costs; `fitcalc effort CAR` prints what holds without it"
    )
    parser.add_argument("--effort", metavar="FILE", help=told)


def ask_json(parser: argparse.ArgumentParser) -> None:
    """--json."""
    parser.add_argument("--json", action="store_true", help="print the full result as JSON")


def ask_picture(parser: argparse.ArgumentParser) -> None:
    """--out FILE and --paper."""
    told = "write a picture as well: a name that ends in .pdf, .svg or .png"
    parser.add_argument("--out", metavar="FILE", help=told)
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4", help="size of the pages")


def ask_paper(parser: argparse.ArgumentParser, required: bool = True) -> None:
    """--paper and --out FOLDER."""
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4", help="size of the pages")
    told = "folder to write to; made where it is not there"
    parser.add_argument("--out", metavar="FOLDER", required=required, help=told)


def car_of(options: Options) -> Car:
    """The car that was named."""
    return load_car(named_file(options.car, sample_cars()))


def driver_of(options: Options) -> Driver:
    """The driver who was named."""
    return load_driver(named_file(options.driver, sample_drivers()))


def drivers_of(options: Options) -> Sequence[Driver]:
    """The drivers who were named, in that order."""
    return [load_driver(named_file(name, sample_drivers())) for name in options.drivers]


def setup_of(options: Options) -> Setup | None:
    """The rework that was named; None where none was."""
    return load_setup(options.setup) if options.setup else None


def effort_of(options: Options) -> Effort:
    """What may be changed and what it costs; as the program has it where nothing was named."""
    return load_effort(options.effort) if options.effort else Effort()


def named_file(name: str, samples: Mapping[str, Path]) -> Path:
    """The named file, or the sample of that name where there is no such file."""
    path = Path(name)
    return samples[name] if name in samples and not path.exists() else path


def percent(text: str) -> float:
    """A number from 0 to 100 as it was typed."""
    return number_within(text, 0.0, MOST_PERCENT, "%")


def number_within(text: str, low: float, high: float, unit: str = "") -> float:
    """A number between two others as it was typed; argparse tells what was wrong with it."""
    try:
        value = float(text)
    except ValueError:
        value = low - 1.0
    if not low <= value <= high:
        allowed = f"a number from {low:g} to {high:g} {unit}".rstrip()
        raise argparse.ArgumentTypeError(f"{text} must be {allowed}")
    return value


def whole_number(text: str, low: int, high: int) -> int:
    """A whole number between two others as it was typed; argparse tells what was wrong with it."""
    if not text.strip().isdecimal() or not low <= int(text) <= high:
        raise argparse.ArgumentTypeError(f"{text} must be a whole number from {low} to {high}")
    return int(text)


def today() -> str:
    """The date as it stands on a sheet."""
    return f"{datetime.now().astimezone():%Y-%m-%d}"
