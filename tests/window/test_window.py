import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSlider,
    QAbstractSpinBox,
    QApplication,
    QComboBox,
    QLineEdit,
    QListView,
    QScrollBar,
    QWidget,
)

from fitcalc.checks.check import STATUSES
from fitcalc.documents.store import load_driver, load_setup
from fitcalc.present.picture import Handle
from fitcalc.present.wording import CAUTIONS
from fitcalc.window.colours import DARK, LIGHT, contrast
from fitcalc.window.findings.model import FINDING

CONTROLS = (QAbstractButton, QAbstractSlider, QAbstractSpinBox, QComboBox, QLineEdit, QListView)
GROUNDS = ("paper", "panel", "raised")
INKS = ("ink", "quiet", "estimated", "passed", "advised", "failed", "unassessed", "accent")


def boxes(window):
    """The combo boxes that are always in sight."""
    return (window.people.driver, window.people.over, window.findings.rules, window.findings.compared)


def finding(window, row):
    return window.findings.model.index(row).data(FINDING)


def lacking_rows(window, part):
    """Rows of the findings that could not be made for want of a part."""
    return [row for row in range(window.findings.model.rowCount()) if part in finding(window, row).missing]


def grip(window, ref):
    """Where a grip lies in the sketch's window."""
    handle = next(each for each in window.centre.sketch.picture.about(ref) if isinstance(each, Handle))
    return window.centre.sketch.mapFromScene(*handle.at)


