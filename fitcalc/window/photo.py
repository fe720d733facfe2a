"""The photo under the sketch: which file it is, and how its pixels lie in the car's side view."""

from math import atan, atan2, cos, hypot, pi, sin
from os.path import realpath
from pathlib import Path

from PySide6.QtCore import QObject, QPointF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QImageIOHandler, QImageReader, QPixmap, QTransform
from PySide6.QtWidgets import QGraphicsPixmapItem, QGraphicsScene

from fitcalc.documents.photo import LARGEST_PX, Photo, Place, Spot
from fitcalc.errors import InputError
from fitcalc.present.picture import XY, Bounds
from fitcalc.window.background import Run

LARGEST_BYTES = 40_000_000
MOST_SHOWN = 2400
"""Most pixels of the longer side that are kept in memory: more can't be seen on a screen."""
BELOW_ALL = -1e6
MOST_PIXELS = 64_000_000
"""Most pixels that are unpacked: a file of a few kB can promise any number of them."""
FORMATS = (b"png", b"jpeg", b"webp", b"bmp")
"""What is read as a photo: nothing that could name further files, as SVG can."""
PICTURES = "Pictures (*.png *.jpg *.jpeg *.webp *.bmp);;All files (*)"


def photo_file(car_file: Path | None, name: str) -> Path:
    """The file of a photo, which lies beside the car's file.

    Raises:
        InputError: the car has no file yet, or the photo lies elsewhere.
    """
    if car_file is None:
        raise InputError("photo", "has no place", "it lies beside the car's file", "save the car first")
    file = car_file.absolute().parent / name
    if Path(realpath(file)).parent != Path(realpath(file.parent)):
        raise InputError("photo.path", name, "must be a file beside the car's file", "copy the photo there")
    return file


def photo_size(file: Path) -> QSize:
    """A photo's size in pixels as its head says, upright.

    Raises:
        InputError: there is no picture that can be read, or it is too large.
    """
    reader = _reader(file)
    is_turned = bool(reader.transformation() & QImageIOHandler.Transformation.TransformationRotate90)
    return reader.size().transposed() if is_turned else reader.size()


def read_photo(file: Path) -> tuple[QImage, QSize]:
    """A photo, made smaller where it is large, and its own size in pixels.

    Raises:
        InputError: there is no picture that can be read, or it is too large.
    """
    reader = _reader(file)
    size = reader.size()
    if max(size.width(), size.height()) > MOST_SHOWN:
        share = MOST_SHOWN / max(size.width(), size.height())
        reader.setScaledSize(QSize(round(share * size.width()), round(share * size.height())))
    image = reader.read()
    if image.isNull():
        raise InputError("photo.path", file.name, "is no picture that can be read", "use a PNG or JPEG")
    return image, photo_size(file)


def _reader(file: Path) -> QImageReader:
    if not file.is_file():
        raise InputError("photo.path", file.name, "is not there", f"put it into {file.parent}")
    if file.stat().st_size > LARGEST_BYTES:
        raise InputError("photo.path", file.name, f"must be {LARGEST_BYTES // 1_000_000} MB or less")
    reader = QImageReader(str(file))
    reader.setDecideFormatFromContent(True)
    reader.setAutoTransform(True)
    size = reader.size() if reader.format().data() in FORMATS else QSize()
    if not size.isValid() or max(size.width(), size.height()) > LARGEST_PX:
        raise InputError("photo.path", file.name, "is no picture that can be read", "use a PNG or JPEG")
    if size.width() * size.height() > MOST_PIXELS:
        allowed = f"must have {MOST_PIXELS // 1_000_000} million pixels or less"
        raise InputError("photo.path", file.name, allowed, "make it smaller")
    return reader


def laid_out(name: str, size: QSize, frame: Bounds) -> Photo:
    """A photo that is not squared yet, laid over the whole drawing."""
    left, bottom, right, _ = frame
    low = float(size.height() - 1)
    start, end = Spot(right=0.0, down=low), Spot(right=float(size.width() - 1), down=low)
    distance = min(max(right - left, 50.0), 6000.0)
    place = Place(x=left, z=bottom)
    return Photo(
        path=name, first=start, second=end, distance=distance, level_start=start, level_end=end, at=place
    )


