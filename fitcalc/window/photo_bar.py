"""The photo of the car that is worked on: shown under the side view, and how much of it is seen."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSlider, QWidget

from fitcalc.documents.photo import Photo
from fitcalc.errors import InputError
from fitcalc.present.picture import View
from fitcalc.window.photo import PhotoLayer, photo_file
from fitcalc.window.session import Session
from fitcalc.window.sketch.view import SketchView


class PhotoBar(QWidget):
    """The slider for the photo's opacity; hidden where there is no photo."""

    def __init__(self, session: Session, sketch: SketchView, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._sketch, self._refused = session, sketch, ""
        self.layer = PhotoLayer(sketch.scene(), self)
        self.opacity = QSlider(Qt.Orientation.Horizontal, self)
        self.opacity.setRange(0, 100)
        self.opacity.setMaximumWidth(110)
        self.opacity.setAccessibleName("opacity of the photo")
        name = QLabel("pho&to", self)
        name.setBuddy(self.opacity)
        line = QHBoxLayout(self)
        line.setContentsMargins(6, 2, 6, 2)
        line.addWidget(name)
        line.addWidget(self.opacity)
        self.opacity.valueChanged.connect(self._change)
        self.opacity.sliderReleased.connect(session.end_gesture)
        self.layer.refused.connect(self._tell)
        self.hide()

    def refresh(self, view: View) -> None:
        """Shows the car's photo, in the view that it was taken in."""
        photo: Photo | None = self._session.work.car.document.photo
        self.setVisible(photo is not None)
        if photo is None or view != "side":
            self.layer.hide()
            return
        was = self.opacity.blockSignals(True)
        self.opacity.setValue(round(photo.opacity))
        self.opacity.blockSignals(was)
        try:
            file = photo_file(self._session.path_of(self._session.work.car), photo.path)
            self.layer.show(photo, file)
            self._refused = "" if self.layer.is_shown else self._refused
        except InputError as error:
            self.layer.hide()
            self._tell(str(error))

    def _tell(self, sentence: str) -> None:
        """Says why the photo can't be seen, once for each reason."""
        if sentence != self._refused:
            self._refused = sentence
            self._session.said.emit(sentence)

    def _change(self, value: int) -> None:
        self._session.edit("car.photo.opacity", float(value), "photo opacity", gesture="car.photo.opacity")
