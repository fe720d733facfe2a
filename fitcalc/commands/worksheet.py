"""`fitcalc worksheet`: what is still to be measured, to print and fill in; and taking it into the files."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, Any

from fitcalc.commands.asking import (
    COMPUTED,
    Commands,
    Options,
    ask_paper,
    car_of,
    command,
    driver_of,
    today,
)
from fitcalc.commands.printing import table_text
from fitcalc.documents.store import save
from fitcalc.errors import InputError

if TYPE_CHECKING:
    from fitcalc.present.worksheet_rows import Kind


def add(commands: Commands) -> None:
    """The command."""
    told = "the measuring worksheet to print and fill in; filled in, its numbers are taken into the files"
    worksheet = command(commands, "worksheet", _worksheet, told)
    worksheet.add_argument("car", nargs="?", metavar="CAR", help="a car file; without it the whole worksheet")
    worksheet.add_argument("driver", nargs="?", metavar="DRIVER", help="a driver file")
    worksheet.add_argument("--all", action="store_true", help="also what is measured already")
    worksheet.add_argument("--read", metavar="FILE", help="show what a filled-in CSV or XLSX would change")
    told = "with --read: save the changes to CAR and DRIVER"
    worksheet.add_argument("--write", action="store_true", help=told)
    ask_paper(worksheet, required=False)


def _worksheet(options: Options) -> int:
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.worksheet_set import write_worksheet

    car = car_of(options) if options.car else None
    driver = driver_of(options) if options.driver else None
    if options.read:
        return _read(options, {"car": car, "driver": driver})
    if not options.out:
        raise InputError("--out", "missing", "must name a folder", "or name a filled-in file with --read")
    written = write_worksheet(car, driver, options.all, PAPERS[options.paper], Path(options.out), today())
    print("\n".join(str(path) for path in written))
    return COMPUTED


def _read(options: Options, documents: "Mapping[Kind, Any]") -> int:
    from fitcalc.paper.worksheet_file import applied, changes_table, preview, read_worksheet

    entered = read_worksheet(Path(options.read))
    for kind, document in documents.items():
        if document is None:
            continue
        changes = preview(entered, kind, document)
        changed = applied(changes, document)
        print(table_text(changes_table(kind, changes)) or f"{kind}: nothing changes")
        if options.write and changes:
            save(changed, getattr(options, kind))
    return COMPUTED
