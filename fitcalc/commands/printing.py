"""What commands print alike: tables fitted to the terminal, records as JSON, and the cautions."""

import shutil
from collections.abc import Callable, Iterable
from typing import TypeVar

from fitcalc.present.parts import Record
from fitcalc.present.tables import Table, as_text
from fitcalc.present.wording import CAUTIONS

R = TypeVar("R", bound=Record)

PAGE = 150
"""Width of tables where the output is no terminal, characters."""


def print_record(
    record: R, as_json: bool, heading: Callable[[R], str], tables: Callable[[R], Iterable[Table]]
) -> None:
    """A record as JSON, or as its heading and tables for a person."""
    if as_json:
        print_json(record)
    else:
        print(heading(record), end="\n\n")
        print_tables(tables(record))


def print_json(record: Record) -> None:
    """The whole record."""
    print(record.model_dump_json(indent=2))


def print_tables(tables: Iterable[Table]) -> None:
    """Tables with a blank line between them, then the cautions."""
    print("\n\n".join(text for table in tables if (text := table_text(table))), end="\n\n")
    print("Cautions\n" + "\n".join(f"- {line}" for line in CAUTIONS))


def table_text(table: Table) -> str:
    """A table that fits the terminal; empty when it has no rows."""
    return as_text(table, shutil.get_terminal_size((PAGE, 24)).columns)
