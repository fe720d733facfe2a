"""The window for what was set, cut and measured after the work: entered, held against the plan, kept in a file."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QTextOption
from PySide6.QtWidgets import (
    QDialog,
    QFileDialog,
    QFormLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QTabWidget,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from fitcalc.errors import InputError
from fitcalc.present.as_built_entry import Typed
from fitcalc.window.jobs import Jobs
from fitcalc.window.look import Look
from fitcalc.window.session import Session
from fitcalc.window.studies.built import Built, Entered, compared
from fitcalc.window.studies.built_rows import BuiltRows
from fitcalc.window.studies.words import tables_text
from fitcalc.window.work import Work

SIZE = (900, 640)
BUSY = "holding what was made against the plan"
STALE = "Car, driver or rework have changed since: compare again."
NO_FILE = "in no as-built file yet"


class BuiltWindow(QDialog):
    """One build for one driver; it stays as it is while the window is closed and opened again."""

    def __init__(self, session: Session, look: Look, jobs: Jobs, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._look, self._jobs = session, look, jobs
        self._work = session.work
        self._built: Built | None = None
        self._kept: tuple[Typed, ...] = ()
        self.file: Path | None = None
        self.rows = BuiltRows((), session.shown, self)
        self.setWindowTitle(f"As built: {session.work.driver.name}")
        self.heading, self.told = self._words("what it is about"), self._words("what is to be said")
        self.area = QScrollArea(self, widgetResizable=True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setAccessibleName("what may be entered")
        self.area.setWidget(self.rows)
        self.tables = QTextBrowser(self)
        self.tables.setAccessibleName("tables")
        self.tables.setWordWrapMode(QTextOption.WrapMode.WordWrap)
        self.day, self.note = QLineEdit(f"{datetime.now().astimezone():%Y-%m-%d}", self), QLineEdit(self)
        self.read = self._button("Take in a filled &sheet…", "A filled-in as-built sheet, CSV or XLSX")
        self.choose = self._button("As-built &file…", "Where the builds of this driver are kept")
        self.add = self._button("&Add to the file", "The same file as `fitcalc built --history` reads")
        self.compare = self._button("&Compare", "With the plan and the prediction")
        self._lay_out()
        self._connect()
        self.resize(*SIZE)

    @property
    def is_unkept(self) -> bool:
        """Whether something is entered that is in no file."""
        return self.rows.typed() not in ((), self._kept)

    def follow_plan(self) -> None:
        """Asks for what the plan, as it is now, lets enter."""
        if self._built is None or self._is_stale():
            self._start(False, self._use)

    def keep(self, then: Callable[[], None] | None = None) -> None:
        """Adds the build to its file, which is asked for where there is none, and goes on."""
        if self.file is None:
            self._ask_file(lambda: self.keep(then))
            return

        def kept(built: Built) -> None:
            self._use(built)
            if then is not None and built.is_kept:
                then()

        self._start(True, kept)

    def _start(self, keeps: bool, use: Callable[[Built], None]) -> None:
        self._work = self._plan()
        entered = Entered(
            self._work,
            self._session.choice.rules,
            self.rows.typed(),
            self.day.text().strip(),
            self.note.text(),
            self.file,
        )
        self._jobs.start(BUSY, _said(entered, keeps), lambda found: self._take(found, use))

    def _plan(self) -> Work:
        """The work as it is, with this window's driver chosen; as it was where the driver is gone."""
        work, key = self._session.work, self._work.occupant.driver.key
        keys = [each.driver.key for each in work.occupants]
        return replace(work, chosen=keys.index(key)) if key in keys else self._work

    def _is_stale(self) -> bool:
        now, then = self._plan(), self._work
        return (now.car, now.occupant) != (then.car, then.occupant)

    def _take(self, found: Built | InputError, use: Callable[[Built], None]) -> None:
        if isinstance(found, InputError):
            self.told.setProperty("role", "refused")
            self.told.setText(str(found))
            self.parts.setCurrentWidget(self.area)
            field = self.rows.go_to(found.field)
            if field is not None:
                self.area.ensureWidgetVisible(field)
        else:
            self.told.setProperty("role", "quiet")
            use(found)
        self.told.style().polish(self.told)

    def _use(self, built: Built) -> None:
        typed = built.entered.typed
        self._built = built
        if built.is_kept:
            self._kept = typed
        if {each.key: each for each in built.plain.wanted} != {
            key: line.wanted for key, line in self.rows.lines.items()
        }:
            self._fill(built)
        self._show()
        self._follow()
        if typed:
            self.parts.setCurrentWidget(self.tables)

    def _fill(self, built: Built) -> None:
        """New lines for another plan, with what was entered before."""
        before = self.rows.typed()
        self.rows = BuiltRows(built.plain.wanted, self._session.shown, self)
        self.rows.take(before)
        self.rows.edited.connect(self._follow)
        self.area.setWidget(self.rows)

    def _show(self) -> None:
        from fitcalc.present.as_built_tables import built_tables, built_title, reading_notes

        if self._built is None:
            return
        record = self._built.record
        verdict = record.explanation.verdict if record.explanation else ""
        self.heading.setText("\n".join(filter(None, (built_title(record), verdict))))
        told = [each for each in built_tables(record) if each.title != "What may be entered"]
        text = tables_text(told, (), self._look.colours, self._session.shown)
        notes = "".join(f"<p>{each}</p>" for each in reading_notes(record))
        self.tables.setHtml(text + notes or "Nothing is entered yet.")

    def _follow(self) -> None:
        """Says how the entries stand to the plan and to the file."""
        stale = self._built is not None and self._is_stale()
        where = self.file.name if self.file else NO_FILE
        state = "not added yet" if self.is_unkept and self.file else ""
        self.told.setProperty("role", "quiet")
        self.told.setText("; ".join(filter(None, (STALE if stale else "", where, state))))
        self.add.setEnabled(self.is_unkept)

    def _ask_file(self, then: Callable[[], None]) -> None:
        dialog = QFileDialog(self, "The as-built file of this driver: a new one, or one to add to")
        dialog.setNameFilter("fitcalc files (*.toml);;All files (*)")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setOption(QFileDialog.Option.DontConfirmOverwrite)
        dialog.setDefaultSuffix("toml")
        recent = self._session.preferences.recent
        if recent:
            dialog.setDirectory(str(Path(recent[0]).parent))

        def chosen(name: str) -> None:
            self.file = Path(name)
            then()

        dialog.fileSelected.connect(chosen)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _ask_sheet(self) -> None:
        dialog = QFileDialog(self, "A filled-in as-built sheet")
        dialog.setNameFilter("Filled-in sheets (*.csv *.xlsx);;All files (*)")
        dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
        dialog.fileSelected.connect(self._read_sheet)
        dialog.finished.connect(dialog.deleteLater)
        dialog.open()

    def _read_sheet(self, name: str) -> None:
        from fitcalc.paper.as_built_file import read_as_built

        try:
            unknown = self.rows.take(read_as_built(Path(name)))
        except InputError as error:
            self._take(error, self._use)
            return
        self._follow()
        if unknown:
            self.told.setText(f"There is no line here for {', '.join(unknown)}: left out.")

    def _lay_out(self) -> None:
        self.parts = QTabWidget(self)
        self.parts.setDocumentMode(True)
        self.parts.setAccessibleName("entries and outcome")
        self.parts.addTab(self.area, "Enter")
        self.parts.addTab(self.tables, "Outcome")
        form, foot = QFormLayout(), QHBoxLayout()
        for title, field in (("&Day", self.day), ("&Note", self.note)):
            name = QLabel(title, self)
            name.setBuddy(field)
            field.setAccessibleName(title.replace("&", "").lower())
            form.addRow(name, field)
        for button in (self.read, self.choose):
            foot.addWidget(button)
        foot.addStretch(1)
        for button in (self.add, self.compare):
            foot.addWidget(button)
        page = QVBoxLayout(self)
        page.addWidget(self.heading)
        page.addWidget(self.parts, 1)
        page.addLayout(form)
        page.addWidget(self.told)
        page.addLayout(foot)

    def _connect(self) -> None:
        self.read.clicked.connect(self._ask_sheet)
        self.choose.clicked.connect(lambda: self._ask_file(lambda: self._start(False, self._use)))
        self.add.clicked.connect(lambda: self.keep())
        self.compare.clicked.connect(lambda: self._start(False, self._use))
        self._session.work_changed.connect(self._follow)
        self._session.preferences_changed.connect(self._show_as)
        self._look.changed.connect(self._show)

    def _show_as(self) -> None:
        self.rows.show_as(self._session.shown)
        self._show()

    def _words(self, name: str) -> QLabel:
        label = QLabel(self)
        label.setWordWrap(True)
        label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        label.setAccessibleName(name)
        return label

    def _button(self, text: str, tip: str) -> QPushButton:
        button = QPushButton(text, self)
        button.setToolTip(tip)
        button.setAutoDefault(False)
        return button


def _said(entered: Entered, keeps: bool) -> Callable[..., Built | InputError]:
    """The task, which hands a refusal back in place of its outcome: it is told beside the entries."""
    task = compared(entered, keeps)

    def run(progress: Callable[[float], bool]) -> Built | InputError:
        try:
            return task(progress)
        except InputError as error:
            return error

    return run
