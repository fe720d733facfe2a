"""Tables for a terminal: the telling ones by themselves, everything on request."""

import pytest

from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.rework import fit
from fitcalc.present.record import check_record, fit_record
from fitcalc.present.summary import left_out, seat_table, tables


@pytest.fixture(scope="module")
def pair():
    return load_car(sample_cars()["hillclimb"]), load_driver(sample_drivers()["robin"])


@pytest.fixture(scope="module")
def found(pair):
    return check_record(evaluate(*pair, Setup()))


def ids(shown):
    return {row[-1] for table in shown for row in table.rows}


def test_short_tables_keep_what_does_not_pass_and_every_strap_angle(found):
    shown = ids(tables(found))
    assert shown >= {check.id for check in found.checks if check.status != "pass"}
    assert shown >= {check.id for check in found.checks if check.id.startswith("cleat.")}
    assert shown >= {row.id for row in [*found.checks, *found.figures] if row.id.endswith("e_angle")}


def test_everything_is_shown_on_request(found):
    assert ids(tables(found, everything=True)) >= {row.id for row in [*found.checks, *found.figures]}


def test_what_is_left_out_is_counted(found):
    whole, short = (ids(tables(found, everything)) for everything in (True, False))
    passing = {check.id for check in found.checks} & (whole - short)
    assert left_out(found).startswith(f"{len(passing)} more checks pass")


def test_a_car_as_found_is_told_nothing_about_moving_the_seat(pair, found):
    titles = [[table.title for table in tables(record)] for record in (found, fit_record(fit(*pair)))]
    assert ["Seat" in each for each in titles] == [False, True]


def test_the_pedals_ratio_is_the_one_that_is_checked(found):
    ratio = next(row.value for row in [*found.checks, *found.figures] if row.id == "pedal.brake.ratio")
    table = next(table for table in tables(found) if table.title.startswith("Pedal extensions"))
    brake = next(row for row in table.rows if row[0] == "brake")
    assert brake[table.header.index("ratio")] == f"{ratio:.2f}"


def test_the_seat_s_table_has_holes_and_box_where_the_car_has_them(pair):
    record = fit_record(fit(*pair))
    drilled = [row[0] for row in seat_table(record).rows]
    sliding = record.model_copy(
        update={
            "seat": record.seat.model_copy(update={"holes": None}),
            "setup": record.setup.model_copy(update={"box_travel": -20.0}),
        }
    )
    assert drilled == ["seat travel", "holes", "mounts move"]
    assert seat_table(sliding).rows[-1] == ("pedal box", "-20 mm", "positive rearward, toward the driver")
    assert "holes" not in [row[0] for row in seat_table(sliding).rows]
