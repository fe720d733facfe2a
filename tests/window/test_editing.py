import gc
import re

import pytest
from PySide6.QtCore import QByteArray, QEvent, Qt
from PySide6.QtGui import QColor, QHelpEvent, QImage
from PySide6.QtWidgets import QApplication, QToolTip

from fitcalc.window.colours import DARK, LIGHT
from fitcalc.window.edits import Edit
from fitcalc.window.preferences import Preferences
from fitcalc.window.program import first_documents
from fitcalc.window.session import Session
from fitcalc.window.work import new_work, with_ref


def test_first_start_opens_the_hillclimb_sample_with_robin(session):
    assert "Hillclimb" in session.work.car.document.name
    assert "Robin" in session.work.driver.name
    assert not session.unsaved()


def test_typing_a_measurement_changes_the_driver_and_the_result(session, typed):
    before = session.result
    typed("driver.measurements.stature", "1702")
    session.finish_evaluation()
    assert session.work.driver.measurements.stature == 1702.0
    assert session.result is not before


def test_typing_in_one_field_is_one_undo_step(session, typed):
    first = session.work
    typed("driver.measurements.knee_height", "531")
    assert session.undo_stack.count() == 1
    session.undo_stack.undo()
    assert session.work.driver is first.driver


def test_of_many_changes_in_one_gesture_one_step_is_kept(session):
    for length in range(40):
        session.edit("driver.measurements.knee_height", 500.0 + length, "knee height", "typed")
    gc.collect()
    assert session.work.driver.measurements.knee_height == 539.0
    assert len([each for each in gc.get_objects() if isinstance(each, Edit)]) == 1


def test_steps_beyond_the_last_ones_are_let_go(qapp, monkeypatch):
    monkeypatch.setattr("fitcalc.window.session.STEPS", 5)
    session = Session(new_work(*first_documents()), Preferences())
    for step in range(8):
        session.push("recline", with_ref(session.work, "setup.recline", 1.0 + step))
    while session.undo_stack.canUndo():
        session.undo_stack.undo()
    assert session.work.setup.recline == 3.0
    session.evaluation.wait()


def test_a_chain_of_edits_is_undone_and_redone_whole(session, typed):
    first = session.work
    for at, ref in enumerate(
        ("driver.measurements.stature", "driver.mass", "car.rails.angle", "car.hoops.main_top.z")
    ):
        typed(ref, ("1700", "70", "3", "1090")[at])
    last = session.work
    for _ in range(4):
        session.undo_stack.undo()
    assert session.work.driver is first.driver
    assert session.work.car is first.car
    for _ in range(4):
        session.undo_stack.redo()
    assert session.work is last


def test_undo_by_key_puts_the_text_back(window, session, field, typed, qtbot):
    typed("driver.measurements.stature", "1702")
    qtbot.keyClick(window.findings.list, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert field("driver.measurements.stature").text() == "1680"


@pytest.mark.parametrize(
    ("text", "says"), [("168", "1680"), ("66.1", "1679"), ("tall", "must be a number"), ("3000", "2300")]
)
def test_a_refused_number_stays_with_its_sentence(session, typed, text, says):
    entry = typed("driver.measurements.stature", text)
    sentence = entry.parent()._sentence
    assert entry.text() == text
    assert not sentence.isHidden()
    assert "stature" in sentence.text()
    assert says in sentence.text()
    assert session.work.driver.measurements.stature == 1680.0


def test_a_refused_number_is_mended_in_place(session, typed):
    typed("driver.measurements.stature", "168")
    entry = typed("driver.measurements.stature", "1684")
    assert entry.parent()._sentence.isHidden()
    assert session.work.driver.measurements.stature == 1684.0


def test_escape_puts_back_what_the_document_says(typed, qtbot):
    entry = typed("driver.measurements.stature", "168")
    qtbot.keyClick(entry, Qt.Key.Key_Escape)
    assert entry.text() == "1680"
    assert entry.parent()._sentence.isHidden()


def test_an_emptied_measurement_becomes_an_estimate_with_its_interval(session, typed):
    entry = typed("driver.measurements.knee_height", "")
    assert session.work.driver.measurements.knee_height is None
    assert entry.font().italic()
    assert 480 < float(entry.placeholderText()) < 570
    assert " to " in entry.parent()._sureness.text()


def test_an_estimate_follows_the_theme(session, typed):
    entry = typed("driver.measurements.knee_height", "")
    for theme, colours in (("dark", DARK), ("light", LIGHT)):
        session.prefer(theme=theme)
        assert entry.palette().placeholderText().color() == QColor(colours.estimated)


def test_other_units_and_themes_leave_a_refused_text_in_its_field(session, typed):
    entry = typed("driver.measurements.stature", "tall")
    session.prefer(theme="dark", inches=True)
    assert entry.text() == "tall"
    assert not entry.parent()._sentence.isHidden()


def test_a_part_begun_in_other_units_is_put_away(window, session):
    session.edit("car.head_restraint", None, "take away")
    session.wanted.emit("car.head_restraint")
    row = next(r for s in window.worksheet.sections for r in s.rows if r.row.ref == "car.head_restraint")
    row._begin_draft()
    session.prefer(inches=True)
    assert row.drafts == []


def test_a_point_needs_all_of_its_numbers(session, typed):
    before = session.work.car.document
    entry = typed("car.harness.lap_left.x", "")
    assert "lap_left.x" in entry.parent()._sentence.text()
    assert session.work.car.document is before


@pytest.mark.parametrize(("text", "stored"), [("66 in", 1676.4), ("168 cm", 1680.0), ("1680,5", 1680.5)])
def test_a_unit_may_be_typed_behind_a_number(session, typed, text, stored):
    typed("driver.measurements.stature", text)
    assert session.work.driver.measurements.stature == pytest.approx(stored, abs=1e-9)


def test_a_slider_drag_is_one_undo_step_in_hole_pitches(session, control, qtbot):
    slider = control("setup.seat_travel").slider
    slider.setFocus()
    for _ in range(3):
        qtbot.keyClick(slider, Qt.Key.Key_Right)
    assert session.work.setup.seat_travel == 60.0
    assert session.undo_stack.count() == 1


def test_a_slider_led_back_to_its_start_is_no_undo_step(session, control, qtbot):
    slider = control("setup.recline").slider
    slider.setFocus()
    qtbot.keyClick(slider, Qt.Key.Key_Right)
    qtbot.keyClick(slider, Qt.Key.Key_Left)
    assert not session.undo_stack.canUndo()


def test_the_rework_moves_the_findings(session, control, qtbot):
    before = session.result.sitting.trunk.hip[0, 0]
    box = control("setup.seat_travel").box
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Up)
    session.finish_evaluation()
    assert session.result.sitting.trunk.hip[0, 0] == pytest.approx(before - 20.0, abs=1e-6)


