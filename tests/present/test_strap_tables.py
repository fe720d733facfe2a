"""The straps' tables: what is said of windows and shared slots."""

import pytest

from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.present.strap_record import SharedRecord, StrapsRecord, WindowRecord, straps_record
from fitcalc.present.strap_tables import (
    drilling_table,
    moved,
    shared_table,
    strap_heading,
    strap_tables,
    straps_table,
)
from tests.checks.cockpits import car

ROW = {
    "strap": "shoulder_left", "limit": "row", "rules": "club", "holds": "must", "moves": "anchor", "axis": "z",
    "low": 500.0, "high": 520.0, "present": 480.0, "move": 20.0, "empty": False, "source": "",
}  # fmt: skip
NONE = SharedRecord(
    strap="shoulder_left", exists=False, x=0, y=0, z=0, play=0, shortfall=22, length=85, height=16, tall=61
)


def record(*drivers, values=()) -> StrapsRecord:
    chassis = car(values) if values else load_car(sample_path("hillclimb"))
    return straps_record([evaluate(chassis, load_driver(sample_path(each))) for each in drivers])


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({}, "20 mm up"),
        ({"move": -7.0}, "7 mm down"),
        ({"axis": "x"}, "20 mm rearward"),
        ({"axis": "x", "move": -20.0}, "20 mm forward"),
        ({"move": 0.0}, "passes"),
        ({"empty": True}, "no place passes"),
    ],
)
def test_moves_are_told_in_words(changes, said):
    assert moved(WindowRecord(**(ROW | changes))) == said


def test_drivers_who_share_no_slot_are_told_so():
    table = shared_table(record("ines").model_copy(update={"shared": [NONE]}))
    assert table.rows[0][1] == "X none"
    assert "22 mm apart" in table.rows[0][-1]
    assert "61 mm high" in table.rows[0][-1]


def test_every_slot_is_given_for_every_driver():
    rows = drilling_table(record("ines", "otto")).rows
    assert len(rows) == 12
    assert all("to" in cell for row in rows for cell in row[2:6])


@pytest.mark.parametrize(("top", "said"), [(900.0, "no slot yet"), (520.0, "passes over the rim: no slot")])
def test_a_back_that_ends_below_the_strap_gets_no_slot(top, said):
    low = {"seat.profile": ((-400.0, 100.0), (0.0, 0.0), (0.4 * top, top)), "seat.slots": ()}
    rows = {row[0]: row for row in drilling_table(record("magnus", values=low)).rows}
    assert rows["shoulder_left"][-1] == said


def test_a_slot_at_the_very_rim_is_told_to_break_out():
    slot = record("otto").drivers[0].slots[0].model_copy(update={"over": 6.0, "cut": False})
    drivers = [record("otto").drivers[0].model_copy(update={"slots": [slot]})]
    table = drilling_table(record("otto").model_copy(update={"drivers": drivers}))
    assert "break out of the shell's edge by 6 mm" in table.rows[0][-1]


def test_a_like_pair_is_one_row():
    assert [row[0] for row in straps_table(record("otto").drivers[0]).rows] == [
        "shoulder, each", "lap, each", "crotch, each",
    ]  # fmt: skip


def test_one_driver_has_no_shared_table():
    assert len(strap_tables(record("otto", "ines"))) == len(strap_tables(record("otto"))) + 5


def test_a_car_without_a_harness_asks_for_it():
    bare = record("otto", values={"harness": None})
    assert "measure its anchors" in strap_heading(bare)
    assert bare.drivers[0].straps == []