def drag(qtbot, window, ref, right, key=None):
    """Zooms in until no other grip is near, then drags this one."""
    window.centre.sketch.zoom(4.0, grip(window, ref))
    view, start = window.centre.sketch.viewport(), grip(window, ref)
    qtbot.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    for part in range(1, 6):
        qtbot.mouseMove(view, start + QPoint(right * part // 5, 0))
    if key is not None:
        qtbot.keyClick(window.centre.sketch, key)
    qtbot.mouseRelease(view, Qt.MouseButton.LeftButton, pos=start + QPoint(right, 0))


def test_findings_stand_worst_first(window):
    ranks = [STATUSES.index(finding(window, row).status) for row in range(window.findings.model.rowCount())]
    assert ranks == sorted(ranks)
    assert ranks[0] == 0


def test_a_finding_says_status_in_word_and_mark(window):
    assert finding(window, 0).verdict == "X fail"
    assert finding(window, 0).sentence.startswith("fail, ")


def test_a_finding_opens_to_source_and_remedy(window, qtbot):
    window.findings.list.setFocus()
    qtbot.keyClick(window.findings.list, Qt.Key.Key_Down)
    words = window.findings.detail._words.text()
    assert "Limit from" in words
    assert "To mend it" in words


def test_a_finding_zooms_the_sketch_to_its_evidence(window, qtbot):
    whole = window.centre.sketch.unit
    seen = next(
        row for row in range(99) if "hoop" in finding(window, row).id or "harness" in finding(window, row).id
    )
    window.findings.list.setCurrentIndex(window.findings.model.index(seen))
    assert window.centre.sketch.unit != whole


def test_statuses_can_be_left_out(window):
    every = window.findings.model.rowCount()
    window.findings.filters["pass"].click()
    assert 0 < window.findings.model.rowCount() < every


def test_a_missing_measurement_is_named_and_jumped_to(window, session, qtbot):
    session.edit("car.head_restraint", None, "no head restraint")
    qtbot.waitUntil(lambda: bool(lacking_rows(window, "head_restraint")))
    lacking = lacking_rows(window, "head_restraint")[0]
    window.findings.list.setCurrentIndex(window.findings.model.index(lacking))
    assert "head_restraint" in window.findings.detail._words.text()
    window.findings.detail._jump.click()
    opened = next(each for each in window.worksheet.sections if "head restraint" in each.section.title)
    assert opened.heading.isChecked()


def test_two_rule_sets_stand_side_by_side(window, session, qtbot):
    session.choose(compared="student")
    rows = range(window.findings.model.rowCount())
    qtbot.waitUntil(lambda: any(finding(window, row).compared.startswith("student: ") for row in rows))


def test_picking_other_rules_judges_by_them(window, session, qtbot, qapp):
    qapp.setKeyboardInputInterval(60_000)  # letters belong to one word however busy the machine is
    box = window.findings.rules
    box.setFocus()
    qtbot.keyClicks(box, "student")
    qtbot.waitUntil(lambda: session.result.rules.id == "student")


def test_a_focused_row_marks_its_part_and_shows_how_to_measure(window, field):
    field("car.hoops.main_top.z")
    assert window.centre.sketch._marked == "car.hoops.main_top"
    field("driver.measurements.knee_height")
    assert "kneecap" in window.worksheet.guide._words.text()
    assert not window.worksheet.guide._drawing.isHidden()


def test_a_point_picked_in_the_sketch_is_found_in_the_worksheet(window, qtbot):
    window.centre.sketch.picked.emit("car.hoops.main_top")
    assert window.focusWidget().ref.startswith("car.hoops.main_top")


def test_dragging_the_seat_moves_it_by_holes_in_one_undo_step(window, session, qtbot):
    drag(qtbot, window, "setup.seat_travel", -55)
    assert session.work.setup.seat_travel > 0
    assert session.work.setup.seat_travel % 20 == 0
    assert session.undo_stack.count() == 1


def test_a_drag_stops_at_the_end_of_the_rail(window, session, qtbot):
    drag(qtbot, window, "setup.seat_travel", -250)
    assert session.work.setup.seat_travel == 60.0


def test_escape_calls_a_drag_off(window, session, qtbot):
    first = session.work
    drag(qtbot, window, "setup.seat_travel", -60, Qt.Key.Key_Escape)
    assert session.work is first
    assert session.undo_stack.count() == 0


def test_dragging_a_corner_of_the_footwell_changes_the_car(window, session, qtbot):
    before = session.work.car.document.footwell.roof
    drag(qtbot, window, "car.footwell.roof.1", 15)
    after = session.work.car.document.footwell.roof
    assert after[1][0] > before[1][0]
    assert (after[0], len(after)) == (before[0], len(before))
    assert session.undo_stack.count() == 1


def test_dragging_the_hoop_changes_the_car(window, session, qtbot):
    before = session.work.car.document.hoops.main_top.x
    drag(qtbot, window, "car.hoops.main_top", 20)
    assert session.work.car.document.hoops.main_top.x > before
    assert session.undo_stack.count() == 1


def test_the_status_bar_shows_the_cursor_in_the_cars_frame(window):
    window.centre.sketch.cursor_moved.emit(1257.0, 30.0)
    assert window.status.place.text() == "x 1257 mm   z 30 mm"


def test_cautions_are_in_sight(window):
    assert all(caution in window.cautions.words.text() for caution in CAUTIONS)
    assert window.cautions.isVisible()


def test_inches_are_shown_and_mm_are_kept(window, session, field, typed):
    window.menus.actions["inches"].trigger()
    assert field("driver.measurements.stature").text() == "66.142"
    assert not session.unsaved()
    typed("driver.measurements.stature", "67")
    assert session.work.driver.measurements.stature == pytest.approx(67 * 25.4, abs=1e-9)


def test_pounds_are_shown_and_kg_are_kept(window, session, field, typed):
    window.menus.actions["pounds"].trigger()
    assert field("driver.mass").text() == "136.7"
    typed("driver.mass", "140")
    assert session.work.driver.mass == pytest.approx(140 * 0.45359237, abs=1e-9)


def test_preferences_are_kept_for_the_next_start(window, session):
    from fitcalc.window.preferences import load_preferences

    window.menus.actions["dark_theme"].trigger()
    window.menus.actions["larger_text"].trigger()
    assert load_preferences().theme == "dark"
    assert load_preferences().text_size == 125


def test_text_grows_to_200_percent_and_no_further(window, session, qapp):
    ordinary = qapp.font().pointSizeF()
    for _ in range(5):
        window.menus.actions["larger_text"].trigger()
    assert qapp.font().pointSizeF() == pytest.approx(2 * ordinary)


@pytest.mark.parametrize("size", [100, 200])
def test_the_window_fits_a_small_screen(window, session, size):
    session.prefer(text_size=size)
    window.resize(1280, 800)
    assert window.minimumSizeHint().width() <= 1280
    assert window.minimumSizeHint().height() <= 800


@pytest.mark.parametrize("size", [100, 200])
@pytest.mark.parametrize("inches", [False, True])
def test_no_panel_scrolls_sideways(window, session, qtbot, size, inches):
    session.prefer(text_size=size, inches=inches)
    window.resize(1280, 800)
    for section in window.worksheet.sections:
        section.open()
    qtbot.wait(1)
    areas = [window.worksheet._area, window.rework._area, window.findings.list]
    assert [area.horizontalScrollBar().maximum() for area in areas] == [0, 0, 0]
    assert window.worksheet.width() >= 330
    assert all(box.width() >= box.fontMetrics().horizontalAdvance(box.currentText()) for box in boxes(window))


@pytest.mark.parametrize("size", [100, 200])
@pytest.mark.parametrize("inches", [False, True])
def test_no_control_of_the_rework_is_cut(window, session, qtbot, size, inches):
    session.prefer(text_size=size, inches=inches)
    window.resize(1280, 800)
    qtbot.wait(1)
    wide = window.rework._area.viewport().width()
    assert all(each.geometry().right() <= wide for each in window.rework.controls)
    assert all(each.width() >= each.minimumSizeHint().width() for each in window.rework.controls)


def test_finding_the_least_rework_leaves_the_knees_as_wished(window, session, qtbot):
    qtbot.mouseClick(window.rework.find_button, Qt.MouseButton.LeftButton)
    assert window.status.cancel.isVisible()
    qtbot.waitUntil(lambda: session.undo_stack.count() == 1, timeout=20_000)
    session.finish_evaluation()
    assert session.work.setup.seat_travel > 0
    assert not window.status.cancel.isVisible()


def test_a_search_that_is_called_off_changes_nothing(window, session, qtbot):
    window.rework.find_button.click()
    window.status.cancel.click()
    window.jobs.wait()
    assert session.undo_stack.count() == 0


def test_f6_goes_round_the_panels(window, qtbot):
    window.worksheet.sections[0].heading.setFocus()
    visited, panels = [], [window.centre, window.rework, window.findings, window.worksheet]
    for _ in range(4):
        window.menus.actions["next_panel"].trigger()
        visited += [panel for panel in panels if panel.isAncestorOf(window.focusWidget())]
    assert visited == panels


class Styled:
    """The application under a system of another colour scheme, which the offscreen platform can't be."""

    def __init__(self, application, hints):
        self._application, self._hints = application, hints

    def styleHints(self):
        return self._hints

    def __getattr__(self, name):
        return getattr(self._application, name)


def controls(window):
    for section in window.worksheet.sections:
        section.open()
    QApplication.processEvents()
    every = window.findChildren(QWidget)
    made = [each for each in every if isinstance(each, CONTROLS) and not isinstance(each, QScrollBar)]
    return [each for each in made if not each.objectName().startswith("qt_") and each.isVisibleTo(window)]


def test_every_control_has_an_accessible_name_and_role(window):
    every = controls(window)
    read = [QAccessible.queryAccessibleInterface(each) for each in every]
    nameless = [each for each, one in zip(every, read, strict=True) if not one.text(QAccessible.Text.Name)]
    assert nameless == []
    assert all(one.role() not in (QAccessible.Role.NoRole, QAccessible.Role.Client) for one in read)
    assert len(every) > 200


def test_every_control_can_be_reached_by_keyboard(window):
    lines = (QLineEdit, QComboBox, QAbstractSpinBox, QAbstractSlider, QListView)
    typed = [each for each in controls(window) if isinstance(each, lines)]
    assert [each for each in typed if not each.focusPolicy() & Qt.FocusPolicy.TabFocus] == []


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=lambda palette: palette.name)
@pytest.mark.parametrize("ground", GROUNDS)
@pytest.mark.parametrize("ink", INKS)
def test_text_stands_out_at_least_4_5_to_1(palette, ground, ink):
    assert contrast(getattr(palette, ink), getattr(palette, ground)) >= 4.5


@pytest.mark.parametrize("palette", [LIGHT, DARK], ids=lambda palette: palette.name)
def test_chosen_text_stands_out(palette):
    assert contrast(palette.on_accent, palette.accent) >= 4.5


@pytest.mark.published
def test_contrast_of_black_and_white_is_21():
    """WCAG 2.2, definition of contrast ratio: contrast ratios can range from 1 to 21."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#777777", "#777777") == 1.0


@pytest.mark.parametrize(("scheme", "palette"), [(Qt.ColorScheme.Dark, DARK), (Qt.ColorScheme.Light, LIGHT)])
def test_the_system_decides_light_or_dark_until_somebody_chooses(
    qapp, window, session, monkeypatch, scheme, palette
):
    hints = type("Hints", (), {"colorScheme": lambda self: scheme})()
    monkeypatch.setattr(window.look, "_application", Styled(qapp, hints))
    window.look._follow_system()
    assert window.look.colours is palette
    assert qapp.palette().window().color().name() == palette.panel
    session.prefer(theme="light")
    assert window.look.colours is LIGHT


def test_fitting_robin_to_the_hillclimb_car_by_mouse_and_keys(window, session, name_file, tmp_path, qtbot):
    """From first start to saved files: nothing but mouse and keyboard events."""
    entries = window.worksheet.findChildren(QLineEdit)
    entry = next(each for each in entries if each.accessibleName() == "knee height, sitting, mm")
    qtbot.mouseDClick(entry, Qt.MouseButton.LeftButton)
    qtbot.keyClick(entry, Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClicks(entry, "528")
    qtbot.keyClick(entry, Qt.Key.Key_Tab)
    qtbot.keyClick(window, Qt.Key.Key_F5)
    qtbot.waitUntil(lambda: session.work.setup.seat_travel > 0, timeout=20_000)
    qtbot.waitUntil(lambda: window.findings.filters["fail"].text() == "X  0 fail")
    qtbot.mouseClick(window.findings.list.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(60, 20))
    qtbot.keyClick(window, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    name_file(tmp_path / "robin.toml")
    name_file(tmp_path / "rework.toml")
    assert load_driver(tmp_path / "robin.toml").measurements.knee_height == 528.0
    assert load_setup(tmp_path / "rework.toml") == session.work.setup
    assert not session.unsaved()
