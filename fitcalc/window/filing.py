"""Documents opened and saved by a person: which kind a file is, and which file a document belongs in."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QFileDialog, QWidget

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.fields import Document
from fitcalc.documents.samples import sample_folder
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import TELLING, load, read_text, save
from fitcalc.errors import InputError
from fitcalc.window.preferences import with_recent
from fitcalc.window.session import Session
from fitcalc.window.work import KINDS, Held, held, with_car, with_driver, with_occupant

FILTER = "fitcalc files (*.toml);;All files (*)"
NOUNS: dict[type, str] = {Car: "car", Driver: "driver", Setup: "rework"}


def read_document(path: Path) -> Document:
    """The car, driver or rework in a file, whichever it is.

    Raises:
        InputError: it can't be read, or is none of them.
    """
    return load(_kind_of(path), path)


def _kind_of(path: Path) -> type[Document]:
    try:
        names = tomllib.loads(read_text(path)).keys()
    except ValueError:
        return Car
    telling = [KINDS[kind] for kind, section in TELLING.items() if section in names]
    return telling[0] if telling else Setup


class Filing(QObject):
    """Opens and saves for one session; asks for a name where there is none."""

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._window = session, window

    def ask_open(self) -> None:
        """Asks which file to open."""
        dialog = self._dialog("Open a car, driver or rework")
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self.open)
        dialog.open()

    def open(self, name: str | Path) -> None:
        """Opens a file: another car, a further driver, or a rework of this car for this driver."""
        path = Path(name)
        try:
            document = read_document(path)
        except InputError as error:
            self._session.said.emit(str(error))
            return
        opened = held(document)
        self._show(opened, f"open {path.name}")
        if sample_folder() not in path.resolve().parents:
            self._session.mark_saved(opened, path)
            self._session.prefer(recent=with_recent(self._session.preferences.recent, path))
        self._session.files_changed.emit()

    def save_all(self, then: Callable[[], None] | None = None) -> None:
        """Saves every changed document, then goes on; stops where a person calls it off or a disk refuses."""
        waiting = self._session.unsaved()
        if not waiting:
            if then:
                then()
            return
        first = waiting[0]
        path = self._session.paths.get(first.key)
        if path is None:
            self.ask_name(first, lambda: self.save_all(then))
        elif self.write(first, path):
            self.save_all(then)

    def ask_name(self, document: Held[Any], then: Callable[[], None] | None = None) -> None:
        """Asks where to save a document, saves it there, and goes on."""
        dialog = self._dialog(f"Save the {self.describe(document)}")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("toml")
        dialog.selectFile(self._session.paths.get(document.key, Path(self._file_name(document))).name)

        def chosen(name: str) -> None:
            if self.write(document, Path(name)) and then:
                then()

        dialog.fileSelected.connect(chosen)
        dialog.open()

    def write(self, document: Held[Any], path: Path) -> bool:
        """Saves one document; says so where that can't be done."""
        try:
            save(document.document, path)
        except InputError as error:
            self._session.said.emit(str(error))
            return False
        self._session.mark_saved(document, path)
        self._session.prefer(recent=with_recent(self._session.preferences.recent, path))
        return True

    def describe(self, document: Held[Any]) -> str:
        """A document in words, as in "rework for Robin"."""
        noun = NOUNS[type(document.document)]
        return (
            f"rework for {self._owner(document)}" if noun == "rework" else f"{noun} {document.document.name}"
        )

    def _owner(self, document: Held[Any]) -> str:
        owners = [
            each.driver.document.name
            for each in self._session.work.occupants
            if each.setup.key == document.key
        ]
        return owners[0] if owners else ""

    def _file_name(self, document: Held[Any]) -> str:
        words = self.describe(document).replace("(invented)", "").split()
        return "_".join("".join(filter(str.isalnum, word)) for word in words).lower() + ".toml"

    def _show(self, opened: Held[Any], text: str) -> None:
        work = self._session.work
        match opened.document:
            case Car():
                self._session.push(text, with_car(work, opened))
            case Driver():
                self._session.push(text, with_driver(work, opened))
            case _:
                changed = type(work.occupant)(work.occupant.driver, opened)
                self._session.push(text, with_occupant(work, changed))

    def _dialog(self, title: str) -> QFileDialog:
        dialog = QFileDialog(self._window, title)
        dialog.setNameFilter(FILTER)
        recent = self._session.preferences.recent
        if recent:
            dialog.setDirectory(str(Path(recent[0]).parent))
        dialog.finished.connect(dialog.deleteLater)
        return dialog
