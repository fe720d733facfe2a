"""What work costs: typed in its small window, undone, saved as the command reads it, heeded by the search."""

import re

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible

from fitcalc.documents.effort import Effort, Work
from fitcalc.documents.store import load_effort
from fitcalc.window.autosave import recover
from fitcalc.window.studies import desk
from fitcalc.window.studies.minutes import Minutes
from fitcalc.window.studies.study import search_study


def go_on(done):
    return True


@pytest.fixture
def minutes(window):
    window.menus.actions["minutes_for_work"].trigger()
    return window.desk.minutes


@pytest.fixture
def cost(minutes, qtbot):
    """Types the minutes of one kind of work, and goes on."""

    def type_in(kind, text):
        box = minutes.boxes[kind]
        box.setFocus()
        box.selectAll()
        qtbot.keyClicks(box, text)
        qtbot.keyClick(box, Qt.Key.Key_Tab)

    return type_in


def test_typed_minutes_are_one_step_and_are_undone(session, minutes, cost):
    cost("drilling", "125")
    assert session.work.effort.document == Effort(work=Work(drilling=125.0))
    assert session.undo_stack.count() == 1
    session.undo_stack.undo()
    assert session.work.effort.document == Effort()
    assert minutes.boxes["drilling"].value() == 40.0


def test_nothing_beyond_the_document_s_bounds_can_be_typed(session, cost):
    cost("welding", "99999")
    cost("bolt_on", "-5")
    given = session.work.effort.document.work
    assert (given.welding or 0.0) <= 10_000.0
    assert (given.bolt_on or 0.0) >= 0.0


def test_what_is_as_the_program_has_it_is_left_out(session, minutes, cost, qtbot):
    cost("drilling", "125")
    cost("drilling", "40")
    assert session.work.effort.document == Effort()
    cost("new_bracket", "10")
    qtbot.mouseClick(minutes.usual, Qt.MouseButton.LeftButton)
    assert session.work.effort.document == Effort()
    assert not minutes.usual.isEnabled()


def test_saved_minutes_are_what_the_command_reads(window, session, minutes, cost, qtbot, name_file, tmp_path):
    cost("welding", "90")
    qtbot.mouseClick(minutes.save, Qt.MouseButton.LeftButton)
    name_file(tmp_path / "mine.toml")
    assert load_effort(tmp_path / "mine.toml") == Effort(work=Work(welding=90.0))
    assert session.unsaved() == []
    cost("welding", "70")
    window.filing.open(tmp_path / "mine.toml")
    assert session.work.effort.document.work.welding == 90.0


@pytest.mark.parametrize(
    "text", ["[work]\ndrilling = 3\n", "[recline]\nhigh = 0\n", "[brake.stand_off]\nhigh = 0\n"]
)
def test_a_file_of_minutes_is_known_by_its_sections(window, session, tmp_path, text):
    (tmp_path / "mine.toml").write_text(text, encoding="utf-8")
    window.filing.open(tmp_path / "mine.toml")
    assert session.work.effort.document == load_effort(tmp_path / "mine.toml") != Effort()


def test_a_rework_is_still_a_rework(window, session, tmp_path):
    (tmp_path / "mine.toml").write_text("recline = 2.0\n[brake]\nstand_off = 9\n", encoding="utf-8")
    window.filing.open(tmp_path / "mine.toml")
    assert session.work.setup.brake.stand_off == 9.0
    assert session.work.effort.document == Effort()


def test_unsaved_minutes_outlive_the_program(window, session, cost):
    cost("bolt_on", "33")
    window.autosave.keep()
    kept = recover(window.autosave._file)
    assert kept.work.effort.document == session.work.effort.document


def test_the_search_weighs_by_them(session, cost):
    """Nothing passes with the seat where it is, and it is bolted: 990 min more for that alone."""

    def minutes_of_the_best():
        return float(re.search(r"([0-9]+) min", search_study(session.work, "", go_on).trials[0].words)[1])

    before = minutes_of_the_best()
    cost("bolt_on", "1000")
    assert minutes_of_the_best() >= before + 990.0


def test_a_search_leads_to_its_minutes(window, qtbot):
    found = search_study(window.session.work, "", lambda done: False)
    window.desk._show(desk.SEARCH, lambda *_: found, found, window.session.work)
    qtbot.mouseClick(window.desk.open[desk.SEARCH].weights, Qt.MouseButton.LeftButton)
    assert isinstance(window.desk.minutes, Minutes)
    assert window.desk.minutes.isVisible()


def test_every_box_has_a_name_and_the_keyboard(minutes):
    names = [
        QAccessible.queryAccessibleInterface(each).text(QAccessible.Text.Name)
        for each in minutes.boxes.values()
    ]
    assert names == [
        "minutes for bolt-on",
        "minutes for drilling",
        "minutes for welding",
        "minutes for new bracket",
    ]
    assert all(each.focusPolicy() & Qt.FocusPolicy.TabFocus for each in minutes.boxes.values())
