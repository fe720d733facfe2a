"""Sweeps of pedal and wheel, the ruler, the undo list, and previews during a drag."""

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QDialog, QUndoView

from fitcalc.posture.sit import sit
from fitcalc.window.moments import at_moment, nearest_now, worst
from fitcalc.window.movements import STEERING, movements_of
from fitcalc.window.previews import posed
from fitcalc.window.sweep_bar import STEPS
from fitcalc.window.work import with_ref

PEDALS = ("clutch", "brake", "throttle")


@pytest.fixture
def sweep(window, qtbot):
    """Chooses what moves, by keyboard."""

    def chosen(name):
        bar = window.centre.sweep
        bar.what.setFocus()
        qtbot.keyClicks(bar.what, name)
        bar._start()
        return bar

    return chosen


@pytest.mark.parametrize("name", PEDALS)
@pytest.mark.parametrize(("part", "leg"), [(0.0, "rest"), (1.0, "full")])
def test_the_ends_of_a_sweep_are_pedal_at_rest_and_pedal_pressed(session, name, part, leg):
    moved = at_moment(session.result, name, part).sitting.pedals[name]
    known = getattr(session.result.sitting.pedals[name], leg)
    np.testing.assert_allclose(moved.rest.knee, known.knee, atol=1e-9)


@pytest.mark.parametrize("name", PEDALS)
def test_the_worst_moment_is_as_close_as_the_check_says(session, name):
    found = worst(session.result, name)[0]
    there = nearest_now(at_moment(session.result, name, found.at), name)
    assert there.id == found.id
    assert there.room == pytest.approx(
        found.room, abs=0.5
    )  # between stations the check takes the arc as straight


def test_the_wheel_turned_to_the_right_stretches_the_left_arm(session):
    left, right = at_moment(session.result, STEERING, 0.5).sitting.hands
    assert left.elbow_angle[0] > right.elbow_angle[0]


def test_the_worst_of_steering_are_the_closest_fist_and_the_straightest_arm(session):
    fist, arm = worst(session.result, STEERING)
    straight = at_moment(session.result, STEERING, 0.0)
    assert fist.room <= nearest_now(straight, STEERING).room
    assert arm.room > straight.sitting.hands[0].elbow_angle[0]


def test_the_closest_fist_is_as_close_as_the_checks_say(session):
    ids = ("wheel.knuckles_thigh", "wheel.dash", "wheel.side")
    least = min(float(each.value[0]) for each in session.result.figures if each.id in ids)
    assert worst(session.result, STEERING)[0].room == pytest.approx(least, abs=1.0)  # turns in steps of 4 %


def test_the_worst_moments_of_steering_are_stepped_through(session, sweep):
    bar = sweep(STEERING)
    seen = []
    for _ in range(3):
        bar.worst.click()
        seen.append(bar.slider.value())
    assert seen[0] == seen[2]
    assert "elbows" in bar.words
    assert " mm" in bar.words


def test_a_car_without_a_wheel_has_no_steering_to_sweep(session):
    session.edit("car.steering_wheel", None, "take away")
    assert [each.name for each in movements_of(session.work.car.document)] == list(PEDALS)


def test_a_sweep_moves_the_drawing_and_says_what_is_near(window, sweep, qtbot):
    bar = sweep("clutch")
    before = window.centre.sketch.picture
    bar.slider.setFocus()
    qtbot.keyClick(bar.slider, Qt.Key.Key_End)
    assert window.centre.sketch.picture != before
    assert window.centre.live.isVisible()
    assert window.centre.live.text().startswith("100 %: knee ")


def test_play_goes_on_by_itself_and_stops_when_nothing_moves(window, sweep, qtbot):
    bar = sweep("brake")
    bar.play.click()
    qtbot.waitUntil(lambda: bar.slider.value() > 2)
    bar.what.setCurrentIndex(0)
    bar._start()
    assert not bar.play.isChecked()
    assert not window.centre.live.isVisible()


def test_the_worst_moment_is_stepped_to(window, session, sweep):
    bar = sweep("throttle")
    bar.worst.click()
    assert bar.part == pytest.approx(worst(session.result, "throttle")[0].at, abs=0.5 / STEPS)


def test_a_sweep_is_no_undo_step(session, sweep, qtbot):
    bar = sweep("clutch")
    qtbot.keyClick(bar.slider, Qt.Key.Key_PageUp)
    assert session.undo_stack.count() == 0
    assert not session.unsaved()


def click(qtbot, window, place):
    """Clicks at a place in the car."""
    view = window.centre.sketch
    at = view.mapFromScene(*place)
    qtbot.mouseMove(view.viewport(), at)
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=at)


@pytest.mark.parametrize(("inches", "says"), [(False, "1500 mm (x +900 mm, z +1200 mm)"), (True, "59.06 in")])
def test_the_ruler_measures_in_the_unit_shown(window, session, qtbot, inches, says):
    session.prefer(inches=inches)
    assert window.centre._length([(100.0, -300.0), (1000.0, 900.0)]).startswith(says)


