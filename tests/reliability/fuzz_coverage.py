"""Fuzzing that follows coverage: files, command line arguments, and worksheets filled in as CSV and XLSX.

    pip install atheris
    PYTHONPATH=. nice python tests/reliability/fuzz_coverage.py car|driver|setup|rules|arguments|csv|xlsx [seconds]

What the fuzzer makes is loaded or refused with one sentence, in 3 s (a command in 30 s, for the watching makes it
slow) and 1.5 GB; anything else ends the run with the
input that did it. The fuzzer looks for inputs that reach branches not reached before, from the samples on.
"""

import contextlib
import io
import os
import sys
import zipfile
from pathlib import Path
from tempfile import TemporaryDirectory

import atheris

with atheris.instrument_imports(include=["fitcalc", "tomllib", "openpyxl"]):
    from fitcalc.checks.limits import load_limit_set
    from fitcalc.cli import main
    from fitcalc.documents.car import Car
    from fitcalc.documents.driver import Driver
    from fitcalc.documents.samples import sample_cars, sample_drivers
    from fitcalc.documents.setup import Setup
    from fitcalc.documents.store import load, save
    from fitcalc.errors import InputError
    from fitcalc.paper.worksheet_file import (
        applied,
        preview,
        read_worksheet,
        worksheet_csv,
        worksheet_xlsx,
    )
    from fitcalc.present.worksheet_rows import worksheet

FOLDER = TemporaryDirectory()
FILE, CORPUS = Path(FOLDER.name, "fuzzed"), Path(FOLDER.name, "corpus")
FIRST = "xl/worksheets/sheet1.xml"
SETUP = (
    b'format = 1\nname = "tried"\nseat_travel = 40\nrecline = 2.5\n[brake]\nstand_off = 30\nlonger_arm = 0\n'
)
COMMANDS = (
    "check",
    "straps",
    "body",
    "limits",
    "schema",
    "completion",
    "--version",
    "--help",
    "pedals",
    "solve",
    "fit",
    "worksheet",
)
DOCUMENTS = {"car": load(Car, sample_cars()["hillclimb"]), "driver": load(Driver, sample_drivers()["robin"])}
ENTRIES = worksheet(DOCUMENTS["car"], DOCUMENTS["driver"], True)


def one_sentence(error):
    """A refusal as it must be."""
    if "\n" in str(error):
        raise AssertionError(f"more than one line: {error}")


def document(kind):
    """Loads a document, and saves what loaded."""

    def load_it(data):
        FILE.with_suffix(".toml").write_bytes(data)
        try:
            found = load(kind, FILE.with_suffix(".toml"))
            save(found, FILE.with_suffix(".toml"))
        except InputError as error:
            one_sentence(error)

    return load_it


def rules(data):
    """Loads a limit set of a person's own."""
    FILE.with_suffix(".toml").write_bytes(data)
    try:
        load_limit_set(FILE.with_suffix(".toml"))
    except InputError as error:
        one_sentence(error)


def arguments(data):
    """Runs a command line; names that lead out of the folder are left out, and so is the window."""
    words = data.decode("utf-8", "surrogateescape").split("\n")[:8]
    if words[0] not in COMMANDS or any("/" in word or ".." in word for word in words):
        return
    printed, told = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(told):
        try:
            status = main(words)
        except SystemExit as end:
            status = end.code
    if status not in (0, 1, 2):
        raise AssertionError(f"status {status}")


def sheet(data, suffix):
    """Reads a worksheet and takes its numbers into the samples."""
    file = FILE.with_suffix(suffix)
    file.write_bytes(data)
    try:
        entered = read_worksheet(file)
        for kind, each in DOCUMENTS.items():
            applied(preview(entered, kind, each), each)
    except InputError as error:
        one_sentence(error)


def workbook(data):
    """The fuzzed text as the sheet of a sound workbook, or as the workbook itself."""
    if data[:2] == b"PK":
        sheet(data, ".xlsx")
        return
    made = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(BOOK)) as old, zipfile.ZipFile(made, "w") as new:
        for name in old.namelist():
            new.writestr(name, data if name == FIRST else old.read(name))
    sheet(made.getvalue(), ".xlsx")


BOOK = worksheet_xlsx(ENTRIES[:3], {})
TARGETS = {
    "car": (document(Car), [path.read_bytes() for path in sample_cars().values()], 20_000),
    "driver": (document(Driver), [path.read_bytes() for path in sample_drivers().values()], 6_000),
    "setup": (document(Setup), [SETUP], 2_000),
    "rules": (rules, [Path("docs/example_rules.toml").read_bytes()], 6_000),
    "arguments": (
        arguments,
        [
            b"check\nhillclimb\nrobin\n--json", b"straps\nstudent\nines\notto\n--rules\nclub", b"body\nmagnus", b"schema\ncar",
            b"check\nupright\nines\n--beside\nhistoric", b"pedals\nstudent\nines\n--band\n12", b"completion\nbash", b"limits",
            b"fit\nhillclimb\nrobin\n--save\nrework.toml", b"--version", b"worksheet\nhillclimb\nrobin\n--read\nsheet.csv",
        ],
        300,
    ),
    "csv": (lambda data: sheet(data, ".csv"), [worksheet_csv(ENTRIES[:3])], 4_000),
    "xlsx": (workbook, [BOOK, zipfile.ZipFile(io.BytesIO(BOOK)).read(FIRST)], 12_000),
}  # fmt: skip


def words_of(kind):
    """Words that the fuzzer may put in."""
    names = {
        name
        for model in (Car, Driver, Setup)
        for name in str(model.model_json_schema()).split("'")
        if name.isidentifier()
    }
    options = (
        "--json",
        "--rules",
        "--setup",
        "--beside",
        "--save",
        "--band",
        "--all",
        "--read",
        "--write",
        "--paper",
        "robin",
        "club",
    )
    tags = (
        "<c r=",
        ' t="s"',
        "<v>",
        "<row>",
        "<f>",
        "&amp;",
        "<!DOCTYPE",
        "<![CDATA[",
        "1e308",
        "nan",
        "document",
        "entered",
    )
    signs = ("[[", "]]", "= ", "nan", "inf", "1e400", '"""', "'''", "{ ", " }", "1979-05-27", "\\u0000")
    return {"arguments": options + COMMANDS, "xlsx": tags, "csv": tags}.get(kind, (*signs, *sorted(names)))


def quoted(word):
    """A word as the fuzzer's list of words has it."""
    return '"' + "".join(f"\\x{byte:02x}" for byte in word.encode()) + '"'


def run():
    """Fuzzes one target for so many seconds."""
    kind, seconds = sys.argv[1], int(sys.argv[2]) if sys.argv[2:] else 300
    act, seeds, longest = TARGETS[kind]
    os.chdir(FOLDER.name)
    CORPUS.mkdir()
    for at, seed in enumerate(seeds):
        Path(CORPUS, f"seed{at}").write_bytes(seed)
    Path("words").write_text("\n".join(map(quoted, words_of(kind))), encoding="utf-8")
    flags = (
        f"-timeout={30 if kind == 'arguments' else 3}",
        "-rss_limit_mb=1500",
        f"-max_total_time={seconds}",
        f"-max_len={longest}",
        "-dict=words",
        "-print_final_stats=1",
        "-artifact_prefix=/tmp/fuzzed-",
    )
    atheris.Setup([sys.argv[0], *flags, str(CORPUS)], act)
    atheris.Fuzz()


if __name__ == "__main__":
    run()
