"""The photo under the sketch: only beside the car's file, squared by clicks, picked from."""

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QInputDialog

from fitcalc.documents.photo import Photo
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car
from fitcalc.errors import InputError
from fitcalc.window.photo import photo_file, squared, to_car

WIDE, HIGH = 800, 400
LEVEL = {
    "path": "car.png", "first": {"right": 100.0, "down": 300.0}, "second": {"right": 500.0, "down": 300.0},
    "distance": 1000.0, "level_start": {"right": 0.0, "down": 300.0}, "level_end": {"right": 10.0, "down": 300.0},
    "at": {"x": 0.0, "z": 250.0},
}  # fmt: skip


@pytest.fixture
def own_car(window, tmp_path):
    """A car with a file of its own and a picture beside it."""
    path = tmp_path / "own.toml"
    path.write_text(sample_path("hillclimb").read_text(encoding="utf-8"), encoding="utf-8")
    window.filing.open(path)
    image = QImage(WIDE, HIGH, QImage.Format.Format_RGB32)
    image.fill(QColor("#808080"))
    image.save(str(tmp_path / "car.png"))
    return path


def layer(window):
    return window.centre.photo.layer


def test_a_level_photo_is_scaled_by_its_two_points():
    place = to_car(Photo.model_validate(LEVEL)).map(QPointF(300.0, 200.0))
    assert (place.x(), place.y()) == (pytest.approx(500.0), pytest.approx(500.0))


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_tilted_photo_is_levelled_whichever_way_the_line_was_picked(way):
    ends = {
        "level_start": {"right": 400.0, "down": 200.0},
        "level_end": {"right": 400 + 200 * way, "down": 200 + way},
    }
    mapped = to_car(Photo.model_validate(LEVEL | ends))
    start, end = mapped.map(QPointF(0.0, 0.0)), mapped.map(QPointF(200.0, 1.0))
    assert end.y() == pytest.approx(start.y(), abs=1e-9)
    assert end.x() > start.x()


def test_squaring_again_finds_the_same_pixels():
    photo = Photo.model_validate(LEVEL)
    mapped = to_car(photo)
    pixels = ((200.0, 350.0), (600.0, 340.0), (0.0, 10.0), (700.0, 10.0))
    picked = [(place.x(), place.y()) for place in (mapped.map(QPointF(*each)) for each in pixels)]
    again = squared(photo, [*picked, (10.0, 20.0)], 1200.0)
    assert (again.second.right, again.second.down) == (pytest.approx(600.0), pytest.approx(340.0))
    assert (again.at.x, again.at.z, again.distance) == (10.0, 20.0, 1200.0)


def test_points_that_coincide_square_nothing():
    with pytest.raises(InputError, match="too close"):
        squared(Photo.model_validate(LEVEL), [(0.0, 0.0)] * 5, 500.0)


@pytest.mark.parametrize(
    "name", ["../car.png", "/etc/passwd", "a/b.png", "c:\\x.png", "..", "car.png/", "x\x00.png"]
)
def test_a_car_can_name_no_file_elsewhere(name):
    with pytest.raises(ValueError, match="path"):
        Photo.model_validate(LEVEL | {"path": name})


def test_a_link_to_elsewhere_is_refused(tmp_path):
    (tmp_path / "cars").mkdir()
    (tmp_path / "secret.png").write_bytes(b"x")
    (tmp_path / "cars" / "car.png").symlink_to(tmp_path / "secret.png")
    with pytest.raises(InputError, match="beside"):
        photo_file(tmp_path / "cars" / "own.toml", "car.png")


def test_a_car_without_a_file_has_no_place_for_a_photo(window):
    window.menus.actions["load_photo"].trigger()
    assert "Save the car first" in window.notice.words.text()


@pytest.fixture
def shown(window, own_car, qtbot):
    """The picture under the sketch, read."""
    window.photos.load(str(own_car.parent / "car.png"))
    qtbot.waitUntil(lambda: layer(window).is_shown)