def test_the_ruler_takes_two_clicks_and_ends_with_escape(window, session, qtbot):
    window.menus.actions["ruler"].trigger()
    assert window.centre.live.text() == "Click the first point"
    hoops = session.work.car.document.hoops
    click(qtbot, window, (hoops.main_top.x, hoops.main_top.z))
    click(qtbot, window, (hoops.front_top.x, hoops.front_top.z))
    apart = np.hypot(hoops.main_top.x - hoops.front_top.x, hoops.main_top.z - hoops.front_top.z)
    assert float(window.centre.live.text().split(" mm")[0]) == pytest.approx(apart, abs=45.0)
    qtbot.keyClick(window.centre.sketch, Qt.Key.Key_Escape)
    assert not window.centre.ruler.isChecked()
    assert not window.centre.live.isVisible()


def test_the_ruler_drags_and_picks_nothing(window, session, qtbot):
    window.centre.ruler.click()
    view = window.centre.sketch
    qtbot.mousePress(view.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(200, 200))
    qtbot.mouseRelease(view.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(300, 200))
    assert session.undo_stack.count() == 0


def test_a_window_that_goes_in_the_middle_of_a_measurement_goes_in_peace(window, qtbot, shut):
    window.centre.ruler.click()
    qtbot.mouseMove(window.centre.sketch.viewport(), QPoint(100, 100))
    QApplication.sendEvent(
        window.centre.sketch, QKeyEvent(QEvent.Type.KeyRelease, Qt.Key.Key_A, Qt.KeyboardModifier.NoModifier)
    )
    window._close_now()
    assert not window.centre.picker.is_picking


def test_a_step_is_undone_from_the_menu_after_the_undo_list_was_put_away(window, session, qapp):
    session.edit("setup.recline", 2.0, "recline")
    for _ in range(2):
        window.menus.actions["show_undo_list"].trigger()
        window.findChild(QUndoView).window().close()
        qapp.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    window.menus.actions["undo"].trigger()
    assert session.work.setup.recline == 0.0
    assert len(window.findChildren(QUndoView)) == 1


def test_the_undo_list_goes_back_to_any_step(window, session, qtbot):
    for degrees in (1.0, 2.0, 3.0):
        session.edit("setup.recline", degrees, f"recline {degrees:g}")
    window.menus.actions["show_undo_list"].trigger()
    dialog = next(each for each in window.findChildren(QDialog) if each.isVisible())
    steps = dialog.findChild(QUndoView)
    steps.setCurrentIndex(steps.model().index(1, 0))
    assert session.work.setup.recline == 1.0
    dialog.close()


def test_the_tool_bar_says_undo_and_no_more(window, session):
    session.edit("setup.recline", 1.0, "recline")
    assert window.menus.actions["undo"].iconText() == "Undo"
    assert window.menus.actions["undo"].text() == "&Undo recline"


@pytest.mark.parametrize(
    ("ref", "value"),
    [
        ("setup.seat_travel", 40.0),
        ("setup.recline", 3.0),
        ("setup.clutch.stand_off", 30.0),
        ("car.hoops.tube", 40.0),
    ],
)
def test_a_preview_seats_the_driver_as_the_evaluation_does(session, ref, value):
    work = with_ref(session.work, ref, value)
    drawn = posed(work, session.results).after
    whole = sit(work.car.document, drawn.links, work.setup)
    np.testing.assert_allclose(drawn.sitting.trunk.eye, whole.trunk.eye, atol=1e-9)
    for name in PEDALS:
        np.testing.assert_allclose(
            drawn.sitting.pedals[name].full.knee, whole.pedals[name].full.knee, atol=1e-9
        )


def test_in_a_drag_the_sketch_is_ahead_of_the_findings_until_the_hand_rests(session, qtbot):
    before = session.result
    gesture = session.gesture("recline")
    gesture.move(with_ref(session.work, "setup.recline", 2.0))
    assert session.drawn.after.sitting.trunk.recline[0] > before.sitting.trunk.recline[0]
    assert session.result is before
    with qtbot.waitSignal(session.results_changed):
        pass
    assert session.result.sitting.trunk.recline[0] == pytest.approx(
        session.drawn.after.sitting.trunk.recline[0]
    )
    gesture.cancel()


def test_the_end_of_a_drag_is_evaluated_whole(session, qtbot):
    gesture = session.gesture("recline")
    gesture.move(with_ref(session.work, "setup.recline", 2.0))
    gesture.commit()
    qtbot.waitUntil(lambda: session.results.work is session.work)
    assert session.results.is_checked
    assert session.result.setup.recline == 2.0
    assert session.undo_stack.count() == 1


def test_of_many_edits_only_the_last_is_handed_over(session, qtbot):
    handed = []
    session.results_changed.connect(lambda: handed.append(session.result.setup.recline))
    for degrees in (1.0, 2.0, 3.0, 4.0):
        session.edit("setup.recline", degrees, "recline")
    qtbot.waitUntil(lambda: bool(handed))
    assert handed == [4.0]


def test_an_edit_is_drawn_at_once_and_judged_later(session, qtbot):
    before = session.results
    session.edit("setup.recline", 2.0, "recline")
    assert session.drawn.after.setup.recline == 2.0
    assert session.results is before
    qtbot.waitUntil(lambda: session.results is not before)


def test_a_window_that_closes_during_an_evaluation_goes_in_peace(session, window):
    session.edit("setup.recline", 2.0, "recline")
    window._close_now()
    assert not session.evaluation.is_busy


def test_shoulder_anchors_are_raised_in_the_strip(session, control, qtbot):
    box = control("setup.shoulder_anchor_raise").box
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Up)
    assert session.work.setup.shoulder_anchor_raise == 1.0
