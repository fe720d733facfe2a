"""Bench sheets and measuring worksheet for the bench, written off the window's thread."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from fitcalc.fit.progress import Progress
from fitcalc.window.results import AS_FOUND
from fitcalc.window.work import Work

if TYPE_CHECKING:
    from PySide6.QtWidgets import QFileDialog

    from fitcalc.paper.worksheet_file import Change
    from fitcalc.window.main_window import MainWindow

JUDGED, SURE = 0.1, 0.4
"""Parts of the work that are done when the rework is judged, and when its intervals and plots are known: design inference."""


class Paperwork(QObject):
    """What one window writes for the bench."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window, self._session = window, window.session

    def ask_sheets_folder(self) -> None:
        """Asks where the bench sheets go."""
        self._ask("Folder for the bench sheets", self.write_sheets)

    def ask_worksheet_folder(self) -> None:
        """Asks where the measuring worksheet goes."""
        self._ask("Folder for the measuring worksheet", self.write_worksheet)

    def ask_filled(self) -> None:
        """Asks for a filled-in worksheet."""
        from PySide6.QtWidgets import QFileDialog

        dialog = QFileDialog(self._window, "A filled-in measuring worksheet")
        dialog.setNameFilter("Filled-in worksheets (*.csv *.xlsx);;All files (*)")
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        self._open(dialog, self.read_filled)

    def write_sheets(self, name: str) -> None:
        """Writes the bench sheets of the chosen driver's rework into a folder."""
        session, folder = self._session, Path(name)
        work, rules, paper = session.work, session.choice.rules, session.preferences.paper
        self._window.jobs.start(
            "making the bench sheets",
            lambda progress: sheets_written(work, rules, paper, folder, progress),
            lambda files: self._tell(files, folder, "bench sheets"),
        )

    def write_worksheet(self, name: str) -> None:
        """Writes the measuring worksheet of what car and driver still lack into a folder."""
        work, paper, folder = self._session.work, self._session.preferences.paper, Path(name)
        self._window.jobs.start(
            "making the measuring worksheet",
            lambda progress: worksheet_written(work, paper, folder, progress),
            lambda files: self._tell(files, folder, "measuring worksheet"),
        )

    def read_filled(self, name: str) -> None:
        """Shows what a filled-in worksheet would change; it is taken in when the person says so."""
        work = self._session.work
        self._window.jobs.start(
            "reading the worksheet",
            lambda _progress: changes_read(work, Path(name)),
            lambda changes: self._preview(changes, Path(name).name),
        )

    def _preview(self, changes: "list[Change]", name: str) -> None:
        from fitcalc.window.filled_in import FilledIn

        if changes:
            FilledIn(self._session, changes, name, self._window).show()
        else:
            self._session.said.emit(f"{name} says nothing that car and driver do not say already.")

    def _tell(self, files: list[Path], folder: Path, what: str) -> None:
        if files:
            told = f"The {what} are in {folder}: {len(files)} files."
            sentence = told.replace("worksheet are", "worksheet is")
            self._window.notice.say(sentence, ("Open the folder", _shown(folder)))

    def _ask(self, title: str, use: Callable[[str], None]) -> None:
        from PySide6.QtWidgets import QFileDialog

        dialog = QFileDialog(self._window, title)
        dialog.setFileMode(QFileDialog.FileMode.Directory)
        dialog.setOption(QFileDialog.Option.ShowDirsOnly)
        self._open(dialog, use)

    def _open(self, dialog: "QFileDialog", use: Callable[[str], None]) -> None:
        recent = self._session.preferences.recent
        if recent:
            dialog.setDirectory(str(Path(recent[0]).parent))
        dialog.fileSelected.connect(use)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()


def sheets_written(work: Work, rules: str, paper: str, folder: Path, progress: Progress) -> list[Path]:
    """The files of the bench sheets; none where it was called off before anything was written.

    Raises:
        InputError: a limit set is not known, or the folder can't be written.
    """
    from fitcalc.fit.evaluate import evaluate
    from fitcalc.paper.job import whole_job
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.sheets import write_sheets
    from fitcalc.present.record import check_record

    car, driver, chosen = work.car.document, work.driver, rules or None
    found, after = (evaluate(car, driver, setup, chosen) for setup in (AS_FOUND, work.setup))
    if not progress(JUDGED):
        return []
    made = whole_job(found, after, check_record(after), _today(), chosen)
    if not progress(SURE):
        return []
    return write_sheets(made, PAPERS[paper], folder, progress)


def worksheet_written(work: Work, paper: str, folder: Path, progress: Progress) -> list[Path]:
    """The files of the measuring worksheet; none where it was called off before anything was written.

    Raises:
        InputError: the folder can't be written.
    """
    from fitcalc.paper.page import PAPERS
    from fitcalc.paper.worksheet_set import write_worksheet

    if not progress(JUDGED):
        return []
    return write_worksheet(work.car.document, work.driver, False, PAPERS[paper], folder, _today())


def changes_read(work: Work, path: Path) -> "list[Change]":
    """What a filled-in worksheet would change in car and driver.

    Raises:
        InputError: it can't be read, or says what can't be used.
    """
    from fitcalc.paper.worksheet_file import applied, preview, read_worksheet

    entered = read_worksheet(path)
    car, driver = work.car.document, work.driver
    of_car, of_driver = preview(entered, "car", car), preview(entered, "driver", driver)
    applied(of_car, car)
    applied(of_driver, driver)
    return [*of_car, *of_driver]


def _today() -> str:
    return f"{datetime.now().astimezone():%Y-%m-%d}"


def _shown(folder: Path) -> Callable[[], None]:
    """Shows a folder in the system's own way."""

    def show() -> None:
        from PySide6.QtCore import QUrl
        from PySide6.QtGui import QDesktopServices

        QDesktopServices.openUrl(QUrl.fromLocalFile(str(folder)))

    return show