def test_a_new_driver_asks_for_the_stature(window, session, qtbot):
    window.menus.actions["new_driver"].trigger()
    assert window.focusWidget().ref == "driver.measurements.stature"
    qtbot.keyClicks(window.focusWidget(), "1755")
    assert session.work.driver.measurements.stature == 1755.0
    assert len(session.work.occupants) == 2


def test_each_driver_keeps_a_rework_of_their_own(window, session, control, qtbot):
    qtbot.keyClick(control("setup.seat_travel").slider, Qt.Key.Key_Right)
    window.menus.actions["new_driver"].trigger()
    assert session.work.setup.seat_travel == 0.0
    window.menus.actions["next_driver"].trigger()
    assert session.work.setup.seat_travel == 20.0


def test_a_profile_grows_and_shrinks(window, session, field, qtbot):
    field("car.footwell.floor.0.0")
    before = session.work.car.document.footwell.roof
    window.worksheet.refresh()
    row = next(r for s in window.worksheet.sections for r in s.rows if r.row.ref == "car.footwell.roof")
    row._drop_entry()
    assert session.work.car.document.footwell.roof == before[:-1]
    session.undo_stack.undo()
    assert session.work.car.document.footwell.roof == before


@pytest.fixture
def give(window, session, field, qtbot):
    """Takes a part of the car away, then gives it as a person would: one field after another."""

    def given(ref, texts):
        session.edit(ref, None, "take away")
        session.wanted.emit(ref)
        window.worksheet.refresh()
        row = next(r for s in window.worksheet.sections for r in s.rows if r.row.ref == ref)
        row._begin_draft()
        draft = row.drafts[0]
        for path, text in texts.items():
            qtbot.keyClicks(draft.fields[path], text)
            draft.fields[path].editingFinished.emit()
        return row

    return given


def test_a_part_that_was_not_given_is_given_field_by_field(session, give, qtbot):
    before = session.work.car.document.head_restraint
    row = give("car.head_restraint", {f"head_restraint.{n}": f"{v:g}" for n, v in before if n != "width"})
    assert "Still to be given: width" in row._sentence.text()
    assert session.work.car.document.head_restraint is None
    qtbot.keyClicks(row.drafts[0].fields["head_restraint.width"], f"{before.width:g}")
    row.drafts[0].fields["head_restraint.width"].editingFinished.emit()
    assert session.work.car.document.head_restraint == before


def test_a_line_that_was_not_given_is_typed_as_pairs(session, give):
    give("car.sight_edges", {"sight_edges": "-420 250, 620 640"})
    assert session.work.car.document.sight_edges == ((-420.0, 250.0), (620.0, 640.0))


def test_a_line_with_half_a_point_is_refused_in_words(session, give):
    row = give("car.sight_edges", {"sight_edges": "-420 250, 620"})
    assert "must be 2 numbers" in row._sentence.text()


def test_a_gear_lever_is_given_by_its_knobs(session, give):
    give("car.gear_lever", {"gear_lever.knobs": "1010 225 395, 1075 225 390"})
    assert [knob.x for knob in session.work.car.document.gear_lever.knobs] == [1010.0, 1075.0]


def test_the_next_measurement_is_asked_for_until_a_line_is_gone_to(window, session, field):
    session.edit("driver.measurements.knee_height", None, "not measured")
    session.finish_evaluation()
    assert "Next to measure: <b>Knee height" in window.worksheet.guide._words.text()
    field("driver.mass")
    assert "Next to measure" not in window.worksheet.guide._words.text()


def test_a_tool_tip_shows_where_the_tape_goes(window, field, qtbot):
    entry = field("driver.measurements.knee_height")
    at = entry.rect().center()
    QApplication.sendEvent(entry, QHelpEvent(QEvent.Type.ToolTip, at, entry.mapToGlobal(at)))
    assert "Knee" in QToolTip.text() or "knee" in QToolTip.text()
    picture = re.search(r"base64,([^\"]+)", QToolTip.text())
    assert not QImage.fromData(QByteArray.fromBase64(picture[1].encode())).isNull()
    QToolTip.hideText()
