"""The sketch as a user meets it: looking, pointing, picking, dragging."""

from dataclasses import replace
from functools import cache

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QImage, QWheelEvent
from PySide6.QtWidgets import QApplication, QGraphicsItem

from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.errors import InputError
from fitcalc.fit.evaluate import evaluate
from fitcalc.present.picture import Circle, Dimension, Handle, Line, Picture, Text, in_inches
from fitcalc.present.plan_view import plan_view
from fitcalc.present.side_view import side_view
from fitcalc.window.colours import contrast
from fitcalc.window.sketch.export import sketch_png, sketch_svg
from fitcalc.window.sketch.furniture import bar_length, scale_bar
from fitcalc.window.sketch.marks import Words
from fitcalc.window.sketch.palette import DARK, LIGHT, STROKES, pen_for
from fitcalc.window.sketch.view import SketchView

DOT = Circle("dot", "outline", "car.hoops.main_top", (100.0, 50.0), 20.0)
GRIP = Handle("grip", "handle", "setup.seat_travel", (500.0, 100.0), (-1.0, 0.0))
FREE = Handle("free", "handle", "car.hoops.front_top", (700.0, 400.0))
ACROSS = Line("across", "thin outline", "", ((0.0, 0.0), (1000.0, 500.0)))
SIMPLE = Picture("side", "a title", ("x", "z"), (DOT, GRIP, FREE, ACROSS))
AS_FOUND = Setup()


@cache
def picture(setup=AS_FOUND, drawer=side_view):
    return drawer(evaluate(load_car(sample_path("hillclimb")), load_driver(sample_path("robin")), setup))


@pytest.fixture
def sketch(qtbot):
    view = SketchView()
    qtbot.addWidget(view)
    view.resize(900, 600)
    view.show()
    view.show_picture(SIMPLE)
    return view


def at(sketch, x, y):
    return sketch.mapFromScene(QPointF(x, y))


def drag(qtbot, sketch, start, *way):
    port = sketch.viewport()
    qtbot.mousePress(port, Qt.MouseButton.LeftButton, pos=at(sketch, *start))
    for point in way:
        qtbot.mouseMove(port, at(sketch, *point))


