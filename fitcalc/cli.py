"""The command line: which commands there are, and the exit status."""

import argparse
import sys
from collections.abc import Sequence

from fitcalc.commands import (
    body_and_rules,
    built,
    certainty,
    check,
    pedals,
    people,
    schema,
    sheets,
    shell,
    solve,
    straps,
    trade,
    worksheet,
)
from fitcalc.commands.asking import BAD_INPUT, COMPUTED, STOPPED
from fitcalc.errors import InputError


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; the exit status is 0 computed, 1 computed and a limit is broken, 2 bad input."""
    options = _parser().parse_args(arguments)
    try:
        status: int = options.run(options)
    except InputError as error:
        print(f"fitcalc: {error}", file=sys.stderr)
        return BAD_INPUT
    except KeyboardInterrupt:
        print("\nfitcalc: stopped; nothing more was written", file=sys.stderr)
        return STOPPED
    except BrokenPipeError:
        sys.stderr.close()
        return COMPUTED
    return status


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="fitcalc",
        description="Fit a driver to an open single-seater: seat offset, pedal extensions, straps, clearances.",
        epilog="Exit status: 0 computed and no limit broken, 1 computed and a limit is broken, 2 bad input.",
    )
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    for group in (
        check, solve, trade, certainty, people, pedals, straps, sheets, built, worksheet, body_and_rules, schema,
    ):  # fmt: skip
        group.add(commands)
    shell.add(parser, commands)
    return parser
