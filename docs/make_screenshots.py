"""Writes the pictures of the window in docs/screens: python docs/make_screenshots.py [width height folder].

Each state is reached by what a person does or by the edit that it would make. The photo is drawn by this script. The
pictures are of 256 colours, so that they stay small.
"""
# ruff: noqa: E402 - the folders must be set, and the core be loaded, before Qt is

import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"
HOME = tempfile.mkdtemp()
os.environ.update(dict.fromkeys(("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME"), HOME))
sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

import numpy as np
from PIL import Image

from fitcalc.documents.samples import sample_path
from fitcalc.window.start import load_core

load_core()

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QLinearGradient, QMouseEvent, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QApplication, QWidget

from fitcalc.documents.photo import Photo
from fitcalc.present.picture import Bounds, Handle
from fitcalc.window.main_window import MainWindow
from fitcalc.window.program import open_window
from fitcalc.window.sketch.view import SketchView

MM_PER_PIXEL, HIGH = 2.5, 620
COMMON = 100


def send(
    view: SketchView, kind: QEvent.Type, at: QPoint, buttons: Qt.MouseButton = Qt.MouseButton.LeftButton
) -> None:
    """One mouse event on the sketch."""
    button = Qt.MouseButton.NoButton if kind == QEvent.Type.MouseMove else Qt.MouseButton.LeftButton
    place = QPointF(at)
    whole = view.viewport().mapToGlobal(place)
    keys = Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(view.viewport(), QMouseEvent(kind, place, whole, button, buttons, keys))


def first_start(window: MainWindow) -> None:
    """As the program opens."""


def side(window: MainWindow) -> None:
    """After the least rework, from the side."""
    from fitcalc.fit.rework import fit

    work = window.session.work
    window.commands._use_fit(fit(work.car.document, work.driver))


def plan(window: MainWindow) -> None:
    """From above."""
    side(window)
    window.commands.plan_view()


def pedals(window: MainWindow) -> None:
    """The pads, looking forward."""
    side(window)
    window.commands.pad_view()


def drag(window: MainWindow) -> None:
    """The back of the seat held half way."""
    view = window.centre.sketch
    handle = next(each for each in view.picture.about("setup.recline") if isinstance(each, Handle))
    start = view.mapFromScene(*handle.at)
    send(view, QEvent.Type.MouseButtonPress, start)
    for step in range(1, 11):
        send(view, QEvent.Type.MouseMove, start + QPoint(2 * step, step))


def dark(window: MainWindow) -> None:
    """Dark, with a finding chosen."""
    window.session.prefer(theme="dark")
    window.session.finish_evaluation()
    window.findings.refresh()
    window.findings.list.setCurrentIndex(window.findings.model.index(4))


def large_text(window: MainWindow) -> None:
    """Text at 200 %."""
    window.session.prefer(text_size=200)


def inches(window: MainWindow) -> None:
    """Inches and pounds, after the least rework, with the ruler."""
    side(window)
    window.session.prefer(inches=True, pounds=True)
    window.centre.ruler.setChecked(True)
    view = window.centre.sketch
    ends = [view.mapFromScene(*place) for place in ((0.0, 280.0), (900.0, 700.0))]
    send(view, QEvent.Type.MouseButtonPress, ends[0])
    send(view, QEvent.Type.MouseMove, ends[1], Qt.MouseButton.NoButton)


def missing_data(window: MainWindow) -> None:
    """A car and driver of whom little is known."""
    session = window.session
    for part in ("head_restraint", "hoops", "harness", "cockpit", "sight_edges"):
        session.edit(f"car.{part}", None, "take away")
    for name in ("knee_height", "buttock_knee", "sitting_height", "upper_arm", "foot_length", "hip_breadth"):
        session.edit(f"driver.measurements.{name}", None, "take away")
    session.finish_evaluation()
    window.findings.refresh()
    rows = range(window.findings.model.rowCount())
    lacking = [row for row in rows if window.findings.model.index(row).data(Qt.ItemDataRole.UserRole).missing]
    window.findings.list.setCurrentIndex(window.findings.model.index(lacking[0]))


def failing(window: MainWindow) -> None:
    """The worst finding chosen: the sketch shows its evidence."""
    window.session.finish_evaluation()
    window.findings.refresh()
    window.findings.list.setCurrentIndex(window.findings.model.index(3))


def photo(window: MainWindow) -> None:
    """A photo under the side view."""
    session = window.session
    file = Path(HOME) / "own.toml"
    file.write_text(sample_path("hillclimb").read_text(encoding="utf-8"), encoding="utf-8")
    window.filing.open(file)
    frame = window.centre.sketch.picture.frame
    draw_photo(Path(HOME) / "car.png", frame)
    left = int(frame[0] - 150)
    bottom = {"right": 0.0, "down": HIGH - 60.0}
    end = {"right": 800.0, "down": HIGH - 60.0}
    given = {
        "path": "car.png", "first": bottom, "second": end, "distance": 800.0 * MM_PER_PIXEL, "level_start": bottom,
        "level_end": end, "at": {"x": float(left), "z": 0.0}, "opacity": 85.0,
    }  # fmt: skip
    session.edit("car.photo", Photo.model_validate(given), "photo")
    while not window.centre.photo.layer.is_shown:
        QApplication.processEvents()