def turn_wheel(sketch, point, steps):
    event = QWheelEvent(
        QPointF(point),
        QPointF(sketch.viewport().mapToGlobal(point)),
        QPoint(),
        QPoint(0, 120 * steps),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(sketch.viewport(), event)


def test_up_in_the_car_is_up_on_the_screen(sketch):
    assert at(sketch, 0.0, 100.0).y() < at(sketch, 0.0, 0.0).y()
    assert at(sketch, 100.0, 0.0).x() > at(sketch, 0.0, 0.0).x()


def test_the_whole_frame_is_in_sight(sketch):
    seen = sketch.viewport().rect()
    assert all(seen.contains(at(sketch, x, y)) for x in (0.0, 1000.0) for y in (0.0, 500.0))


def test_a_larger_window_shows_the_frame_larger(sketch):
    before = sketch.unit
    sketch.resize(1600, 1100)
    assert sketch.unit < 0.7 * before


def test_pointing_tells_where_in_the_car(qtbot, sketch):
    with qtbot.waitSignal(sketch.cursor_moved) as moved:
        qtbot.mouseMove(sketch.viewport(), at(sketch, 300.0, 200.0))
    assert moved.args == pytest.approx([300.0, 200.0], abs=sketch.unit)


def test_a_click_picks_what_lies_there(qtbot, sketch):
    with qtbot.waitSignal(sketch.picked) as picked:
        qtbot.mouseClick(sketch.viewport(), Qt.MouseButton.LeftButton, pos=at(sketch, 120.0, 50.0))
    assert picked.args == ["car.hoops.main_top"]


def test_a_click_on_bare_ground_picks_nothing(qtbot, sketch):
    with qtbot.waitSignal(sketch.picked) as picked:
        qtbot.mouseClick(sketch.viewport(), Qt.MouseButton.LeftButton, pos=at(sketch, 300.0, 300.0))
    assert picked.args == [""]


def test_the_wheel_zooms_about_the_pointer(sketch):
    point = QPoint(200, 150)
    before, unit = sketch.mapToScene(point), sketch.unit
    turn_wheel(sketch, point, 2)
    after = sketch.mapToScene(point)
    assert sketch.unit == pytest.approx(unit / 1.25**2)
    assert (after - before).manhattanLength() < 2.0 * unit


@pytest.mark.parametrize(("key", "closer"), [(Qt.Key.Key_Plus, True), (Qt.Key.Key_Minus, False)])
def test_keys_zoom(qtbot, sketch, key, closer):
    before = sketch.unit
    qtbot.keyClick(sketch, key)
    assert (sketch.unit < before) is closer


def test_nought_shows_all_again(qtbot, sketch):
    before = sketch.unit
    sketch.zoom(4.0)
    qtbot.keyClick(sketch, Qt.Key.Key_0)
    assert sketch.unit == pytest.approx(before)


@pytest.mark.parametrize("factor", [1e-9, 1e9])
def test_zoom_has_ends(sketch, factor):
    sketch.zoom(factor)
    assert 0.01 < sketch.unit < 100.0


def test_dragging_bare_ground_pans_and_picks_nothing(qtbot, sketch):
    with qtbot.assertNotEmitted(sketch.picked):
        before = at(sketch, 0.0, 0.0)
        drag(qtbot, sketch, (300.0, 300.0), (350.0, 300.0))
        qtbot.mouseRelease(sketch.viewport(), Qt.MouseButton.LeftButton, pos=at(sketch, 300.0, 300.0))
    assert at(sketch, 0.0, 0.0).x() > before.x()


def test_an_arrow_key_pans(qtbot, sketch):
    before = at(sketch, 0.0, 0.0).x()
    qtbot.keyClick(sketch, Qt.Key.Key_Right)
    assert at(sketch, 0.0, 0.0).x() == before - 40


def test_a_grip_on_a_rail_moves_along_it_only(qtbot, sketch):
    with qtbot.waitSignal(sketch.handle_moved) as moved:
        drag(qtbot, sketch, (500.0, 100.0), (440.0, 160.0))
    assert moved.args[0] == "setup.seat_travel"
    assert moved.args[1:] == pytest.approx([440.0, 100.0], abs=2 * sketch.unit)


def test_a_free_grip_follows_and_is_dropped_where_it_is_let_go(qtbot, sketch):
    drag(qtbot, sketch, (700.0, 400.0), (720.0, 420.0))
    with qtbot.waitSignal(sketch.handle_dropped) as dropped:
        qtbot.mouseRelease(sketch.viewport(), Qt.MouseButton.LeftButton, pos=at(sketch, 730.0, 380.0))
    assert dropped.args[0] == "car.hoops.front_top"
    assert dropped.args[1:] == pytest.approx([730.0, 380.0], abs=2 * sketch.unit)


def test_escape_lets_go_and_nothing_is_dropped(qtbot, sketch):
    drag(qtbot, sketch, (500.0, 100.0), (440.0, 100.0))
    with qtbot.assertNotEmitted(sketch.handle_dropped), qtbot.waitSignal(sketch.handle_cancelled) as let_go:
        qtbot.keyClick(sketch, Qt.Key.Key_Escape)
        qtbot.mouseRelease(sketch.viewport(), Qt.MouseButton.LeftButton, pos=at(sketch, 440.0, 100.0))
    assert let_go.args == ["setup.seat_travel"]


def test_focus_zooms_to_the_evidence(sketch):
    before = sketch.unit
    assert sketch.focus_on("car.hoops.main_top")
    assert sketch.unit < 0.8 * before
    assert sketch.viewport().rect().adjusted(200, 100, -200, -100).contains(at(sketch, *DOT.centre))


def test_focus_on_much_shows_no_more_than_all(sketch):
    before = sketch.unit
    assert sketch.focus_on("car.hoops")
    assert sketch.unit == pytest.approx(before)


def test_focus_on_what_is_not_drawn_changes_nothing(sketch):
    before = sketch.transform()
    assert not sketch.focus_on("car.seat")
    assert sketch.transform() == before


def test_the_same_picture_touches_nothing(sketch):
    assert sketch.show_picture(replace(SIMPLE)) == 0


def test_only_what_differs_is_touched(sketch):
    moved = replace(DOT, centre=(110.0, 50.0))
    assert sketch.show_picture(replace(SIMPLE, primitives=(moved, GRIP, FREE, ACROSS))) == 1


def test_what_is_gone_leaves_the_scene(sketch):
    sketch.show_picture(replace(SIMPLE, primitives=(GRIP,)))
    assert len(sketch.scene().items()) == 1


def test_moving_the_seat_keeps_most_of_a_real_drawing(sketch):
    sketch.show_picture(picture())
    touched = sketch.show_picture(picture(Setup(seat_travel=20.0)))
    assert 0 < touched < 0.6 * len(picture().primitives)


def test_another_view_is_fitted_anew(sketch):
    sketch.zoom(5.0)
    sketch.fit()
    sketch.show_picture(picture(drawer=plan_view))
    left, bottom, right, top = picture(drawer=plan_view).frame
    seen = sketch.viewport().rect()
    assert seen.contains(at(sketch, left, bottom))
    assert seen.contains(at(sketch, right, top))


def test_picking_out_widens_the_line(sketch):
    mark = sketch._marks.mark("dot")
    before = mark.pen().widthF()
    sketch.highlight("car.hoops.main_top")
    assert mark.pen().widthF() > before
    sketch.highlight("")
    assert mark.pen().widthF() == before


def test_lettering_keeps_its_size_at_any_zoom(sketch):
    sketch.show_picture(replace(SIMPLE, primitives=(Text("t", "note", "", (100.0, 100.0), "words"),)))
    words = next(item for item in sketch.scene().items() if isinstance(item, Words))
    before = words.boundingRect()
    sketch.zoom(3.0)
    assert words.boundingRect() == before
    assert words.flags() & QGraphicsItem.GraphicsItemFlag.ItemIgnoresTransformations


def test_lettering_follows_the_font(sketch):
    sketch.show_picture(replace(SIMPLE, primitives=(Text("t", "note", "", (100.0, 100.0), "words"),)))
    words = next(item for item in sketch.scene().items() if isinstance(item, Words))
    before = words.boundingRect().height()
    font = sketch.font()
    font.setPointSizeF(2.0 * font.pointSizeF())
    sketch.setFont(font)
    assert words.boundingRect().height() > 1.8 * before


def test_lines_keep_their_width_at_any_zoom():
    assert all(pen_for(style, False, 12.0).isCosmetic() for style in STROKES if STROKES[style].line)


@pytest.mark.parametrize("inks", [LIGHT, DARK], ids=["light", "dark"])
def test_all_lettering_can_be_read(inks):
    letters = {stroke.letters for stroke in STROKES.values()} | {"soft", "ink"}
    assert min(contrast(inks[ink], inks["paper"]) for ink in letters) >= 4.5


@pytest.mark.parametrize("inks", [LIGHT, DARK], ids=["light", "dark"])
@pytest.mark.parametrize("status", ["pass", "advise", "fail"])
def test_a_status_can_be_read_over_what_it_lies_on(inks, status):
    """The veil behind a text lets 40 of 255 parts of what lies behind shine through."""
    assert all(
        contrast(inks[status], inks[ground]) >= 3.0 for ground in ("skin", "kit", "allowed", "refused")
    )


@pytest.mark.parametrize(("unit", "length"), [(1.0, 100.0), (2.0, 200.0), (5.0, 500.0), (0.1, 10.0)])
def test_the_scale_bar_is_a_round_length(unit, length):
    assert bar_length(unit) == length


@pytest.mark.parametrize("dark", [False, True])
def test_a_drawing_is_written_as_an_image(qapp, tmp_path, dark):
    sketch_png(picture(), tmp_path / "a.png", (640, 400), dark)
    image = QImage(str(tmp_path / "a.png"))
    assert (image.width(), image.height()) == (640, 400)
    assert image.pixelColor(320, 60).name().upper() == (DARK if dark else LIGHT)["paper"]


def test_a_drawing_is_written_as_lines(qapp, tmp_path):
    sketch_svg(picture(), tmp_path / "a.svg", (640, 400))
    text = (tmp_path / "a.svg").read_text(encoding="utf-8")
    assert "<path" in text
    assert "Hillclimb car" in text


@pytest.mark.parametrize("write", [sketch_png, sketch_svg])
def test_a_folder_that_is_not_there_is_refused(qapp, tmp_path, write):
    with pytest.raises(InputError):
        write(SIMPLE, tmp_path / "none" / "a.out", (64, 40))


@pytest.mark.parametrize(("inches", "long", "says"), [(False, 100.0, "100 mm"), (True, 127.0, "5 in")])
def test_the_scale_bar_is_a_round_length_in_the_unit_shown(sketch, inches, long, says):
    sketch.set_inches(inches)
    assert scale_bar(sketch._look()) == (long, says)


def test_inches_change_words_and_no_geometry():
    drawn = picture(Setup(seat_travel=40.0, clutch=PedalRework(stand_off=25.4)))
    inches = in_inches(drawn)
    words = [(a.text, b.text) for a, b in zip(drawn.primitives, inches.primitives, strict=True) if a != b]
    assert inches.bounds == drawn.bounds
    assert ("helmet 71", "helmet 2.81") in words


def test_every_length_in_the_words_has_its_inches():
    for drawer in (side_view, plan_view):
        for each in picture(Setup(seat_travel=40.0), drawer).primitives:
            says_number = isinstance(each, Text | Dimension) and any(map(str.isdigit, each.text))
            assert not says_number or each.inches or "°" in each.text


def test_words_go_along_in_motion_and_find_new_places_at_rest(sketch):
    before, after = picture(), picture(Setup(seat_travel=40.0))
    sketch.show_picture(replace(before, view="plan"))
    sketch.show_picture(before)
    where = dict(sketch._ways)
    sketch.show_picture(after, in_motion=True)
    assert sketch._ways == where
    shown = {key for key, mark in sketch._marks._marks.items() if mark._words and mark._words.isVisible()}
    assert shown == where.keys() & {each.key for each in after.primitives}
    sketch.show_picture(after)
    assert sketch._ways != where


def test_title_and_scale_bar_on_screen_follow_the_picture_and_the_units(sketch):
    shown = [sketch.grab().toImage()]
    sketch.show_picture(replace(SIMPLE, title="another title"))
    shown.append(sketch.grab().toImage())
    sketch.set_inches(True)
    shown.append(sketch.grab().toImage())
    assert shown[0] != shown[1] != shown[2]


def test_an_svg_holds_lines_and_letters_only(tmp_path):
    sketch_svg(SIMPLE, tmp_path / "sketch.svg", (600, 400))
    assert "<image" not in (tmp_path / "sketch.svg").read_text(encoding="utf-8")
