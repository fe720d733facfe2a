"""The worksheet: what it asks for, and what comes back from it."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook
from sheet_jobs import car_and_driver

from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.edit import value_at, with_value
from fitcalc.errors import InputError
from fitcalc.paper.worksheet_file import (
    Entered,
    applied,
    changes_table,
    preview,
    read_worksheet,
    worksheet_csv,
    worksheet_xlsx,
)
from fitcalc.present.worksheet_rows import worksheet

CAR, DRIVER = car_and_driver("hillclimb", "ines")
ARM = "pedals.brake.arm"


def paths(entries):
    return [row.path for entry in entries for row in entry.rows]


def filled(tmp_path, values, mark=",", entries=None):
    lines = list(
        csv.reader(io.StringIO(worksheet_csv(entries or worksheet(CAR, DRIVER, True)).decode("utf-8-sig")))
    )
    for line in lines[1:]:
        entered = values.get(line[1], "")
        line[-1], unit = entered if isinstance(entered, tuple) else (entered, line[3])
        line[3] = unit
    path = tmp_path / "worksheet.csv"
    text = io.StringIO()
    csv.writer(text, delimiter=mark).writerows(lines)
    path.write_text(text.getvalue(), encoding="utf-8")
    return path


def test_what_is_measured_is_not_asked_again():
    asked = paths(worksheet(CAR, DRIVER))
    assert "measurements.buttock_knee" in asked
    assert ARM not in asked
    assert "seat.kind" not in asked
    assert all(value_of(path) is None for path in asked)


def value_of(path):
    document = DRIVER if path.partition(".")[0] in type(DRIVER).model_fields else CAR
    try:
        return value_at(document, path)
    except InputError:
        return None


def test_an_empty_worksheet_asks_for_everything_that_a_file_must_have():
    asked = paths(worksheet(None, None))
    for path in (
        "reference.wheelbase",
        "seat.junction.x",
        "pedals.clutch.arm",
        "measurements.stature",
        "seat.mounts.3.z",
        "seat.kind",
        "pedals.brake.hinge",
        "rails.kind",
        "name",
        "sex",
    ):
        assert path in asked
    rows = [(row.document, row.path) for entry in worksheet(None, None) for row in entry.rows]
    assert len(rows) == len(set(rows))


def test_a_measurement_taken_away_is_asked_for():
    less = with_value(CAR, "footwell.bulkhead", None)
    assert set(paths(worksheet(less, DRIVER))) - set(paths(worksheet(CAR, DRIVER))) == {"footwell.bulkhead"}


@pytest.mark.parametrize("mark", [",", ";"])
@pytest.mark.parametrize(("written", "value"), [("271.5", 271.5), ("271,5", 271.5), (" 271 ", 271.0)])
def test_numbers_come_back_as_a_person_writes_them(tmp_path, mark, written, value):
    (entered,) = read_worksheet(filled(tmp_path, {ARM: written}, mark))
    assert (entered.document, entered.path, entered.value) == ("car", ARM, value)


@pytest.mark.parametrize(
    ("written", "value"),
    [
        (("10 5/8", "in"), 269.875),
        (("10.625 in", "mm"), 269.875),
        (("27.1", "cm"), 271.0),
        (('10 5/8"', ""), 269.875),
    ],
)
def test_inches_come_back_as_mm_by_the_unit_cell_or_the_number_s_own(tmp_path, written, value):
    (entered,) = read_worksheet(filled(tmp_path, {ARM: written}))
    assert entered.value == pytest.approx(value)


@pytest.mark.parametrize(
    ("path", "written", "value"),
    [
        ("seat.kind", "Bead", "bead"),
        ("pedals.brake.bar.joint", "WELDED", "welded"),
        ("pedals.brake.bar.shape", " square  tube ", "square tube"),
        ("seat.slots.0.strap", "shoulder right", "shoulder_right"),
        ("name", "The blue car", "The blue car"),
    ],
)
def test_choices_and_words_come_back_and_go_into_the_file(tmp_path, path, written, value):
    entered = read_worksheet(filled(tmp_path, {path: written}))
    (change,) = preview([each for each in entered if each.document == "car"], "car", CAR)
    assert (change.path, change.new) == (path, value)
    assert value_at(applied([change], CAR), path) == value


def test_a_choice_of_numbers_comes_back_as_a_number(tmp_path):
    (entered,) = read_worksheet(filled(tmp_path, {"harness.points": "5"}))
    assert entered.value == 5


def test_the_preview_says_from_what_to_what():
    changes = preview([Entered("car", ARM, 271.0, 2), Entered("car", "seat.kind", "bead", 3)], "car", CAR)
    rows = changes_table("car", changes).rows
    assert [(row[1], row[2], row[3]) for row in rows] == [
        (ARM, "269 mm", "271 mm"),
        ("seat.kind", '"shell"', '"bead"'),
    ]


def test_a_workbook_offers_units_and_choices():
    book = load_workbook(io.BytesIO(worksheet_xlsx(worksheet(CAR, DRIVER, True), {})))
    offered = {each.formula1 for each in book["measurements"].data_validations.dataValidation}
    assert {'"shell,bead"', '"mm,cm,m,in"'} <= offered


def test_a_workbook_comes_back(tmp_path):
    book = load_workbook(io.BytesIO(worksheet_xlsx(worksheet(CAR, DRIVER), {})))
    for row in book["measurements"].iter_rows(min_row=2):
        if row[1].value == "measurements.buttock_knee":
            row[9].value = 577
    book.save(tmp_path / "filled.xlsx")
    (entered,) = read_worksheet(tmp_path / "filled.xlsx")
    assert (entered.path, entered.value) == ("measurements.buttock_knee", 577.0)


def test_preview_shows_old_and_new_and_leaves_the_document_alone():
    changes = preview(
        [Entered("car", ARM, 271.0, 2), Entered("car", "seat.mass", CAR.seat.mass, 3)], "car", CAR
    )
    assert [(change.path, change.old, change.new) for change in changes] == [(ARM, 269.0, 271.0)]
    assert applied(changes, CAR).pedals.brake.arm == 271.0
    assert CAR.pedals.brake.arm == 269.0


def test_a_section_that_was_not_there_is_made():
    rest = [Entered("car", "footwell.heel_rest.x", 300.0, 2), Entered("car", "footwell.heel_rest.z", 5.0, 3)]
    changed = applied(preview(rest, "car", CAR), CAR)
    assert (changed.footwell.heel_rest.x, changed.footwell.heel_rest.z) == (300.0, 5.0)


def test_nothing_entered_changes_nothing(tmp_path):
    entered = read_worksheet(filled(tmp_path, {}))
    assert entered == ()
    assert applied(preview(entered, "car", CAR), CAR) == CAR


@pytest.mark.parametrize(
    ("values", "wanted"),
    [
        ({ARM: "long"}, "must be a number in mm"),
        ({ARM: "nan"}, "must be a number"),
        ({ARM: "1e400"}, "must be a number"),
        ({ARM: ("10", "stone")}, "unit must be one of mm, cm, m, in"),
        ({ARM: "3 kg"}, "must be a number in mm"),
        ({"seat.kind": "shel"}, "must be one of shell, bead; perhaps shell is meant"),
        ({"harness.points": "8"}, "must be one of 4, 5, 6, 7"),
    ],
)
def test_what_can_t_be_used_is_refused_with_its_line(tmp_path, values, wanted):
    with pytest.raises(InputError, match=wanted) as refused:
        read_worksheet(filled(tmp_path, values))
    assert "line " in str(refused.value)


def test_a_number_out_of_bounds_is_refused_by_its_path():
    with pytest.raises(InputError, match=r"pedals\.brake\.arm"):
        applied(preview([Entered("car", ARM, 26.9, 2)], "car", CAR), CAR)


def test_a_gap_in_a_list_is_refused():
    far = [Entered("car", "seat.mounts.9.x", 900.0, 2)]
    with pytest.raises(InputError, match="in order"):
        applied(preview(far, "car", CAR), CAR)


def test_an_unknown_path_and_a_missing_column_are_refused(tmp_path):
    path = filled(tmp_path, {ARM: "270"})
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace(ARM, "pedals.brake.leg"), encoding="utf-8")
    with pytest.raises(InputError, match=r"pedals\.brake\.leg"):
        read_worksheet(path)
    path.write_text(text.replace("entered", "value"), encoding="utf-8")
    with pytest.raises(InputError, match="entered"):
        read_worksheet(path)


@given(content=st.binary(max_size=400), suffix=st.sampled_from([".csv", ".xlsx"]))
def test_any_file_is_read_or_refused_in_one_sentence(tmp_path_factory, content, suffix):
    path = tmp_path_factory.mktemp("any") / f"sheet{suffix}"
    path.write_bytes(content)
    assert "\n" not in refusal_of(path)


def refusal_of(path):
    try:
        read_worksheet(path)
    except InputError as error:
        return str(error)
    return ""


@pytest.mark.parametrize(("sex", "asked"), [(None, True), ("male", False)])
def test_a_choice_that_was_left_open_is_asked_for(sex, asked):
    driver = Driver(name="Robin", sex=sex, measurements=Measurements(stature=1755.0))
    paths = {row.path for entry in worksheet(None, driver) for row in entry.rows}
    assert ("sex" in paths) is asked
