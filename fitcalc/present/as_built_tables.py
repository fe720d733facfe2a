"""As built as tables for a person."""

from collections.abc import Iterator

from fitcalc.present.as_built_record import BuiltRecord, MadeRecord, ReadingRecord, ShiftRecord, WantedRecord
from fitcalc.present.bench_parts import bench_number, set_length
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, signed, span

WANTED_HEADER = ("what", "tool", "expected", "90 % interval", "allowed")
NORMAL_90 = 1.645
"""Half of the 90 % interval of a normal error, in its standard deviations."""
LATEST = 4
"""Builds of the history that stand side by side."""
YES_NO = {None: "-", True: "yes", False: "NO"}


def built_title(record: BuiltRecord) -> str:
    """What it is about."""
    return f"As built, {record.date}: {record.driver} in {record.car}; documents {record.documents}"


def built_heading(record: BuiltRecord) -> str:
    """What it is about, and where to go on."""
    head = built_title(record)
    if not record.is_empty:
        return head
    return f"{head}\nNothing was entered yet. Enter it with --set KEY=VALUE, or fill in a file and --read it."


def built_tables(record: BuiltRecord) -> list[Table]:
    """All tables in reading order; empty ones have no rows."""
    return [
        wanted_table(record),
        work_table(record),
        readings_table(record),
        explanation_table(record),
        history_table(record),
    ]


def wanted_table(record: BuiltRecord) -> Table:
    """What may be entered."""
    rows = tuple((row.key, *wanted_cells(row)) for row in record.wanted)
    return Table("What may be entered", ("key", *WANTED_HEADER), rows)


def work_table(record: BuiltRecord) -> Table:
    """What was set and cut."""
    header = ("what", "planned", "made", "difference", "tolerance", "within")
    return Table("Made, against the plan", header, tuple(_made(row) for row in record.work), lengths=(4,))


def readings_table(record: BuiltRecord) -> Table:
    """What was read, against the prediction for the rework as made."""
    header = ("what", "measured", "predicted", "difference", "90 % interval", "agrees", "verdict")
    rows = tuple(_reading(row) for row in record.readings)
    return Table("Measured, against the prediction for the rework as made", header, rows)


def explanation_table(record: BuiltRecord) -> Table:
    """What would explain the difference."""
    found = record.explanation
    header = ("figure", "now", "its uncertainty (90 %)", "shared shift", "alone", "would then explain")
    if found is None:
        return Table("", header, ())
    title = "What would explain the differences (arithmetic, not a finding)"
    return Table(title, header, tuple(_shift(row) for row in found.would_explain))


def history_table(record: BuiltRecord) -> Table:
    """The latest builds side by side, figure by figure."""
    builds = record.history[-LATEST:]
    figures = dict.fromkeys(name for build in builds for name in build.readings)
    known = {row.figure: (row.label, row.unit) for row in record.readings}
    rows = tuple(
        (label, *(_kept(build.readings.get(name), build.predicted.get(name), unit) for build in builds))
        for name in figures
        for label, unit in (known.get(name, (name, "")),)
    )
    header = ("what", *(f"{build.date} {build.car}" for build in builds))
    return Table(f"History of {record.driver}: measured (predicted)", header, rows)


def reading_notes(record: BuiltRecord) -> Iterator[str]:
    """How to read the explanation."""
    if record.explanation is not None and record.explanation.would_explain:
        yield "Shared shift: if all figures share the difference, each in keeping with its own uncertainty."
        yield "Alone: if this figure alone were off, and how many of its standard uncertainties that is: beyond 3 it is unlikely."
        yield "Neither says that a figure is off: only measuring it again tells."


def wanted_cells(row: WantedRecord) -> tuple[str, ...]:
    """What, tool with its error, expected, interval and what is allowed, under `WANTED_HEADER`."""
    expected = _set(row) if row.key.startswith("made.") else amount(row.expected, row.unit)
    tool = f"{row.tool} \N{PLUS-MINUS SIGN}{row.error:g}"
    return (row.title, tool, expected, _ends(row.low, row.high, row.unit), row.allowed or "-")


def _set(row: WantedRecord) -> str:
    return "-" if row.expected is None else f"{bench_number(row.expected)} {row.unit}"


def _made(row: MadeRecord) -> tuple[str, ...]:
    bound = "-" if row.tolerance is None else f"\N{PLUS-MINUS SIGN}{bench_number(row.tolerance)}"
    planned, made, off = (bench_number(set_length(v)) for v in (row.planned, row.made, row.difference))
    plus = "+" if row.difference > 0 else ""
    return (row.title, f"{planned} {row.unit}", f"{made} {row.unit}", f"{plus}{off} {row.unit}", bound,
            YES_NO[row.within])  # fmt: skip


def _reading(row: ReadingRecord) -> tuple[str, ...]:
    verdict = "-" if row.status is None else f"{MARKS[row.status]} {row.status}"
    gap = "-" if row.difference is None else signed(row.difference, row.unit)
    return (
        row.label,
        f"{_as_read(row)} \N{PLUS-MINUS SIGN}{row.error:g}",
        amount(row.predicted, row.unit),
        gap,
        _ends(row.low, row.high, row.unit),
        YES_NO[row.expected],
        verdict,
    )


def _as_read(row: ReadingRecord) -> str:
    """A reading to the 0.1 mm that may have been entered."""
    return f"{bench_number(row.measured)} mm" if row.unit == "mm" else amount(row.measured, row.unit)


def _shift(row: ShiftRecord) -> tuple[str, ...]:
    wide = NORMAL_90 * row.u
    now = "-" if row.kind == "proportion" else amount(row.now, row.unit)
    return (
        f"{row.kind}: {row.title}",
        now,
        f"\N{PLUS-MINUS SIGN}{_fine(wide)} {row.unit}".removesuffix(" -"),
        f"{_signed_fine(row.together)} {row.unit}".removesuffix(" -"),
        f"{f'{_signed_fine(row.alone)} {row.unit}'.removesuffix(' -')} ({abs(row.alone) / row.u:.1f} x)",
        f"{100 * row.explains:.0f} %",
    )


def _signed_fine(value: float) -> str:
    return f"{'-' if value < 0 else '+'}{_fine(abs(value))}"


def _fine(value: float) -> str:
    return f"{value:.1f}" if value >= 1.0 else f"{value:.2g}"


def _ends(low: float | None, high: float | None, unit: str) -> str:
    return "-" if low is None or high is None else span(low, high, unit)


def _kept(value: float | None, predicted: float | None, unit: str) -> str:
    if value is None:
        return "-"
    told = "" if predicted is None else f" ({predicted:.1f})"
    return f"{f'{bench_number(value)} {unit}'.removesuffix(' -').rstrip()}{told}"
