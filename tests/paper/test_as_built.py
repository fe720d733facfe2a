"""As built: what was made and read against plan and prediction, its files and pages, and the history."""

import csv

import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook
from sheet_jobs import DATE, fitted_job
from test_pages import PAPERS, overlaps, words_on

from fitcalc.documents.as_built import Build, History, Reading, Readings, require_driver
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load, save
from fitcalc.errors import InputError
from fitcalc.fit.evaluate import evaluate
from fitcalc.paper.as_built_file import read_as_built
from fitcalc.paper.as_built_pages import as_built_pages
from fitcalc.paper.as_built_set import write_as_built
from fitcalc.paper.frame import About
from fitcalc.paper.page import A4
from fitcalc.present.as_built_comparison import built_record, with_history, with_predictions
from fitcalc.present.as_built_entry import Typed, entered
from fitcalc.present.as_built_record import BuildRecord, BuiltRecord
from fitcalc.present.as_built_rows import built_rows
from fitcalc.present.as_built_tables import built_tables, history_table
from fitcalc.present.as_built_wanted import wanted_made

PLANNED = fitted_job("hillclimb", "robin").after
HELMET, KNEE = "head.hoop_line", "posture.knee_released.brake"


def build(figure, value, made=PLANNED.setup, **more):
    return Build(date=DATE, car="car", made=made, readings=(Reading(figure=figure, value=value, **more),))


def typed(**values):
    return entered(None, [Typed(key.replace("__", "."), text) for key, text in values.items()], PLANNED)


def predicted(figure):
    return float(PLANNED.check(figure).figure.value[0])


def test_difference_is_measured_less_predicted():
    (row,) = built_rows(build(HELMET, predicted(HELMET) + 3.0), PLANNED)
    assert row.difference == pytest.approx(3.0)
    assert row.expected is None


def test_the_verdict_is_on_what_was_measured():
    (good,) = built_rows(build(HELMET, 500.0), PLANNED)
    (bad,) = built_rows(build(HELMET, -500.0), PLANNED)
    assert (good.status, bad.status) == ("pass", "fail")


@pytest.mark.parametrize(("value", "expected"), [(50.0, True), (41.5, True), (38.5, False), (61.0, False)])
def test_the_interval_and_the_tool_say_whether_a_reading_agrees(value, expected):
    (row,) = built_rows(build(HELMET, value, error=1.0), PLANNED, {HELMET: (42.0, 59.0)})
    assert row.expected is expected


def test_a_figure_that_is_not_there_has_no_prediction():
    (row,) = built_rows(build("no.such.figure", 1.0), PLANNED)
    assert (row.predicted, row.difference, row.status) == (None, None, None)


def test_a_bar_s_length_sets_the_stand_off_less_its_lap():
    bar = next(each for each in wanted_made(PLANNED) if each.key == "made.brake.stand_off.length")
    longer = entered(None, [Typed(bar.key, f"{bar.expected + 3.0}")], PLANNED)
    assert longer.made.brake.stand_off == pytest.approx(PLANNED.setup.brake.stand_off + 3.0)
    assert longer.bars[0].length == pytest.approx(bar.expected + 3.0)


def test_what_is_not_entered_is_as_planned():
    said = entered(Readings(made=Setup(seat_travel=57.0)), [], PLANNED)
    assert said.made.seat_travel == 57.0
    assert said.made.brake == PLANNED.setup.brake


def test_a_reading_in_inches_and_one_by_a_joint_s_name():
    said = typed(head__hoop_line="2 1/2 in", recline="41")
    assert [each.value for each in said.readings] == [pytest.approx(63.5), 41.0]
    assert said.readings[1].tool == "angle finder"


