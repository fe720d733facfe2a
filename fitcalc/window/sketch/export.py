"""A sketch as an image file."""

from pathlib import Path

from PySide6.QtCore import QByteArray, QRect, QSize, Qt
from PySide6.QtGui import QImage, QImageWriter, QPainter
from PySide6.QtSvg import QSvgGenerator

from fitcalc.errors import InputError
from fitcalc.present.picture import Picture
from fitcalc.window.sketch.view import SketchView


def sketch_png(picture: Picture, path: Path, size: tuple[int, int], dark: bool = False) -> None:
    """Writes a picture, fitted to a size in pixels.

    Raises:
        InputError: the file could not be written.
    """
    view = _view_of(picture, size, dark)
    image = QImage(QSize(*size), QImage.Format.Format_RGB32)
    painter = QPainter(image)
    view.render(painter)
    painter.end()
    if not QImageWriter(str(path), QByteArray(b"PNG")).write(image):
        raise InputError(str(path), "", "could not be written", "choose another folder")


def sketch_svg(picture: Picture, path: Path, size: tuple[int, int], dark: bool = False) -> None:
    """Writes a picture as lines and letters, fitted to a size in pixels.

    Raises:
        InputError: the file could not be written.
    """
    generator = QSvgGenerator()
    generator.setFileName(str(path))
    generator.setSize(QSize(*size))
    generator.setViewBox(QRect(0, 0, *size))
    generator.setTitle(picture.title)
    view, painter = _view_of(picture, size, dark), QPainter()
    if not painter.begin(generator):
        raise InputError(str(path), "", "could not be written", "choose another folder")
    view.render(painter)
    painter.end()


def _view_of(picture: Picture, size: tuple[int, int], dark: bool) -> SketchView:
    view = SketchView()
    view.setAttribute(Qt.WidgetAttribute.WA_DontShowOnScreen)
    view.resize(*size)
    view.show()
    view.set_dark(dark)
    view.show_picture(picture)
    view.fit()
    return view
