"""What each kind of work costs at the bench, to be typed: the weights by which the searches choose."""

from functools import partial

from PySide6.QtWidgets import (
    QDialog,
    QDoubleSpinBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from fitcalc.documents.effort import Work as Kinds
from fitcalc.fit.variables import dues
from fitcalc.present.change_words import WORKS
from fitcalc.window.filing import Filing
from fitcalc.window.session import Session
from fitcalc.window.work import at_ref, declared_for, with_document

TOLD = "Minutes at the bench, due once for each thing that is changed in this way. The searches for the least work weigh by them."
STEP, DECIMALS = 5.0, 1


class Minutes(QDialog):
    """A box for each kind of work; what is as the program has it stays out of the file."""

    def __init__(self, session: Session, filing: Filing, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._filing = session, filing
        self.setWindowTitle("Minutes for work")
        self.boxes = {kind: self._box(kind) for kind in WORKS}
        self.usual = QPushButton("As the &program has them", self)
        self.save = QPushButton("&Save as…", self)
        self.save.setToolTip("A file for `fitcalc solve --effort` too")
        self._lay_out()
        self.usual.clicked.connect(self._reset)
        self.save.clicked.connect(lambda: filing.ask_name(session.work.effort))
        session.work_changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Shows the minutes as they are."""
        for kind, box in self.boxes.items():
            given = at_ref(self._session.work, _ref(kind))
            minutes = dues()[kind] if given is None else given
            if box.value() != minutes:
                was = box.blockSignals(True)
                box.setValue(minutes)
                box.blockSignals(was)
        self.usual.setEnabled(self._session.work.effort.document.work != Kinds())

    def _box(self, kind: str) -> QDoubleSpinBox:
        declared = declared_for(_ref(kind))
        box = QDoubleSpinBox(self)
        box.setDecimals(DECIMALS)
        box.setRange(declared.low or 0.0, declared.high or 0.0)
        box.setSingleStep(STEP)
        box.setSuffix(" min")
        box.setAccessibleName(f"minutes for {WORKS[kind]}")
        box.setAccessibleDescription(declared.description)
        box.setToolTip(declared.description)
        box.valueChanged.connect(partial(self._use, kind))
        box.editingFinished.connect(self._session.end_gesture)
        return box

    def _lay_out(self) -> None:
        page, rows, foot = QVBoxLayout(self), QGridLayout(), QHBoxLayout()
        told = QLabel(TOLD, self)
        told.setWordWrap(True)
        page.addWidget(told)
        for at, (kind, box) in enumerate(self.boxes.items()):
            name, usual = QLabel(f"&{WORKS[kind].capitalize()}", self), QLabel(_usual(kind), self)
            name.setBuddy(box)
            usual.setProperty("role", "quiet")
            for column, widget in enumerate((name, box, usual)):
                rows.addWidget(widget, at, column)
        rows.setColumnStretch(2, 1)
        page.addLayout(rows)
        page.addStretch(1)
        for button in (self.usual, self.save):
            button.setAutoDefault(False)
            foot.addWidget(button)
        foot.addStretch(1)
        page.addLayout(foot)

    def _use(self, kind: str, minutes: float) -> None:
        own = None if minutes == dues()[kind] else minutes
        self._session.edit(_ref(kind), own, f"minutes for {WORKS[kind]}", gesture=_ref(kind))

    def _reset(self) -> None:
        effort = self._session.work.effort.document.model_copy(update={"work": Kinds()})
        self._session.push("minutes for work", with_document(self._session.work, "effort", effort))


def _ref(kind: str) -> str:
    return f"effort.work.{kind}"


def _usual(kind: str) -> str:
    return f"usually {dues()[kind]:g} min"
