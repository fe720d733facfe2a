"""`fitcalc completion`, `--version` and `window`: ways in and out of the program."""

import argparse

from fitcalc.commands.asking import COMPUTED, Commands, Options, command
from fitcalc.documents.samples import sample_cars, sample_drivers


def add(parser: argparse.ArgumentParser, commands: Commands) -> None:
    """All three; without any command the window opens."""
    parser.set_defaults(run=_window, car=None, parser=parser)
    told = "print the version"
    parser.add_argument("--version", dest="run", action="store_const", const=_version, help=told)
    shell = command(commands, "completion", _completion, "script that makes a shell complete what is typed")
    shell.add_argument("shell", choices=("bash", "zsh"))
    window = command(commands, "window", _window, "open the window (also without any command)")
    window.add_argument("car", nargs="?", metavar="CAR", help="a car file to open")


def _completion(options: Options) -> int:
    from fitcalc.checks.limits import limit_set_names
    from fitcalc.completion import completion

    names = {"CAR": list(sample_cars()), "DRIVER": list(sample_drivers()), "SET": limit_set_names()}
    print(completion(options.parser, options.shell, names), end="")
    return COMPUTED


def _version(options: Options) -> int:
    from importlib.metadata import PackageNotFoundError, version

    try:
        print(f"fitcalc {version('fitcalc')}")
    except PackageNotFoundError:
        print("fitcalc (not installed)")
    return COMPUTED


def _window(options: Options) -> int:
    from fitcalc.window.start import start

    return start([] if options.car is None else [options.car])