def two_drivers(window: MainWindow) -> None:
    """A second driver laid over, and two rule sets side by side."""
    window.filing.open(sample_path("otto"))
    window.session.choose_driver(0)
    side(window)
    window.session.choose(overlaid=1, compared="student")


def draw_photo(path: Path, frame: Bounds) -> None:
    """Something like a photo of the bare car: a tube frame before a wall."""
    wide = int((frame[2] - frame[0] + 300) / MM_PER_PIXEL)
    image = QImage(wide, HIGH, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    wall = QLinearGradient(0, 0, 0, HIGH)
    wall.setColorAt(0.0, QColor("#c9c2b4"))
    wall.setColorAt(0.88, QColor("#a79f90"))
    wall.setColorAt(0.9, QColor("#77736b"))
    wall.setColorAt(1.0, QColor("#5e5b55"))
    painter.fillRect(image.rect(), wall)
    low = HIGH - 60

    def at(x: float, z: float) -> QPointF:
        return QPointF((x - frame[0] + 150) / MM_PER_PIXEL, low - z / MM_PER_PIXEL)

    painter.setPen(QPen(QColor("#3d4a33"), 12, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    lines = (
        ((-150, 30), (1500, 30)), ((-150, 30), (-150, 420)), ((-150, 420), (170, 470)), ((170, 470), (860, 720)),
        ((860, 720), (860, 30)), ((1640, 1080), (1640, 30)), ((1640, 1080), (1950, 500)), ((860, 30), (170, 470)),
        ((1500, 30), (1800, 640)),
    )  # fmt: skip
    for start, end in lines:
        painter.drawLine(at(*start), at(*end))
    for x in (0, 2340):
        painter.setBrush(QColor("#26231f"))
        painter.drawEllipse(at(x, 240), 260 / MM_PER_PIXEL, 260 / MM_PER_PIXEL)
        painter.setBrush(QColor("#8d8a84"))
        painter.drawEllipse(at(x, 240), 140 / MM_PER_PIXEL, 140 / MM_PER_PIXEL)
    painter.setBrush(QColor("#7a3b2e"))
    painter.drawPolygon(QPolygonF([at(*each) for each in ((1000, 60), (1290, 40), (1680, 560), (1590, 580))]))
    painter.fillRect(QRectF(0, HIGH - 4, wide, 4), QColor("#444444"))
    painter.end()
    image.save(str(path))


def trade_map(window: MainWindow) -> QWidget:
    """Seat against the brake pedal's bar, about the least rework."""
    side(window)
    return study(window, window.desk.trade)


def certainty(window: MainWindow) -> QWidget:
    """What tape and body leave open."""
    side(window)
    return study(window, window.desk.certainty)


def search(window: MainWindow) -> QWidget:
    """The least work that passes, and the next best."""
    return study(window, window.desk.search)


def study(window: MainWindow, ask: Callable[[], None]) -> QWidget:
    """Asks for a study and waits for its window."""
    ask()
    while window.jobs.is_busy:
        QApplication.processEvents()
    return next(iter(window.desk.open.values()))


STATES = (
    first_start, side, plan, pedals, drag, dark, large_text, inches, missing_data, failing, photo, two_drivers,
    trade_map, certainty, search,
)  # fmt: skip


def keep(image: QImage, path: Path) -> None:
    """Writes the picture in 256 colours: its commonest ones, and others so that no colour is far from one of them."""
    plain = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(plain.constBits(), dtype=np.uint8).reshape(plain.height(), plain.bytesPerLine())
    whole = Image.fromarray(rows[:, : 3 * plain.width()].reshape(plain.height(), plain.width(), 3))
    counted = sorted(whole.getcolors(whole.width * whole.height), reverse=True)
    common = [part for _, colour in counted[:COMMON] for part in colour]
    spread = whole.quantize(256 - COMMON, method=Image.Quantize.MAXCOVERAGE).getpalette()
    table = Image.new("P", (1, 1))
    table.putpalette(common + spread)
    whole.quantize(palette=table, dither=Image.Dither.NONE).save(path, optimize=True)


def picture_of(state: Callable[[MainWindow], QWidget | None], size: tuple[int, ...], folder: Path) -> Path:
    """Opens a window, brings it into a state, and keeps what it looks like."""
    application = QApplication.instance()
    window = open_window(application, [])
    window.session.prefer(theme="light", text_size=100, inches=False, pounds=False)
    window.resize(*size)
    window._share_out()
    window.show()
    window.session.finish_evaluation()
    shown = state(window) or window
    if state is not drag:
        window.session.finish_evaluation()
    window.findings.refresh()
    for _ in range(4):
        application.processEvents()
    path = folder / f"{state.__name__}.png"
    keep(shown.grab().toImage(), path)
    window._close_now()
    window.deleteLater()
    application.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    return path


def main() -> None:
    """Every state, at 1280 x 800 unless told otherwise."""
    size = tuple(int(each) for each in sys.argv[1:3]) or (1280, 800)
    folder = Path(sys.argv[3]) if len(sys.argv) > 3 else Path(__file__).parent / "screens"
    folder.mkdir(parents=True, exist_ok=True)
    application = QApplication(sys.argv[:1])
    for state in STATES:
        path = picture_of(state, size, folder)
        print(f"{path.name}: {path.stat().st_size // 1000} kB")
    application.quit()


if __name__ == "__main__":
    main()
