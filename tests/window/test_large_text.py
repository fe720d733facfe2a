"""Where the text is too large for three parts side by side, measurements and findings share one place."""

import pytest
from PySide6.QtCore import Qt

from fitcalc.present.labels import places
from fitcalc.window.findings.model import FINDING


@pytest.fixture
def narrow(window, session, qtbot):
    """The window on a small screen with text at 200 %."""
    session.prefer(text_size=200)
    window.resize(1280, 800)
    qtbot.wait(1)
    assert window.parts.is_shared
    return window


def test_three_parts_stand_side_by_side_at_ordinary_text(window):
    assert not window.parts.is_shared
    assert all(part.isVisible() for part in (window.worksheet, window.centre, window.findings))


def test_a_wide_screen_has_room_for_all_at_200_percent(narrow, qtbot):
    narrow.resize(2560, 1440)
    qtbot.wait(1)
    assert not narrow.parts.is_shared
    assert narrow.worksheet.isVisible()
    assert narrow.findings.isVisible()


def test_the_sketch_keeps_most_of_the_width(narrow):
    assert narrow.centre.width() > 0.6 * narrow.width()


def test_what_is_asked_for_comes_forward(narrow, session):
    session.pointed_at.emit("head.restraint_gap")
    assert narrow.findings.isVisible()
    session.wanted.emit("driver.mass")
    assert narrow.worksheet.isVisible()
    assert narrow.focusWidget().ref == "driver.mass"


def test_the_findings_are_reached_by_keyboard(narrow, qtbot):
    for _ in range(4):
        qtbot.keyClick(narrow, Qt.Key.Key_F6)
        if narrow.findings.isAncestorOf(narrow.focusWidget()):
            break
    qtbot.keyClick(narrow.findings.list, Qt.Key.Key_Down)
    assert narrow.findings.list.currentIndex().data(FINDING) is not None


@pytest.mark.parametrize("view", ["side", "plan", "pads"])
def test_no_words_of_the_sketch_lie_on_others(narrow, view):
    narrow.centre.show_view(view)
    sketch = narrow.centre.sketch
    look = sketch._look()
    found = places(sketch.picture, look.letters * look.unit, sketch._page(look.letters), thins_out=True)
    items = [mark._words for mark in sketch._marks._marks.values() if mark._words and mark._words.isVisible()]
    boxes = [sketch.mapFromScene(item.pos()) for item in items]
    assert len(boxes) == len(found) > 0
    rects = [
        item.boundingRect().adjusted(6, 6, -6, -6).translated(at.x(), at.y())
        for item, at in zip(items, boxes, strict=True)
    ]
    assert [1 for a in range(len(rects)) for b in range(a) if rects[a].intersects(rects[b])] == []


def test_no_number_is_cut_at_200_percent(narrow, qtbot):
    qtbot.wait(1)
    rows = [field for row in narrow.worksheet.sections[0].rows for field in row.fields]
    typed = [field for field in rows if hasattr(field, "text") and field.text()]
    assert len(typed) > 10
    assert all(each.width() > each.fontMetrics().horizontalAdvance(each.text()[:6]) for each in typed)
