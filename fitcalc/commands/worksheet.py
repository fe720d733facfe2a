"""`fitcalc worksheet`: what is still to be measured, to print and fill in; and taking it into the files, or into new ones."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

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
from fitcalc.documents.fields import Document
from fitcalc.documents.store import save
from fitcalc.errors import InputError

if TYPE_CHECKING:
    from fitcalc.paper.worksheet_file import Entered
    from fitcalc.present.worksheet_rows import Kind

NEW = ".toml"
"""A name that ends so and is no file yet is one to begin."""
LOADED: "Mapping[Kind, Callable[[Options], Document]]" = MappingProxyType(
    {"car": car_of, "driver": driver_of}
)


def add(commands: Commands) -> None:
    """The command."""
    told = "the measuring worksheet to print and fill in; filled in, its numbers are taken into the files"
    worksheet = command(commands, "worksheet", _worksheet, told)
    worksheet.add_argument(
        "car",
        nargs="?",
        metavar="CAR",
        help="a car file; without it the whole worksheet; with --read also a new one",
    )
    worksheet.add_argument(
        "driver", nargs="?", metavar="DRIVER", help="a driver file; with --read also a new one"
    )
    worksheet.add_argument("--all", action="store_true", help="also what is measured already")
    worksheet.add_argument("--read", metavar="FILE", help="show what a filled-in CSV or XLSX would change")
    told = "with --read: save the changes to CAR and DRIVER, or begin those files"
    worksheet.add_argument("--write", action="store_true", help=told)
    ask_paper(worksheet, required=False)


def _worksheet(options: Options) -> int:
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.worksheet_set import write_worksheet

    if options.read:
        return _read(options)
    if not options.out:
        raise InputError("--out", "missing", "must name a folder", "or name a filled-in file with --read")
    car = car_of(options) if options.car else None
    driver = driver_of(options) if options.driver else None
    written = write_worksheet(car, driver, options.all, PAPERS[options.paper], Path(options.out), today())
    print("\n".join(str(path) for path in written))
    return COMPUTED


def _read(options: Options) -> int:
    from fitcalc.paper.worksheet_file import read_worksheet

    named: list[Kind] = [kind for kind in LOADED if getattr(options, kind)]
    if not named:
        told = "needs a car or a driver file to take the numbers into"
        raise InputError("--read", "given alone", told, "name one; one that is not there yet is begun")
    entered = read_worksheet(Path(options.read))
    taken = [_taken(kind, options, entered) for kind in named]
    for each in taken:
        print(each.told)
        if options.write and each.document is not None:
            save(each.document, getattr(options, each.kind))
    return COMPUTED


@dataclass(frozen=True)
class Taken:
    """What a worksheet says for one file, in words; the document where the file is to be written."""

    kind: "Kind"
    told: str
    document: Document | None


def _taken(kind: "Kind", options: Options, entered: "Sequence[Entered]") -> Taken:
    from fitcalc.paper.worksheet_file import applied, changes_table, preview
    from fitcalc.paper.worksheet_new import begun, lacking

    name = getattr(options, kind)
    is_new = name.endswith(NEW) and not Path(name).exists()
    before = None if is_new else LOADED[kind](options)
    changes = preview(entered, kind, before)
    table = table_text(changes_table(kind, changes)) or f"{kind}: nothing changes"
    if before is not None:
        return Taken(kind, table, applied(changes, before) if changes else None)
    lacks = lacking(changes, kind)
    if lacks and options.write:
        raise InputError(name, "", f"can't be begun, for {lacks}", "fill them in, and read it again")
    if lacks:
        return Taken(kind, f"{table}\n\n{name} can't be begun yet: {lacks}.", None)
    return Taken(kind, f"{name}: a new {kind} file\n\n{table}", begun(changes, kind))