def test_a_photo_is_loaded_saved_by_its_name_and_taken_away(window, session, own_car, shown):
    window.menus.actions["save"].trigger()
    assert load_car(own_car).photo.path == "car.png"
    window.menus.actions["remove_photo"].trigger()
    assert not layer(window).is_shown
    session.undo_stack.undo()
    assert layer(window).is_shown


def test_a_photo_from_elsewhere_is_refused_in_words(window, session, own_car, tmp_path_factory):
    other = tmp_path_factory.mktemp("other") / "car.png"
    other.write_bytes((own_car.parent / "car.png").read_bytes())
    window.photos.load(str(other))
    assert "copy it there" in window.notice.words.text()
    assert session.work.car.document.photo is None


@pytest.mark.parametrize("content", [b"", b"no picture", b"\x89PNG\r\n\x1a\n"])
def test_a_file_that_is_no_picture_is_refused_in_words(window, session, own_car, content):
    (own_car.parent / "car.png").write_bytes(content)
    window.photos.load(str(own_car.parent / "car.png"))
    assert "no picture" in window.notice.words.text()
    assert session.work.car.document.photo is None


def test_a_photo_that_is_gone_is_said_once_and_the_window_goes_on(window, session, shown, qtbot):
    session.edit("car.photo.path", "gone.png", "other photo")
    qtbot.waitUntil(lambda: "gone.png" in window.notice.words.text())
    assert not layer(window).is_shown


def test_a_photo_that_is_taken_away_while_it_is_read_is_not_shown(window, session, own_car, qtbot):
    window.photos.load(str(own_car.parent / "car.png"))
    session.edit("car.photo", None, "take away")
    qtbot.waitUntil(lambda: not layer(window)._runs)
    assert not layer(window).is_shown


def test_the_photo_is_under_the_side_view_only(window, shown):
    window.menus.actions["plan_view"].trigger()
    assert not layer(window).is_shown
    window.menus.actions["side_view"].trigger()
    assert layer(window).is_shown


def click(qtbot, window, place):
    """Clicks at a place in the car."""
    view = window.centre.sketch
    qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, pos=view.mapFromScene(*place))


def test_a_photo_is_squared_by_five_clicks_and_a_distance(window, session, shown, dialog, qtbot):
    window.menus.actions["square_photo"].trigger()
    for place in ((100.0, 900.0), (1300.0, 900.0), (100.0, 950.0), (1200.0, 950.0), (0.0, 900.0)):
        click(qtbot, window, place)
    asked = dialog(QInputDialog)
    asked.setDoubleValue(1500.0)
    asked.accept()
    assert session.work.car.document.photo.distance == 1500.0
    assert session.undo_stack.undoText() == "square the photo"


def test_a_point_is_picked_onto_the_field_that_is_looked_at(window, session, field, qtbot):
    field("car.hoops.main_top.z")
    window.menus.actions["pick_point"].trigger()
    click(qtbot, window, (1600.0, 1000.0))
    top, pixel = session.work.car.document.hoops.main_top, window.centre.sketch.unit
    assert (top.x, top.z) == (pytest.approx(1600.0, abs=pixel + 1), pytest.approx(1000.0, abs=pixel + 1))
    assert session.undo_stack.count() == 1


def test_a_point_of_a_line_is_picked_too(window, session, field, qtbot):
    field("car.footwell.roof.0.1")
    before = session.work.car.document.footwell.roof
    window.menus.actions["pick_point"].trigger()
    click(qtbot, window, (before[0][0] - 20.0, before[0][1] + 20.0))
    after = session.work.car.document.footwell.roof
    assert after[0] != before[0]
    assert after[1:] == before[1:]


def test_without_a_point_in_the_worksheet_picking_says_so(window, field):
    field("driver.measurements.stature")
    window.menus.actions["pick_point"].trigger()
    assert "line of a point" in window.notice.words.text()
