"""Documents opened and saved by a person: which kind a file is, and which file a document belongs in."""

import tomllib
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QWidget

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort, is_effort
from fitcalc.documents.fields import Document
from fitcalc.documents.samples import sample_folder
from fitcalc.documents.setup import Setup
from fitcalc.documents.stamp import Stamp, is_touched
from fitcalc.documents.store import TELLING, load_stamped, read_text, save
from fitcalc.errors import InputError
from fitcalc.window.changed_files import Known, has_changed
from fitcalc.window.preferences import with_recent
from fitcalc.window.session import Session
from fitcalc.window.work import KINDS, Held, held, with_car, with_content, with_driver, with_occupant

if TYPE_CHECKING:
    from PySide6.QtWidgets import QFileDialog

FILTER = "fitcalc files (*.toml);;All files (*)"
NOUNS: dict[type, str] = {Car: "car", Driver: "driver", Setup: "rework", Effort: "minutes for work"}


def read_document(path: Path) -> tuple[Document, Stamp]:
    """The car, driver, rework or minutes for work in a file, whichever it is, and the file's stamp.

    Raises:
        InputError: it can't be read, or is none of them.
    """
    return load_stamped(_kind_of(path), path)


def _nothing() -> None:
    """What follows where a person was only told."""


def _kind_of(path: Path) -> type[Document]:
    try:
        table = tomllib.loads(read_text(path))
    except ValueError:
        return Car
    telling = [KINDS[kind] for kind, section in TELLING.items() if section in table]
    return telling[0] if telling else Effort if is_effort(table) else Setup


class Filing(QObject):
    """Opens and saves for one session; asks for a name where there is none."""

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._window = session, window
        self._told: dict[int, int] = {}

    def ask_open(self) -> None:
        """Asks which file to open."""
        dialog = self._dialog("Open a car, driver, rework or minutes for work")
        dialog.setFileMode(dialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self.open)
        dialog.open()

    def open(self, name: str | Path) -> None:
        """Opens a file: another car, a further driver, a rework of this car for this driver, or what work costs."""
        path = Path(name)
        try:
            document, stamp = read_document(path)
        except InputError as error:
            self._session.said.emit(str(error))
            return
        opened = held(document)
        self._show(opened, f"open {path.name}")
        if sample_folder() not in path.resolve().parents:
            self._session.mark_saved(opened, Known(path, stamp))
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
        file, go_on = self._session.files.get(first.key), partial(self.save_all, then)
        if file is None:
            self.ask_name(first, go_on)
        elif has_changed(file):
            self._ask_whose(first, file, go_on)
        elif self.write(first, file.path, file.stamp):
            go_on()

    def ask_name(self, document: Held[Any], then: Callable[[], None] | None = None, name: str = "") -> None:
        """Asks where to save a document, saves it there, and goes on; `name` is what is suggested."""
        dialog = self._dialog(f"Save the {self.describe(document)}")
        dialog.setAcceptMode(dialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix("toml")
        path = self._session.path_of(document) or Path(self._file_name(document))
        dialog.selectFile(name or path.name)

        def chosen(name: str) -> None:
            if self.write(document, Path(name)) and then:
                then()

        dialog.fileSelected.connect(chosen)
        dialog.open()

    def write(self, document: Held[Any], path: Path, expected: Stamp | None = None) -> bool:
        """Saves one document; says so where that can't be done, or where the file is not as expected."""
        try:
            stamp = save(document.document, path, expected)
        except InputError as error:
            self._session.said.emit(str(error))
            return False
        self._session.mark_saved(document, Known(path, stamp))
        self._session.prefer(recent=with_recent(self._session.preferences.recent, path))
        return True

    def look_for_changes(self) -> None:
        """Tells of a file that somebody else has written to; of each such state once."""
        for document in self._session.work.documents():
            file = self._session.files.get(document.key)
            if file is None or not is_touched(file.path, file.stamp) or not has_changed(file):
                continue
            now = file.path.stat().st_mtime_ns
            if self._told.get(document.key) != now:
                self._told[document.key] = now
                self._ask_whose(document, file, _nothing)
                return

    def describe(self, document: Held[Any]) -> str:
        """A document in words, as in "rework for Robin"."""
        noun = NOUNS[type(document.document)]
        whose = f"for {self._owner(document)}" if noun == "rework" else document.document.name
        return f"{noun} {whose}".strip()

    def _ask_whose(self, document: Held[Any], file: Known, then: Callable[[], None]) -> None:
        """Says that a file was changed, and offers what can be done about it."""
        offers = (
            ("Keep mine", partial(self._keep_mine, document.key, then)),
            ("Take theirs", partial(self._take_theirs, document.key, file.path, then)),
            ("Save as…", partial(self._save_elsewhere, document.key, then)),
        )
        told = f"{file.path.name} was changed by another program or window since it was opened."
        self._session.asked.emit(told, offers)

    def _keep_mine(self, key: int, then: Callable[[], None]) -> None:
        """Writes over what the other wrote, which stays beside it under the name with ~."""
        document, file = self._now(key), self._session.files[key]
        if document is not None and self.write(document, file.path):
            then()

    def _take_theirs(self, key: int, path: Path, then: Callable[[], None]) -> None:
        """Reads the file again, as one undo step."""
        try:
            content, stamp = read_document(path)
        except InputError as error:
            self._session.said.emit(str(error))
            return
        document = self._now(key)
        if document is None or type(content) is not type(document.document):
            self._session.said.emit(f"{path.name} holds another kind of file now: open it by itself.")
            return
        self._session.push(f"take {path.name} again", with_content(self._session.work, key, content))
        self._session.mark_saved(Held(key, content), Known(path, stamp))
        then()

    def _save_elsewhere(self, key: int, then: Callable[[], None]) -> None:
        document, path = self._now(key), self._session.files[key].path
        if document is not None:
            self.ask_name(document, then, f"{path.stem}_mine{path.suffix}")

    def _now(self, key: int) -> Held[Any] | None:
        """A document as it is now; None where it is worked on no more."""
        return next((each for each in self._session.work.documents() if each.key == key), None)

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
            case Effort():
                self._session.push(text, replace(work, effort=opened))
            case _:
                changed = type(work.occupant)(work.occupant.driver, opened)
                self._session.push(text, with_occupant(work, changed))

    def _dialog(self, title: str) -> "QFileDialog":
        from PySide6.QtWidgets import QFileDialog

        dialog = QFileDialog(self._window, title)
        dialog.setNameFilter(FILTER)
        recent = self._session.preferences.recent
        if recent:
            dialog.setDirectory(str(Path(recent[0]).parent))
        dialog.finished.connect(dialog.deleteLater)
        return dialog
