"""The cut list: every part with its sizes, as typed rows and as a table."""

from collections.abc import Iterator
from dataclasses import dataclass

from fitcalc.present.bench_parts import Bench, Part, Size, bench_number
from fitcalc.present.tables import Table
from fitcalc.present.tolerances import tolerance_source


@dataclass(frozen=True)
class CutRow:
    """One size of one part; lengths in mm, angles in deg. Low and high are None where nothing measured stands behind."""

    part: str
    title: str
    quantity: int
    stock: str
    material: str
    size: str
    value: float
    tolerance: float
    low: float | None
    high: float | None
    basis: str
    unit: str


def cut_rows(bench: Bench) -> tuple[CutRow, ...]:
    """Every size of every part, in order."""
    return tuple(_row(part, size) for part in bench.parts for size in part.sizes)


def cut_table(bench: Bench) -> Table:
    """The cut list for a person: each part named once."""
    header = ("part", "make", "from", "size", "mm", "tolerance", "interval")
    return Table("Cut list", header, tuple(line for part in bench.parts for line in _lines(part)))


def sizes_table(part: Part) -> Table:
    """The sizes of one part."""
    rows = tuple((size.name, *size_cells(size)) for size in part.sizes)
    return Table(part.title, ("size", "mm", "tolerance", "interval"), rows)


def size_cells(size: Size) -> tuple[str, str, str]:
    """Value, tolerance and interval as text."""
    ends = "" if size.interval is None else " to ".join(bench_number(end) for end in size.interval)
    low_high = f"{ends} ({size.basis})" if ends else "-"
    unit = "" if size.unit == "mm" else f" {size.unit}"
    return f"{bench_number(size.value)}{unit}", f"\N{PLUS-MINUS SIGN}{bench_number(size.tolerance)}", low_high


def reading_notes() -> tuple[str, ...]:
    """What tolerance and interval mean."""
    return (
        f"Tolerance: how exactly to make it; {tolerance_source()}, medium where drilled, coarse where sawn.",
        "Interval (90 %): where the right size lies in 90 of 100 drawn cars and bodies that agree with the measurements.",
        "Interval (tape): from tape tolerances alone, added as independent errors; estimates of the body are not in it.",
        "A wide interval means: offer the part up, clamped, with the driver belted in, before it is cut or fixed.",
    )


def _row(part: Part, size: Size) -> CutRow:
    low, high = size.interval or (None, None)
    return CutRow(
        part=part.id,
        title=part.title,
        quantity=part.quantity,
        stock=part.stock,
        material=part.material,
        size=size.name,
        value=size.value,
        tolerance=size.tolerance,
        low=low,
        high=high,
        basis=size.basis,
        unit=size.unit,
    )


def _lines(part: Part) -> Iterator[tuple[str, ...]]:
    named = (part.title, f"{part.quantity}", f"{part.stock}, {part.material}")
    for size in part.sizes:
        yield (*named, size.name, *size_cells(size))
        named = ("", "", "")