@pytest.mark.parametrize(
    ("values", "wanted"),
    [
        ({"head__hoop_lin": "60"}, "perhaps head.hoop_line is meant"),
        ({"head__hoop_line": "sixty"}, "must be a number in mm"),
        ({"head__hoop_line": "60 kg"}, "must be a number in mm"),
        ({"made__seat_travle": "3"}, "perhaps made.seat_travel is meant"),
        ({"made__seat_travel": "900"}, "seat_travel"),
        ({"made__brake__stand_off__length": "5"}, "lies on the old arm"),
        ({"made__handbrake__stand_off__length": "150"}, "not a bar of this car"),
    ],
)
def test_what_can_t_be_entered_is_refused_in_one_sentence(values, wanted):
    with pytest.raises(InputError, match=wanted):
        typed(**values)


@given(
    key=st.sampled_from([HELMET, "recline", "made.seat_travel", "made.brake.stand_off.length"]),
    text=st.text(max_size=20),
)
def test_anything_typed_is_taken_or_refused_in_one_sentence(key, text):
    assert "\n" not in refusal_of(Typed(key, text, error=text))


def refusal_of(typed):
    try:
        entered(None, [typed], PLANNED)
    except InputError as error:
        return str(error)
    return ""


def test_a_figure_may_stand_once():
    with pytest.raises(InputError, match="twice"):
        entered(Readings(readings=(Reading(figure=HELMET, value=60.0),)), [Typed(HELMET, "61")], PLANNED)


@pytest.fixture(scope="module")
def blank():
    return built_record(Build(date=DATE, car="car", made=PLANNED.setup), PLANNED, PLANNED)


@pytest.fixture(scope="module")
def filled():
    said = typed(posture__knee_released__brake="126", head__hoop_line="60", made__seat_travel="58")
    one = Build(date=DATE, car="car", made=said.made, readings=said.readings)
    made = evaluate(PLANNED.car, PLANNED.driver, said.made)
    record = built_record(one, PLANNED, made)
    return with_history(record, History(driver="Robin").with_build(with_predictions(one, record)))


def test_the_prediction_is_for_the_rework_as_made(filled):
    made = evaluate(PLANNED.car, PLANNED.driver, PLANNED.setup.model_copy(update={"seat_travel": 58.0}))
    knee = next(row for row in filled.readings if row.figure == KNEE)
    assert knee.predicted == float(made.check(KNEE).figure.value[0])
    assert knee.predicted != predicted(KNEE)


def test_what_was_made_is_held_against_the_plan(filled):
    (seat,) = [row for row in filled.work if row.key == "made.seat_travel"]
    assert (seat.planned, seat.made, seat.difference, seat.within) == (60.0, 58.0, -2.0, False)


def test_an_explanation_is_never_told_as_a_fact(filled):
    words = " ".join(table.title for table in built_tables(filled))
    assert "What would explain the differences (arithmetic, not a finding)" in words
    assert filled.explanation.would_explain


def test_the_history_keeps_value_and_prediction(filled):
    assert filled.history[0].readings[HELMET] == 60.0
    assert filled.history[0].predicted[HELMET] == pytest.approx(
        next(row.predicted for row in filled.readings if row.figure == HELMET), abs=0.005
    )


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
@pytest.mark.parametrize("kind", ["blank", "filled"])
def test_no_words_overlap_or_leave_the_page(request, paper, kind):
    pages = as_built_pages(request.getfixturevalue(kind), About("who", DATE, "0123"), paper)
    assert [pair for page in pages for pair in overlaps(page)] == []
    assert all(6.0 < words.at[0] < paper.width - 6.0 for page in pages for words in words_on(page))


def test_the_page_asks_for_everything_once(blank):
    said = [
        words.text for page in as_built_pages(blank, About("who", DATE, ""), A4) for words in words_on(page)
    ]
    assert sum(text == "rule \N{PLUS-MINUS SIGN}0.5" for text in said) == sum(
        row.key.endswith(".length") for row in blank.wanted
    )
    assert len({row.key for row in blank.wanted}) == len(blank.wanted)


