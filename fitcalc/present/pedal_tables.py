"""The pedals' record as tables for the bench: before and after, bars to make, seat mounts."""

from collections.abc import Mapping

from fitcalc.present.bar_tables import advice_table, bars_table
from fitcalc.present.mount_record import LevelRecord, MountsRecord
from fitcalc.present.pedal_record import ChangeRecord, PedalsRecord
from fitcalc.present.shoe_record import near_table, shoes_table
from fitcalc.present.summary import checks_table, remedies_table
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, number

WORK: tuple[tuple[str, str, str, int], ...] = (
    ("pad travel", "pad_travel", "mm", 0),
    ("ratio at rest", "ratio_rest", "", 2),
    ("ratio, mean", "ratio_mean", "", 2),
    ("ratio at the stop", "ratio_full", "", 2),
    ("foot force, same pressure or pull", "foot_force", "N", 0),
    ("line pressure at 500 N (front)", "pressure", "MPa", 1),
    ("line pressure at 500 N, rear", "rear_pressure", "MPa", 1),
    ("cylinder stroke used", "stroke", "mm", 1),
    ("cylinder stroke left", "stroke_left", "mm", 1),
    ("push-rod off square, most", "off_square", "deg", 0),
    ("clutch bearing travel", "release", "mm", 1),
    ("clutch bearing travel left", "release_left", "mm", 1),
    ("cable pull", "pull", "mm", 1),
    ("cable pull left", "pull_left", "mm", 1),
    ("stop beyond the cable's work", "stop_error", "deg", 1),
    ("pad along the shoe", "slide", "mm", 0),
    ("pad above the ball, heel down", "height", "mm", 0),
)
"""What is told of a pedal, its field, unit and decimals."""


def pedal_tables(record: PedalsRecord) -> list[Table]:
    """All tables of the command, in reading order."""
    return [
        work_table(record.pedals),
        bars_table({name: change.bar for name, change in record.pedals.items()}),
        stock_table(record.pedals),
        advice_table(change.bar for change in record.pedals.values()),
        mix_table(record),
        shoes_table(record.shoes),
        near_table(record.shoes),
        mounts_table(record.seat),
        fixing_table(record.seat),
        checks_table("Checks that do not pass", [check for check in record.checks if check.status != "pass"]),
        remedies_table(record.checks),
    ]


def pedal_heading(record: PedalsRecord) -> str:
    """What was calculated, and how the checks came out."""
    counts = {status: sum(check.status == status for check in record.checks) for status in MARKS}
    said = ", ".join(f"{count} {status}" for status, count in counts.items())
    made = [name for name, change in record.pedals.items() if change.bar is not None]
    bars = f"bars to make for: {', '.join(made)}" if made else "no pedal is extended: no bar to make"
    return "\n".join([f"{record.driver} in {record.car}; rules: {record.rules}", bars, f"checks: {said}"])


def work_table(pedals: Mapping[str, ChangeRecord]) -> Table:
    """Every pedal as found and after."""
    made = [
        ("stand-off", *(amount(change.stand_off, "mm") for change in pedals.values())),
        ("longer arm", *(amount(change.longer_arm, "mm") for change in pedals.values())),
    ]
    rows = [
        (title, *(_both(change, field, unit, decimals) for change in pedals.values()))
        for title, field, unit, decimals in WORK
    ]
    told = [row for row in rows if any(cell != "-" for cell in row[1:])]
    return Table("Pedals, as found -> after", ("what", *pedals), (*made, *told))


def stock_table(pedals: Mapping[str, ChangeRecord]) -> Table:
    """The least stock of the same shape that passes."""
    rows = tuple(
        (name, change.stock.section, number(change.stock.safety, "-"), "yes" if change.stock.enough else "no")
        for name, change in pedals.items()
        if change.stock is not None
    )
    return Table(
        "Thinnest stock of that shape that passes", ("pedal", "size", "safety", "as aimed for"), rows
    )


def mix_table(record: PedalsRecord) -> Table:
    """The mix of longer arm and stand-off that keeps the ratio in the band."""
    mixes = {name: change.mix for name, change in record.pedals.items() if change.mix is not None}
    rows = tuple(
        (
            name,
            amount(mix.reach, "mm"),
            amount(mix.longer_arm, "mm"),
            amount(mix.stand_off, "mm"),
            amount(mix.ratio_change, "%"),
            amount(mix.shortfall, "mm"),
        )
        for name, mix in mixes.items()
    )
    header = (
        "pedal",
        "nearer to the hip",
        "longer arm",
        "stand-off, square to the arm",
        "ratio",
        "still short",
    )
    return Table(f"As near with the ratio within {record.band:g} % and the least stand-off", header, rows)


def mounts_table(seat: MountsRecord) -> Table:
    """Every load level, with the bolt that is used most."""
    title = f"Seat mounts, {seat.bolts}, harness on the car"
    if seat.bracket_reach:
        title += f"; brackets bridge {seat.bracket_reach:.0f} mm from the old holes"
    header = (
        "load",
        "direction",
        "mass",
        "tension",
        "shear",
        "safety",
        "bracket of steel 40 mm wide",
        "from",
    )
    return Table(title, header, tuple(map(_level, seat.levels)))


def fixing_table(seat: MountsRecord) -> Table:
    """Published rules on points, bolts and plates."""
    rows = tuple((rule.quantity, f"at least {rule.low:g} {rule.unit}", rule.source) for rule in seat.rules)
    return Table("Seat fixing, published rules", ("what", "allowed", "from"), rows)


def _level(row: LevelRecord) -> tuple[str, ...]:
    mass = "-" if row.mass is None else f"{row.multiple:g} x {amount(row.mass, 'kg')}"
    bracket = f"{row.bracket_thickness:.1f} mm" if row.bracket_thickness else "-"
    forces = (amount(row.tension, "N"), amount(row.shear, "N"), number(row.safety, "-"))
    return (row.level, row.direction, mass, *forces, bracket, row.source)


def _both(change: ChangeRecord, field: str, unit: str, decimals: int) -> str:
    found, after = (_told(getattr(state, field), decimals) for state in (change.found, change.after))
    both = found if found == after else f"{found} -> {after}"
    return both if found == "-" else f"{both} {unit}".rstrip()


def _told(value: float | None, decimals: int) -> str:
    return "-" if value is None else f"{value + 0.0:.{decimals}f}"
