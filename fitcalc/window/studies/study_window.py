"""The window that shows a study beside the work, and lets its proposals be tried."""

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import QTextOption
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QTabWidget,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from fitcalc.documents.declared import Declared
from fitcalc.window.look import Look
from fitcalc.window.session import Session
from fitcalc.window.studies.chart_page import ChartPage
from fitcalc.window.studies.study import Pair, Study, with_trial
from fitcalc.window.studies.units import chart_in
from fitcalc.window.studies.words import MEASURE, tables_text
from fitcalc.window.work import Work, declared_for

SIZE = (900, 640)
STALE = "Car, driver or rework have changed since this was worked out."


class StudyWindow(QDialog):
    """One study; it stays open while the work goes on.

    Signals:
        again: it is to be worked out anew for the work as it is.
        paired: the same for another pair of changes.
        placed: a place on its map was chosen, as values of the pair.
        wanted: path of a measurement to go to.
        padded: the same with or without pads of each driver's own.
        weights_wanted: what work costs is to be shown.
    """

    again = Signal()
    paired = Signal(object)
    placed = Signal(object, float, float)
    wanted = Signal(str)
    padded = Signal(bool)
    weights_wanted = Signal()

    def __init__(self, title: str, session: Session, look: Look, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._look = session, look
        self._study, self._work, self._shown = Study("", ()), session.work, session.shown
        self.setWindowTitle(title)
        self.heading = QLabel(self)
        self.heading.setWordWrap(True)
        self.heading.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.heading.setAccessibleName("what came out")
        self.pairs, self.trials = self._box("the two changes on the map"), self._box("reworks to try")
        self.try_it = self._button("&Try it", "Makes this the rework, as one undo step")
        self.renew = self._button("&Work it out again", "For car, drivers and rework as they are now")
        told = "What each kind of work costs; the search weighs changes by it"
        self.weights = self._button("&Minutes for work…", told)
        self.pads = QCheckBox("Each driver bolts &pads of his own on", self)
        self.pads.setToolTip("Pad stand-off is then a quick change of each driver; worked out again at once")
        self.stale = QLabel(STALE, self)
        self.stale.setProperty("role", "quiet")
        self.charts = QScrollArea(self, widgetResizable=True)
        self.charts.setFrameShape(QFrame.Shape.NoFrame)
        self.charts.setAccessibleName("pictures")
        self.tables = QTextBrowser(self, openLinks=False)
        self.tables.setAccessibleName("tables")
        self.tables.setWordWrapMode(QTextOption.WrapMode.WordWrap)
        self._lay_out()
        self._connect()

    def show_study(self, study: Study, work: Work) -> None:
        """Shows what was worked out for a work."""
        is_first, self._study, self._work = not self._study.heading, study, work
        self.weights.setVisible(study.is_weighed)
        self.pads.setVisible(study.has_pads is not None)
        self.pads.setChecked(bool(study.has_pads))
        self.parts.setTabVisible(self.parts.indexOf(self.charts), bool(study.charts))
        self._show()
        if is_first:
            self.resize(*SIZE)
        self._follow()

    def _show(self) -> None:
        """Everything in the units that the person reads."""
        self._shown = self._session.shown
        self.heading.setText(self._shown.words(self._study.heading))
        self._fill_boxes()
        page = QWidget(self.charts)
        column = QVBoxLayout(page)
        for chart in self._study.charts:
            can_choose = self._study.pair is not None
            made = ChartPage(chart_in(chart, self._shown), self._look, page, can_choose)
            made.plot.chosen.connect(self._place)
            column.addWidget(made)
        self.charts.setWidget(page)
        self._show_tables()

    def _follow_units(self) -> None:
        if self._session.shown != self._shown:
            chosen = self.trials.currentIndex()
            self._show()
            self.trials.setCurrentIndex(chosen)

    def _lay_out(self) -> None:
        head, foot = QHBoxLayout(), QHBoxLayout()
        head.addWidget(self.pairs, 1)
        head.addWidget(self.trials, 1)
        head.addWidget(self.try_it)
        foot.addWidget(self.stale)
        foot.addStretch(1)
        foot.addWidget(self.weights)
        foot.addWidget(self.renew)
        self.parts = QTabWidget(self)
        self.parts.setDocumentMode(True)
        self.parts.setAccessibleName("pictures and tables")
        self.parts.addTab(self.charts, "Pictures")
        self.parts.addTab(self.tables, "Tables")
        page = QVBoxLayout(self)
        page.addWidget(self.heading)
        page.addWidget(self.pads)
        page.addLayout(head)
        page.addWidget(self.parts, 1)
        page.addLayout(foot)

    def _connect(self) -> None:
        self.renew.clicked.connect(self.again)
        self.weights.clicked.connect(self.weights_wanted)
        self.pads.clicked.connect(self.padded)
        self.try_it.clicked.connect(self._try)
        self.pairs.activated.connect(lambda at: self.paired.emit(self._study.pairs[at]))
        self.tables.anchorClicked.connect(self._go)
        self._session.work_changed.connect(self._follow)
        self._session.preferences_changed.connect(self._follow_units)
        self._look.changed.connect(self._show_tables)

    def _button(self, text: str, tip: str) -> QPushButton:
        button = QPushButton(text, self)
        button.setToolTip(tip)
        return button

    def _box(self, name: str) -> QComboBox:
        box = QComboBox(self)
        box.setAccessibleName(name)
        box.setMinimumContentsLength(12)
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        return box

    def _fill_boxes(self) -> None:
        study = self._study
        self.pairs.clear()
        self.pairs.addItems([_pair_text(pair) for pair in study.pairs])
        if study.pair in study.pairs:
            self.pairs.setCurrentIndex(study.pairs.index(study.pair))
        self.pairs.setVisible(len(study.pairs) > 1)
        self.trials.clear()
        for trial in study.trials:
            words = self._shown.words(trial.words)
            self.trials.addItem(words)
            self.trials.setItemData(self.trials.count() - 1, words, Qt.ItemDataRole.ToolTipRole)
        for widget in (self.trials, self.try_it):
            widget.setVisible(bool(study.trials))

    def _show_tables(self) -> None:
        self.tables.setHtml(
            tables_text(self._study.tables, self._study.again, self._look.colours, self._shown)
        )

    def _follow(self) -> None:
        """Says so where the work is another one than this was worked out for."""
        self.stale.setVisible(self._session.work is not self._work)

    def _try(self) -> None:
        trial = self._study.trials[self.trials.currentIndex()]
        now, then = (
            [each.driver.key for each in work.occupants] for work in (self._session.work, self._work)
        )
        if now == then:
            self._session.push("try a rework", with_trial(self._session.work, trial))
        else:
            self._session.said.emit("There are other drivers than before: work it out again first.")

    def _place(self, x: float, y: float) -> None:
        self.placed.emit(self._study.pair, x, y)

    def _go(self, link: QUrl) -> None:
        self.wanted.emit(link.toString().removeprefix(MEASURE))


def _pair_text(pair: Pair) -> str:
    first, second = (_title(declared_for(f"setup.{path}"), path) for path in pair)
    return f"{first} against {second}"


def _title(declared: Declared, path: str) -> str:
    above = path.rpartition(".")[0]
    return f"{above} {declared.title}" if above else declared.title