@pytest.mark.parametrize("suffix", ["csv", "xlsx"])
def test_the_sheet_comes_back_with_its_unit_cell(tmp_path, blank, suffix):
    write_as_built(blank, A4, tmp_path)
    path = tmp_path / f"as_built.{suffix}"
    (fill_csv if suffix == "csv" else fill_xlsx)(
        path, HELMET, {"entered": "2.5", "unit": "in", "error": "0.1"}
    )
    (given,) = entered(None, read_as_built(path), PLANNED).readings
    assert given.value == pytest.approx(63.5)
    assert given.error == pytest.approx(2.54)


def test_what_was_set_and_cut_comes_back_from_the_sheet_too(tmp_path, blank):
    write_as_built(blank, A4, tmp_path)
    path = tmp_path / "as_built.csv"
    fill_csv(path, "made.seat_travel", {"entered": "2.25", "unit": "in"})
    fill_csv(path, "made.brake.stand_off.length", {"entered": "120,5"})
    said = entered(None, read_as_built(path), PLANNED)
    assert said.made.seat_travel == pytest.approx(57.15)
    assert said.bars[0].length == 120.5


def fill_csv(path, key, cells):
    lines = list(csv.reader(path.read_text(encoding="utf-8-sig").splitlines()))
    line = next(line for line in lines if line[0] == key)
    for name, cell in cells.items():
        line[lines[0].index(name)] = cell
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(lines)


def fill_xlsx(path, key, cells):
    book = load_workbook(path)
    header = [cell.value for cell in book["as built"][1]]
    row = next(row for row in book["as built"].iter_rows(min_row=2) if row[0].value == key)
    for name, cell in cells.items():
        row[header.index(name)].value = float(cell) if name != "unit" else cell
    book.save(path)


def test_the_history_keeps_its_order_and_its_comments_on_disk(tmp_path):
    path = tmp_path / "built.toml"
    later = Build(date="2026-06-30", car="car", made=Setup(seat_travel=20.0))
    save(History(driver="Robin").with_build(later), path)
    path.write_text("# in the shed\n" + path.read_text(encoding="utf-8"), encoding="utf-8")
    save(load(History, path).with_build(build(HELMET, 50.0)), path)
    again = load(History, path)
    assert [each.date for each in again.builds] == [DATE, "2026-06-30"]
    assert path.read_text(encoding="utf-8").startswith("# in the shed\n")
    assert again.with_build(later) == again


@pytest.mark.parametrize("date", ["31.5.26", "2026-02-30", ""])
def test_a_day_that_is_none_is_refused_by_its_path(tmp_path, date):
    path = tmp_path / "built.toml"
    path.write_text(f'driver = "R"\n[[builds]]\ndate = "{date}"\ncar = "c"\n', encoding="utf-8")
    with pytest.raises(InputError, match=r"builds\.0\.date"):
        load(History, path)


def test_the_history_has_a_dash_where_a_build_was_not_measured():
    def build(date, readings, predicted):
        return BuildRecord(
            date=date,
            car="Test car",
            documents="",
            note="",
            made=Setup(),
            readings=readings,
            predicted=predicted,
        )

    record = BuiltRecord(
        date="2026-05-31", car="Test car", driver="Robin", rules="club", documents="", planned=Setup(), made=Setup(),
        wanted=[], work=[], readings=[], explanation=None, cautions=[],
        history=[build("2026-05-30", {"recline": 41.0}, {}), build("2026-05-31", {"hip": 95.0}, {"hip": 96.04})],
    )  # fmt: skip
    assert history_table(record).rows == (("recline", "41", "-"), ("hip", "-", "95 (96.0)"))


def test_a_history_is_its_own_driver_s():
    history = History(driver="Robin")
    require_driver(history, "Robin", "robin.toml")
    with pytest.raises(InputError, match="is the history of Robin, not of Otto"):
        require_driver(history, "Otto", "robin.toml")
