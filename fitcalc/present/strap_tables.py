"""The straps' record as tables for the bench: how they run, where anchors may be, what to cut and where."""

from collections.abc import Iterable, Iterator, Sequence

from fitcalc.present.strap_record import (
    Ranged,
    SharedRecord,
    SlotRecord,
    StrapRecord,
    StrapsOfDriver,
    StrapsRecord,
    WindowRecord,
)
from fitcalc.present.summary import checks_table, remedies_table
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, number, seat_move

WHERE = {"shoulder": "up the back", "crotch": "along the cushion", "lap": "from the pelvis' middle"}
WAYS = {"z": ("up", "down"), "x": ("rearward", "forward")}
NOTICED = 0.5
"""Moves smaller than this are none, mm."""


def strap_heading(record: StrapsRecord) -> str:
    """What was calculated."""
    moves = [f"- {each.driver}: {seat_move(each.setup.seat_travel)}" for each in record.drivers]
    unmeasured = [] if record.drivers[0].straps else ["- no harness in the car file: measure its anchors"]
    marking = (
        "Mark slots with the driver seated in full kit and a string held straight, before anything is cut."
    )
    return "\n".join([f"Straps in {record.car}; rules: {record.rules}", *moves, *unmeasured, marking])


def strap_tables(record: StrapsRecord) -> list[Table]:
    """All tables of the command, in reading order."""
    own = [table for each in record.drivers for table in _of_driver(each)]
    return [*own, drilling_table(record), *([shared_table(record)] if record.shared else [])]


def _of_driver(each: StrapsOfDriver) -> list[Table]:
    broken = [check for check in each.checks if check.status != "pass"]
    return [
        straps_table(each),
        windows_table(each),
        checks_table(f"{each.driver}: strap checks that do not pass", broken),
        remedies_table(broken),
    ]


def straps_table(each: StrapsOfDriver) -> Table:
    """How every strap runs now."""
    header = (
        "strap", "side angle", "plan angle", "length", "spine, rear run, per kN", "deg per mm up",
        "wrap on body", "bend at slot", "edge, per kN", "bend at guide", "shell",
    )  # fmt: skip
    return Table(
        f"{each.driver}: straps as they run (crotch straps from the vertical)",
        header,
        _once(map(_strap, each.straps)),
    )


def _strap(strap: StrapRecord) -> tuple[str, ...]:
    return (
        strap.name,
        amount(strap.side_angle, "deg"),
        amount(strap.plan_angle, "deg"),
        amount(strap.length, "mm"),
        amount(strap.spine_load, "N"),
        f"{-strap.sensitivity:+.2f}",
        amount(strap.body_wrap, "deg"),
        amount(strap.slot_turn, "deg"),
        amount(strap.slot_force, "N"),
        amount(strap.guide_wrap, "deg"),
        strap.shell,
    )


def windows_table(each: StrapsOfDriver) -> Table:
    """Where each anchor may be, limit by limit and for all of them together."""
    header = ("strap", "limit", "", "moves", "from", "to", "is at", "move by", "from source")
    rows = _once(map(_window, each.windows))
    return Table(f"{each.driver}: places of the anchors that pass, mm", header, rows, lengths=(4, 5, 6))


def _window(row: WindowRecord) -> tuple[str, ...]:
    limit = f"{row.rules}: {row.limit}" if row.limit else "ALL TOGETHER"
    holds = "must" if row.holds == "must" else "should"
    places = ("none", "none") if row.empty else (_end(row.low), _end(row.high))
    present = number(row.present, "mm")
    return (row.strap, limit, holds, f"{row.moves}, {row.axis}", *places, present, moved(row), row.source)


def _end(place: float | None) -> str:
    return "open" if place is None else number(place, "mm")


def moved(row: WindowRecord) -> str:
    """How far the present anchor must move, in words."""
    if row.empty:
        return "no place passes"
    if abs(row.move) < NOTICED:
        return "passes"
    positive, negative = WAYS[row.axis]
    return f"{abs(row.move):.0f} mm {positive if row.move > 0 else negative}"


def drilling_table(record: StrapsRecord) -> Table:
    """Before drilling: the slot that leaves each strap straight, for each driver, with its 90 % interval."""
    title = (
        "BEFORE DRILLING: slots in the seat's own frame, from the junction of back and cushion, mm (90 % interval); "
        f"edge radius or bushing {record.least_edge_radius:g} mm at least"
    )
    header = (
        "strap",
        "driver",
        "x rearward",
        "y right",
        "z up",
        "along the shell",
        "length",
        "height",
        "now",
    )
    each_slot = ((slot, each.driver) for each in record.drivers for slot in each.slots)
    ordered = sorted(each_slot, key=lambda row: row[0].strap)
    rows = tuple(_slot(slot, driver) for slot, driver in ordered)
    return Table(title, header, rows, lengths=tuple(range(2, 8)))


def _slot(slot: SlotRecord, driver: str) -> tuple[str, ...]:
    if not slot.needed:
        return (slot.strap, driver, *(("-",) * 6), f"{slot.why_none}: no slot")
    along = f"{_ranged(slot.along)} {WHERE[slot.strap.partition('_')[0]]}"
    sizes = (number(slot.length.value, "mm"), number(slot.height.value, "mm"))
    now = "a slot is there" if slot.cut else "no slot yet"
    out = f"; this one would break out of the shell's edge by {slot.over:.0f} mm" if slot.over > 0.0 else ""
    return (slot.strap, driver, _ranged(slot.x), _ranged(slot.y), _ranged(slot.z), along, *sizes, now + out)


def _ranged(value: Ranged) -> str:
    return f"{number(value.value, 'mm')} ({number(value.low, 'mm')} to {number(value.high, 'mm')})"


def shared_table(record: StrapsRecord) -> Table:
    """One slot for all the drivers, or that there is none."""
    title = f"One slot for all {len(record.drivers)} drivers, mm, bending no strap more than {record.most_turn:g} deg"
    header = ("strap", "one slot", "x", "y", "z", "middle may move", "length", "height", "else")
    return Table(title, header, tuple(map(_shared, record.shared)), lengths=(2, 3, 4, 6, 7))


def _shared(row: SharedRecord) -> tuple[str, ...]:
    place = tuple(number(value, "mm") for value in (row.x, row.y, row.z))
    size = (number(row.length, "mm"), number(row.height, "mm"))
    if row.exists:
        return (row.strap, f"{MARKS['pass']} yes", *place, f"+-{row.play / 2:.0f} mm", *size, "")
    apart = f"the nearest two lie {row.shortfall:.0f} mm apart"
    lacks = f"{apart}: two slots, or one {row.tall:.0f} mm high if the shell bears it"
    return (row.strap, f"{MARKS['fail']} none", "-", "-", "-", "-", "-", "-", lacks)


def _once(rows: Iterable[tuple[str, ...]]) -> tuple[tuple[str, ...], ...]:
    """Left and right that read alike as one row."""
    return tuple(_merged(list(rows)))


def _merged(rows: Sequence[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    known = set(rows)
    for row in rows:
        name, _, side = row[0].rpartition("_")
        twin = {"left": "right", "right": "left"}.get(side)
        if twin is None or (f"{name}_{twin}", *row[1:]) not in known:
            yield row
        elif side == "left":
            yield (f"{name}, each", *row[1:])