def to_car(photo: Photo) -> QTransform:
    """From pixels of the photo to x and z of the car, mm."""
    a, b = photo.first, photo.second
    scale = photo.distance / hypot(b.right - a.right, b.down - a.down)
    tilt = _tilt(photo)
    c, s = scale * cos(tilt), scale * sin(tilt)
    dx = photo.at.x - (c * a.right - s * a.down)
    dz = photo.at.z - (-s * a.right - c * a.down)
    return QTransform(c, -s, -s, -c, dx, dz)


def squared(photo: Photo, picked: list[XY], distance: float) -> Photo:
    """The photo squared by two known points, two on a level line, and the place of the first one in the car.

    Raises:
        InputError: points coincide.
    """
    back, _ = to_car(photo).inverted()
    pixels = (back.map(QPointF(*point)) for point in picked[:4])
    spots = [Spot(right=pixel.x(), down=pixel.y()) for pixel in pixels]
    names = ("first", "second", "level_start", "level_end")
    place = {"x": picked[4][0], "z": picked[4][1]}
    given = dict(photo) | dict(zip(names, spots, strict=True)) | {"distance": distance, "at": place}
    try:
        return Photo.model_validate(given)
    except ValueError:
        raise InputError(
            "photo", "can't be squared", "the points lie too close together", "pick them anew"
        ) from None


class PhotoLayer(QObject):
    """The photo as the lowest item of the sketch; it is read off the window's thread.

    Signals:
        refused: the sentence on why it can't be read.
    """

    refused = Signal(str)

    def __init__(self, scene: QGraphicsScene, parent: QObject) -> None:
        super().__init__(parent)
        self._item = QGraphicsPixmapItem()
        self._item.setZValue(BELOW_ALL)
        self._item.setVisible(False)
        self._item.setTransformationMode(Qt.TransformationMode.SmoothTransformation)
        scene.addItem(self._item)
        self._runs: dict[Path, Run] = {}
        self._file: Path | None = None
        self._wanted: tuple[Photo, Path] | None = None
        self._full = QSize(1, 1)

    @property
    def is_shown(self) -> bool:
        """Whether a photo is seen."""
        return self._item.isVisible()

    def hide(self) -> None:
        """Shows no photo."""
        self._wanted = None
        self._item.setVisible(False)

    def show(self, photo: Photo, file: Path) -> None:
        """Shows a photo where it is squared to, as soon as it is read."""
        self._wanted = photo, file
        if file == self._file:
            self._place(photo)
        elif file not in self._runs:
            self._item.setVisible(False)
            run = self._runs[file] = Run(lambda _tell: read_photo(file))
            run.report.finished.connect(self._take)
            run.start()

    def wait(self) -> None:
        """Waits until no photo is being read."""
        self._wanted = None
        for run in self._runs.values():
            run.wait()

    def _take(self, run: Run, found: tuple[QImage, QSize] | None, error: Exception | None) -> None:
        run.wait()
        file = next(file for file, each in self._runs.items() if each is run)
        del self._runs[file]
        if self._wanted is None or self._wanted[1] != file:
            return
        if isinstance(error, InputError):
            self.refused.emit(str(error))
        elif error is not None:
            raise error
        elif found is not None:
            image, self._full = found
            self._item.setPixmap(QPixmap.fromImage(image))
            self._file = file
            self._place(self._wanted[0])

    def _place(self, photo: Photo) -> None:
        pixels = self._full.width() / max(1, self._item.pixmap().width())
        self._item.setTransform(QTransform.fromScale(pixels, pixels) * to_car(photo))
        self._item.setOpacity(photo.opacity / 100.0)
        self._item.setVisible(True)


def _tilt(photo: Photo) -> float:
    """How far the level line falls to the right on the photo, as an angle up, rad; picked in either direction."""
    start, end = photo.level_start, photo.level_end
    angle = atan2(-(end.down - start.down), end.right - start.right)
    return angle if abs(angle) <= pi / 2 else atan(-(end.down - start.down) / (end.right - start.right))
