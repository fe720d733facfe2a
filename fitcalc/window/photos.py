"""What a person does with the photo: choose it, square it, and pick points from it."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject

from fitcalc.errors import InputError
from fitcalc.present.picture import AXES, XY
from fitcalc.window.drags import AXIS_NAMES
from fitcalc.window.photo import PICTURES, laid_out, photo_file, photo_size, squared
from fitcalc.window.work import at_ref, declared_for

if TYPE_CHECKING:
    from fitcalc.window.main_window import MainWindow

TO_SQUARE = (
    "Photo: click the first known point",
    "Photo: click the second known point",
    "Photo: click the start of something level",
    "Photo: click its end",
    "Drawing: click where the first known point is in the car",
)


class Photos(QObject):
    """Photo of one window."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window, self._session = window, window.session

    def ask_file(self) -> None:
        """Asks for a picture beside the car's file."""
        file = self._session.path_of(self._session.work.car)
        if file is None:
            self._session.said.emit("Save the car first: its photo lies beside the car's file.")
            return
        from PySide6.QtWidgets import QFileDialog

        dialog = QFileDialog(self._window, "A photo of the car, from its left", str(file.parent), PICTURES)
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self.load)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def load(self, name: str) -> None:
        """Lays a picture under the side view."""
        try:
            chosen = Path(name).absolute()
            file = photo_file(self._session.path_of(self._session.work.car), chosen.name)
            if file.parent != chosen.parent:
                raise InputError("photo.path", str(chosen), f"must lie in {file.parent}", "copy it there")
            size = photo_size(file)
            self._show_side()
            picture = self._window.centre.sketch.picture
            frame = picture.frame if picture else (0.0, 0.0, 2500.0, 1200.0)
            self._session.edit("car.photo", laid_out(file.name, size, frame), "photo")
        except InputError as error:
            self._session.said.emit(str(error))

    def square(self) -> None:
        """Asks for two known points, a level line and a place, then for the distance."""
        if self._session.work.car.document.photo is None:
            self._session.said.emit("There is no photo yet: load one first.")
            return
        self._show_side()
        self._window.centre.picker.ask(TO_SQUARE, self._ask_distance)

    def pick_point(self) -> None:
        """Takes the next click as the point that is looked at in the worksheet."""
        ref = self._point_ref(self._window.centre.looked_at)
        if not ref:
            self._session.said.emit("Go to the line of a point in the worksheet first.")
            return
        title = declared_for(ref).title
        self._window.centre.picker.ask(
            (f"Click where this is: {title}",), lambda points: self._use(ref, title, points[0]), snaps=False
        )

    def _ask_distance(self, points: list[XY]) -> None:
        photo = self._session.work.car.document.photo
        if photo is None:
            return
        shown = self._session.shown
        from PySide6.QtWidgets import QInputDialog

        dialog = QInputDialog(self._window)
        dialog.setWindowTitle("Square the photo")
        dialog.setInputMode(QInputDialog.InputMode.DoubleInput)
        dialog.setLabelText(f"Distance between the two known points, taped on the car, {shown.unit('mm')}")
        dialog.setDoubleDecimals(2)
        dialog.setDoubleRange(shown.value(50.0, "mm"), shown.value(6000.0, "mm"))
        dialog.setDoubleValue(shown.value(photo.distance, "mm"))
        dialog.doubleValueSelected.connect(lambda value: self._square(points, shown.stored(value, "mm")))
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _square(self, points: list[XY], distance: float) -> None:
        photo = self._session.work.car.document.photo
        try:
            if photo is not None:
                self._session.edit("car.photo", squared(photo, points, distance), "square the photo")
        except InputError as error:
            self._session.said.emit(str(error))

    def _use(self, ref: str, title: str, point: XY) -> None:
        axes = (AXIS_NAMES[axis] for axis in AXES[self._window.centre.view])
        picked = {axis: float(round(part)) for axis, part in zip(axes, point, strict=True)}
        try:
            self._session.edit(ref, self._changed(ref, picked), f"pick {title}")
        except InputError as error:
            self._session.said.emit(str(error))

    def _changed(self, ref: str, picked: dict[str, float]) -> Any:
        names, before = declared_for(ref).names, at_ref(self._session.work, ref)
        if not names:
            return picked["x"], picked.get("z", before[1])
        start = dict(before) if before is not None else dict.fromkeys(set(names) & set("xyz"), 0.0)
        return start | {axis: value for axis, value in picked.items() if axis in names}

    def _point_ref(self, ref: str) -> str:
        """The point that a ref names or lies in; empty where it is none."""
        while ref.count(".") > 0:
            try:
                declared, value = declared_for(ref), at_ref(self._session.work, ref)
            except InputError:
                return ""
            if {"x", "z"} <= set(declared.names) or (isinstance(value, tuple) and _is_pair(value)):
                return ref
            ref = ref.rpartition(".")[0]
        return ""

    def _show_side(self) -> None:
        if self._window.centre.view != "side":
            self._window.centre.show_view("side")


def _is_pair(value: tuple[Any, ...]) -> bool:
    return len(value) == 2 and all(isinstance(each, float | int) for each in value)
