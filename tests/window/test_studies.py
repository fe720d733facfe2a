"""Search, trade map, certainty, one car for all and who fits: asked for and tried as a user does."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPoint, Qt, QUrl
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QComboBox, QPushButton, QWidget

from fitcalc.documents.samples import sample_path
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.shared import QUICK, share
from fitcalc.fit.variables import variables_for
from fitcalc.present.chart import Axis, Chart, Spot, even_ticks, row_axis
from fitcalc.present.picture import Area, Line
from fitcalc.present.shared_car_record import shared_car_record
from fitcalc.present.shared_car_tables import shared_car_heading
from fitcalc.present.strap_record import straps_record
from fitcalc.present.strap_tables import shared_table, strap_heading
from fitcalc.present.tables import Table
from fitcalc.window.findings.model import FINDING
from fitcalc.window.rework.spans import control_at
from fitcalc.window.shown import Shown
from fitcalc.window.studies.desk import CERTAINTY, COVERAGE, SEARCH, SHARED, STRAPS, TRADE
from fitcalc.window.studies.plot import Plot
from fitcalc.window.studies.study import Study, Trial, trade_study
from fitcalc.window.studies.units import chart_in, table_in
from fitcalc.window.studies.words import tables_text

DIRECT = Qt.FindChildOption.FindDirectChildrenOnly
PAIR = ("seat_travel", "brake.stand_off")


@pytest.fixture
def study(window, qtbot):
    """The window of a study, asked for from the menu."""

    def asked(action, title):
        window.menus.actions[action].trigger()
        assert window.status.cancel.isVisible()
        qtbot.waitUntil(lambda: title in window.desk.open and not window.jobs.is_busy, timeout=120_000)
        return window.desk.open[title]

    return asked


def test_the_search_offers_reworks_and_one_is_tried_as_one_step(window, session, study, qtbot):
    shown = study("search_rework", SEARCH)
    assert "least work that passes" in shown.heading.text()
    assert shown.trials.count() > 1
    shown.trials.setCurrentIndex(1)
    qtbot.mouseClick(shown.try_it, Qt.MouseButton.LeftButton)
    assert session.undo_stack.count() == 1
    assert session.work.setup == shown._study.trials[1].setups[0]
    assert shown.stale.isVisibleTo(shown)


@pytest.mark.parametrize(("action", "title"), [("search_rework", SEARCH), ("trade_map", TRADE)])
def test_no_part_of_a_study_lies_over_another(study, action, title):
    parts = [each for each in study(action, title).findChildren(QWidget, options=DIRECT) if each.isVisible()]
    over = [(a, b) for a, b in combinations(parts, 2) if a.geometry().intersects(b.geometry())]
    assert len(parts) > 3
    assert over == []


def test_a_place_on_the_trade_map_is_tried_by_a_click(window, session, study, qtbot):
    shown = study("trade_map", TRADE)
    plot = shown.findChild(Plot)
    place = plot.frame.point((43.0, 30.2)).toPoint()
    qtbot.mouseClick(plot, Qt.MouseButton.LeftButton, pos=place)
    setup = session.work.setup
    assert setup.seat_travel == 40.0
    assert setup.brake.stand_off == pytest.approx(30.0, abs=1.0)
    assert session.undo_stack.count() == 1
    qtbot.waitUntil(lambda: not window.jobs.is_busy, timeout=60_000)
    chosen = [mark for mark in shown.findChild(Plot).chart.marks if getattr(mark, "text", "") == "chosen"]
    assert chosen[0].at == (40.0, setup.brake.stand_off)


def test_certainty_stands_beside_the_findings_until_the_work_changes(window, session, study, qtbot):
    study("certainty", CERTAINTY)
    rows = range(window.findings.model.rowCount())

    def told():
        findings = (window.findings.model.index(row).data(FINDING) for row in rows)
        return sum("passes with" in each.figures for each in findings)

    qtbot.waitUntil(lambda: told() > 10)
    session.edit("setup.recline", 2.0, "recline")
    session.finish_evaluation()
    window.findings.refresh()
    assert told() == 0


def test_a_measurement_to_take_again_is_gone_to(window, session, study):
    shown = study("certainty", CERTAINTY)
    path, title = shown._study.again[0]
    assert title in shown.tables.toPlainText()
    shown.tables.anchorClicked.emit(QUrl(f"measure:{path}"))
    assert path in window.focusWidget().ref


def test_who_fits_is_told_with_pictures(study):
    shown = study("coverage", COVERAGE)
    assert "of women fit" in shown.heading.text()
    assert len(shown.findChildren(Plot)) == len(shown._study.charts) > 1


def test_drivers_of_one_car_may_bolt_pads_of_their_own_on(window, study, qtbot):
    window.filing.open(sample_path("otto"))
    shown = study("share_car", SHARED)
    assert "brake pad stood off" not in shown.heading.text()
    qtbot.mouseClick(shown.pads, Qt.MouseButton.LeftButton, pos=QPoint(8, shown.pads.height() // 2))
    qtbot.waitUntil(lambda: not window.jobs.is_busy, timeout=120_000)
    assert shown.pads.isChecked()
    assert "brake pad stood off" in shown.heading.text()
    record = shared_car_record(
        window.session.work.car.document,
        [each.driver.document for each in window.session.work.occupants],
        share(
            window.session.work.car.document,
            [each.driver.document for each in window.session.work.occupants],
            quick=(*QUICK, "clutch.stand_off", "brake.stand_off", "throttle.stand_off"),
        ),
    )
    assert shown.heading.text() == shared_car_heading(record)


def test_straps_are_told_for_every_driver_with_slots_for_all(window, session, study):
    window.filing.open(sample_path("otto"))
    shown = study("straps", STRAPS)
    record = straps_record(
        [
            evaluate(session.work.car.document, each.driver.document, each.setup.document)
            for each in session.work.occupants
        ]
    )
    assert shown.heading.text() == strap_heading(record)
    assert shared_table(record).title in shown.tables.toPlainText()


def test_one_car_for_all_is_offered_where_there_are_several(window):
    assert not window.menus.actions["share_car"].isEnabled()
    window.filing.open(sample_path("ines"))
    assert window.menus.actions["share_car"].isEnabled()


def test_a_study_that_is_called_off_opens_nothing(window, session):
    window.menus.actions["search_rework"].trigger()
    window.status.cancel.click()
    window.jobs.wait()
    assert window.desk.open == {}


def test_a_proposal_for_all_drivers_is_one_step(window, session, qtbot):
    window.filing.open(sample_path("ines"))
    count, setups = session.undo_stack.count(), {}
    for place, travel in ((0, 20.0), (1, 40.0)):
        setups[place] = type(session.work.setup)(seat_travel=travel)
    found = Study("told", (), trials=(Trial("all", setups),))
    window.desk._show(SHARED, lambda *_: found, found, session.work)
    qtbot.mouseClick(window.desk.open[SHARED].try_it, Qt.MouseButton.LeftButton)
    assert [each.setup.document.seat_travel for each in session.work.occupants] == [20.0, 40.0]
    assert session.undo_stack.count() == count + 1


def test_every_control_of_a_study_has_a_name(window, session):
    found = Study("told", (), trials=(Trial("one", {0: session.work.setup}),), pairs=(PAIR, PAIR[::-1]))
    window.desk._show(SEARCH, lambda *_: found, found, session.work)
    shown = window.desk.open[SEARCH]
    controls = [*shown.findChildren(QComboBox), *shown.findChildren(QPushButton), shown.tables, shown.charts]
    names = [QAccessible.queryAccessibleInterface(each).text(QAccessible.Text.Name) for each in controls]
    assert all(names)


CHART = Chart(
    "a chart",
    Axis("x, mm", 0.0, 100.0, even_ticks(0.0, 100.0)),
    Axis("y, mm", 0.0, 50.0, even_ticks(0.0, 50.0)),
    (
        Area("area", "pass", "", ((0.0, 0.0), (50.0, 0.0), (50.0, 25.0))),
        Line("line", "outline", "", ((0.0, 0.0), (100.0, 50.0))),
        Spot("spot", "rework", "", (50.0, 25.0), "dot", "here"),
    ),
)


@pytest.fixture
def plot(window, qtbot):
    made = Plot(CHART, window.look, window, can_choose=True)
    made.resize(500, 400)
    return made


def test_the_keyboard_chooses_a_place_too(plot, qtbot):
    places = []
    plot.chosen.connect(lambda x, y: places.append((x, y)))
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Up, Qt.Key.Key_Return):
        qtbot.keyClick(plot, key)
    assert places == [(pytest.approx(50.0 + 100.0 / 60), pytest.approx(25.0 + 50.0 / 60))]


def test_a_click_and_its_place_are_each_other_s_inverse(plot):
    for place in ((0.0, 0.0), (12.5, 40.0), (100.0, 50.0)):
        assert plot.frame.place(plot.frame.point(place)) == pytest.approx(place)


def test_marks_are_drawn_in_their_colours(plot):
    image = plot.grab().toImage()
    at = plot.frame.point((50.0, 25.0)).toPoint()
    assert image.pixelColor(at).name() == "#00609a"


def test_rows_are_never_crushed(window):
    chart = Chart("rows", CHART.x, row_axis([f"row {at}" for at in range(28)]), ())
    plot = Plot(chart, window.look, window)
    assert plot.minimumSizeHint().height() >= 28 * plot.fontMetrics().height()


def test_words_of_tables_can_t_be_read_as_tags(window):
    text = tables_text([Table("<b>", ("<i>",), (("<script>",),))], [], window.look.colours)
    assert "<script>" not in text


def test_any_two_changes_of_the_car_may_be_mapped_and_tried(session, window):
    car = session.work.car.document
    paths = [each.path for each in variables_for(car)]
    assert len(paths) > 5
    assert all(control_at(car, f"setup.{path}").ref == f"setup.{path}" for path in paths)
    pairs = trade_study(session.work, "", (paths[1], paths[2]), lambda done: True).pairs
    assert len(set(pairs)) == len(pairs) >= len(paths) * (len(paths) - 1) / 2


def test_a_proposal_for_other_drivers_is_refused_in_words(window, session, qtbot):
    found = Study("told", (), trials=(Trial("one", {0: type(session.work.setup)(seat_travel=20.0)}),))
    window.desk._show(SEARCH, lambda *_: found, found, session.work)
    window.filing.open(sample_path("ines"))
    qtbot.mouseClick(window.desk.open[SEARCH].try_it, Qt.MouseButton.LeftButton)
    assert "work it out again" in window.notice.words.text()
    assert all(each.setup.document.seat_travel == 0.0 for each in session.work.occupants)


def test_inches_turn_axes_and_words_and_leave_places(plot, window, session):
    """254 mm wide is 10 in: a tick stands at each whole inch, at its place in mm."""
    axis = Axis("seat, mm (forward)", 0.0, 254.0, even_ticks(0.0, 254.0, 12), unit="mm")
    chart = Chart(
        "a chart", axis, row_axis(["gap, 10 to 25.4 mm"]), CHART.marks, notes=("at least 50.8 mm.",)
    )
    shown = chart_in(chart, Shown(inches=True))
    assert shown.x.label == "seat, in (forward)"
    assert [tick.text for tick in shown.x.ticks] == [str(inch) for inch in range(11)]
    assert [tick.at for tick in shown.x.ticks] == pytest.approx([25.4 * inch for inch in range(11)])
    assert (shown.y.ticks[0].text, shown.notes) == ("gap, 0.39 to 1.00 in", ("at least 2.00 in.",))
    assert (shown.x.low, shown.x.high, shown.marks) == (0.0, 254.0, CHART.marks)
    assert chart_in(chart, Shown()) is chart


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("58 mm \N{PLUS-MINUS SIGN}1", "2.28 in \N{PLUS-MINUS SIGN}0.04"),
        ("254 mm (127.0)", "10.00 in (5.00)"),
        ("25.4 mm (90 % interval)", "1.00 in (90 % interval)"),
        ("-25.4 to 25.4 mm", "-1.00 to 1.00 in"),
        ("110.0 to 135.0 deg", "110.0 to 135.0 deg"),
        ("0.2 deg per mm", "0.2 deg per mm"),
    ],
)
def test_lengths_in_words_are_turned_into_inches(text, inches):
    assert Shown(inches=True).words(text) == inches
    assert Shown().words(text) == text


def test_columns_of_bare_lengths_are_turned_into_inches():
    table = Table(
        "Slots, mm", ("strap", "x", "turn"), (("lap 2", "254 (127 to 381)", "12 deg"),), lengths=(1,)
    )
    turned = table_in(table, Shown(inches=True))
    assert (turned.title, turned.rows) == ("Slots, in", (("lap 2", "10.00 (5.00 to 15.00)", "12 deg"),))


def test_a_study_follows_the_units(window, session):
    axis = Axis("seat, mm", 0.0, 254.0, even_ticks(0.0, 254.0), unit="mm")
    chart = Chart("a chart", axis, CHART.y, CHART.marks)
    found = Study("25.4 mm too low", (Table("a table", ("what",), (("254 mm",),)),), (chart,))
    window.desk._show(SEARCH, lambda *_: found, found, session.work)
    shown = window.desk.open[SEARCH]
    session.prefer(inches=True)
    assert shown.heading.text() == "1.00 in too low"
    assert "10.00 in" in shown.tables.toPlainText()
    assert [each.chart.x.label for each in shown.charts.widget().findChildren(Plot)] == ["seat, in"]
    session.prefer(inches=False)
    assert shown.heading.text() == "25.4 mm too low"


def test_a_place_on_a_map_in_inches_is_the_same_place(window, session, study, qtbot):
    session.prefer(inches=True)
    shown = study("trade_map", TRADE)
    plot = shown.findChild(Plot)
    assert ", in (" in plot.chart.x.label
    qtbot.mouseClick(plot, Qt.MouseButton.LeftButton, pos=plot.frame.point((43.0, 30.2)).toPoint())
    assert session.work.setup.seat_travel == 40.0
    assert session.work.setup.brake.stand_off == pytest.approx(30.0, abs=1.0)
