"""The record as tables for a person: what to do, how the driver then sits, what the limits say."""

from collections.abc import Sequence

from fitcalc.documents.setup import Setup
from fitcalc.fit.sweep import INSERTS
from fitcalc.present.bar_tables import bars_table
from fitcalc.present.change_words import sense_of, title_of
from fitcalc.present.record import CheckRecord, FigureRecord, ResultRecord
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, number, seat_move, signed, span

GROUPS = (
    ("Straps", "harness."),
    ("Cleats, shoes and pedals", "cleat."),
)
STRAP_ANGLES = (".side_angle", ".plan_angle", ".rim_angle")
ALWAYS_TOLD = (*STRAP_ANGLES, "head.hoop_line")


def tables(record: ResultRecord, everything: bool = False) -> list[Table]:
    """All tables of one record, in reading order.

    Args:
        record: from `record.check_record` or `record.fit_record`.
        everything: also the checks that pass away from straps and shoes, and the figures that nothing limits.
    """
    sitting = posture_table(record)
    bars = bars_table({name: pedal.bar for name, pedal in record.pedals.items()})
    untouched = record.as_found is None and record.setup == Setup()
    work = [pedal_table(record)] if untouched else [seat_table(record), pedal_table(record), bars]
    checks = record.checks if everything else [check for check in record.checks if _telling(check)]
    groups = [checks_table(title, [c for c in checks if c.id.startswith(start)]) for title, start in GROUPS]
    starts = tuple(start for _, start in GROUPS)
    rest = checks_table("Everything else", [c for c in checks if not c.id.startswith(starts)])
    figures = figures_table(record.figures) if everything else strap_angles_table(record)
    more = [figures, remedies_table(record.checks), checklist_table(record)]
    return [*work, sitting, *groups, rest, *more]


def left_out(record: ResultRecord) -> str:
    """What the short tables leave out, in a line."""
    passing = sum(not _telling(check) for check in record.checks)
    return f"{passing} more checks pass, and {len(record.figures)} figures have no limit: --all shows them."


def _telling(check: CheckRecord) -> bool:
    return check.status != "pass" or check.id.startswith("cleat.") or check.id.endswith(ALWAYS_TOLD)


def seat_table(record: ResultRecord) -> Table:
    """What is done to the seat."""
    seat = record.seat
    rows = [("seat travel", signed(seat.travel, "mm"), seat_move(seat.travel))]
    if seat.holes is not None:
        rows.append(
            (
                "holes",
                f"{abs(seat.holes)}",
                "forward" if seat.holes > 0 else "rearward" if seat.holes else "as found",
            )
        )
    rows.append(
        (
            "mounts move",
            f"{signed(seat.dx, 'mm')} / {signed(seat.dz, 'mm')}",
            "x (positive rearward) / z (positive up)",
        )
    )
    for path in INSERTS:
        thick = getattr(record.setup, path)
        if thick:
            rows.append((title_of(path), amount(thick, "mm"), sense_of(path)))
    if record.setup.box_travel:
        rows.append(
            ("pedal box", signed(record.setup.box_travel, "mm"), "positive rearward, toward the driver")
        )
    return Table("Seat", ("what", "value", "meaning"), tuple(rows))


def pedal_table(record: ResultRecord) -> Table:
    """What is done to each pedal, and what follows."""
    rows = tuple(
        (
            name,
            amount(pedal.stand_off, "mm"),
            amount(pedal.longer_arm, "mm"),
            _needed(record, name),
            f"{number(pedal.pad_travel_found, 'mm')} -> {amount(pedal.pad_travel, 'mm')}",
            "-" if pedal.ratio_mean is None else number(pedal.ratio_mean, "ratio"),
            f"{number(pedal.foot_force_factor, 'ratio')} x",
            f"{pedal.foot_at_rest} / {pedal.foot_pressed}",
        )
        for name, pedal in record.pedals.items()
    )
    header = (
        "pedal",
        "stand-off",
        "longer arm",
        "if the seat stays",
        "pad travel",
        "ratio",
        "foot force",
        "foot rest / pressed",
    )
    return Table(
        "Pedal extensions (stand-off: toward the driver, square to the pad; longer arm: along the arm; "
        "ratio: mean over the travel)",
        header,
        rows,
    )


def posture_table(record: ResultRecord) -> Table:
    """Joint angles, as found and after."""
    now = [(name.replace("_", " "), number(value, "deg")) for name, value in record.angles.items()]
    if record.as_found is None:
        return Table("Joint angles, deg", ("angle", "now"), tuple(now))
    before = [number(value, "deg") for value in record.as_found.angles.values()]
    rows = tuple((name, was, value) for (name, value), was in zip(now, before, strict=True))
    return Table("Joint angles, deg", ("angle", "as found", "after"), rows)


def checks_table(title: str, checks: list[CheckRecord]) -> Table:
    """Checks, worst first."""
    rows = tuple(
        (
            f"{MARKS[check.status]} {check.status}",
            check.label,
            amount(check.value, check.unit),
            _allowed(check),
            "-" if check.margin is None else signed(check.margin, check.unit),
            check.id,
        )
        for check in checks
    )
    return Table(title, ("status", "what", "value", "allowed", "margin", "id"), rows)


def remedies_table(checks: list[CheckRecord]) -> Table:
    """What would mend what does not pass, with the source of the limit."""
    open_checks = [check for check in checks if check.status in ("fail", "advise", "not assessed")]
    rows = tuple((check.id, check.remedy, check.source) for check in open_checks)
    return Table("What would mend it", ("id", "remedy", "limit from"), rows)


def figures_table(figures: Sequence[FigureRecord]) -> Table:
    """What was measured and no limit bounds."""
    rows = tuple((f.label, amount(f.value, f.unit), f.id) for f in figures)
    return Table("For information: no limit in the chosen sets", ("what", "value", "id"), rows)


def strap_angles_table(record: ResultRecord) -> Table:
    """The strap angles that no limit bounds."""
    return figures_table([figure for figure in record.figures if figure.id.endswith(STRAP_ANGLES)])


def checklist_table(record: ResultRecord) -> Table:
    """Rules that geometry cannot judge."""
    rows = tuple((f"[ ] {tick.text}", tick.source) for tick in record.checklist)
    return Table("To be ticked by hand: geometry cannot judge these", ("rule", "from"), rows)


def _allowed(check: CheckRecord) -> str:
    must = span(check.low, check.high, check.unit)
    should = span(check.recommended_low, check.recommended_high, check.unit)
    if must == "-":
        return "-" if should == "-" else f"advised {should}"
    return must if should == "-" else f"{must} (advised {should})"


def _needed(record: ResultRecord, name: str) -> str:
    needed = record.pedals[name].needed_with_seat_as_found
    if needed is None:
        return "-"
    if needed.too_near:
        return "none: too near"
    total = amount(needed.stand_off + needed.longer_arm, "mm")
    return total if needed.enough else f"{total}, not enough"


def heading(record: ResultRecord) -> str:
    """What was calculated, how it came out, and what is odd about the body, a line each."""
    counts = {status: sum(check.status == status for check in record.checks) for status in MARKS}
    said = ", ".join(f"{count} {status}" for status, count in counts.items())
    lines = [f"{record.driver.name} in {record.car.name}; rules: {record.car.rules}", f"checks: {said}"]
    return "\n".join([*lines, *record.driver.flags])
