"""The findings: rules to choose, counts by status, the list worst first, and what the chosen one opens to."""

from functools import partial

from PySide6.QtCore import QEvent, QModelIndex, Qt
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QFormLayout,
    QGridLayout,
    QListView,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from fitcalc.checks.check import STATUSES, Status
from fitcalc.checks.limits import limit_set_names, load_limit_set
from fitcalc.errors import InputError
from fitcalc.present.wording import MARKS
from fitcalc.window.findings.delegate import FindingDelegate
from fitcalc.window.findings.detail import Detail
from fitcalc.window.findings.finding import findings_of
from fitcalc.window.findings.model import FINDING, FindingsModel
from fitcalc.window.look import Look
from fitcalc.window.session import Session
from fitcalc.window.throttle import Throttle

PAUSE = 60
"""Least time from one listing to the next, ms: words that change faster can't be read."""


class Findings(QSplitter):
    """What the limits say of the driver after the rework."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self._session, self._chosen, self._car = session, "", session.work.car.key
        self._throttle = Throttle(self.refresh, PAUSE, self)
        self.setAccessibleName("findings")
        self.setChildrenCollapsible(False)
        self.model = FindingsModel(self)
        self.list = self._list(look)
        self.detail = Detail(session, self)
        self.filters = {status: self._filter(status) for status in STATUSES}
        self.rules, self.compared = self._rules("rules", "rules"), self._rules("compared", "compare with")
        self.addWidget(self._page())
        self.addWidget(self.detail)
        self.setStretchFactor(0, 1)
        self.setSizes([500, 150])
        session.results_changed.connect(self._throttle.request)
        session.preferences_changed.connect(self.refresh)
        session.preferences_changed.connect(self._stack)
        session.pointed_at.connect(self._follow)
        look.changed.connect(self._relayout)
        self.refresh()

    def refresh(self) -> None:
        """Lists what the results say now."""
        results = self._session.results
        if results.is_checked:
            self._fill_rules()
        if results.work.car.key != self._car:
            self._chosen, self._car = "", results.work.car.key
        self.model.show_findings(
            findings_of(results.after, results.compared, self._session.shown, self._session.odds)
        )
        for status, button in self.filters.items():
            count = self.model.count(status)
            button.setText(f"{MARKS[status]}  {count if results.is_checked else '…'} {status}")
            button.setAccessibleName(f"list {count} findings: {status}")
            button.setEnabled(count > 0)
        self.list.scheduleDelayedItemsLayout()
        self._show_rules()
        self._show_chosen(self._chosen)

    def changeEvent(self, event: QEvent) -> None:
        """Lays the list out anew for another text size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange:
            self._relayout()

    def _page(self) -> QWidget:
        page = QWidget(self)
        column = QVBoxLayout(page)
        column.setContentsMargins(6, 6, 6, 0)
        self._form = form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self._stack()
        form.addRow("&Rules", self.rules)
        form.addRow("Co&mpare with", self.compared)
        column.addLayout(form)
        grid = QGridLayout()
        for at, status in enumerate(STATUSES):
            grid.addWidget(self.filters[status], at % 2, at // 2)
        column.addLayout(grid)
        column.addWidget(self.list, 1)
        return page

    def _stack(self) -> None:
        wrap = QFormLayout.RowWrapPolicy
        self._form.setRowWrapPolicy(
            wrap.WrapAllRows if self._session.preferences.stacked else wrap.DontWrapRows
        )

    def _list(self, look: Look) -> QListView:
        made = QListView(self)
        made.setModel(self.model)
        made.setItemDelegate(FindingDelegate(made, look))
        made.setResizeMode(QListView.ResizeMode.Adjust)
        made.setVerticalScrollMode(QListView.ScrollMode.ScrollPerPixel)
        made.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        made.setAccessibleName("findings, worst first")
        made.selectionModel().currentChanged.connect(self._choose)
        made.activated.connect(self._point)
        made.clicked.connect(self._point)
        return made

    def _filter(self, status: Status) -> QCheckBox:
        box = QCheckBox(self)
        box.setChecked(True)
        box.setToolTip(f"List what is “{status}”, or leave it out")
        box.toggled.connect(self._show_statuses)
        return box

    def _rules(self, choice: str, name: str) -> QComboBox:
        box = QComboBox(self)
        box.setAccessibleName(name)
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        box.setMinimumContentsLength(6)
        box.addItem("none" if choice == "compared" else "", "")
        box.activated.connect(partial(self._choose_rules, box, choice))
        return box

    def _fill_rules(self) -> None:
        """Lists the limit sets, which takes a while to read: not before the first results."""
        for box in (self.rules, self.compared):
            for each in limit_set_names() if box.count() == 1 else ():
                box.addItem(each.replace("_", " "), each)
                box.setItemData(box.count() - 1, load_limit_set(each).title, Qt.ItemDataRole.ToolTipRole)

    def _show_rules(self) -> None:
        self.rules.setItemText(0, f"{self._session.work.car.document.rules} (the car's own)")
        self.rules.setCurrentIndex(self.rules.findData(self._session.choice.rules))
        self.compared.setCurrentIndex(self.compared.findData(self._session.choice.compared))
        self.rules.setToolTip(self._session.result.rules.title)

    def _choose_rules(self, box: QComboBox, choice: str, index: int) -> None:
        try:
            self._session.choose(**{choice: box.itemData(index)})
        except InputError as error:
            self._session.said.emit(str(error))

    def _show_statuses(self) -> None:
        wanted = frozenset(status for status, button in self.filters.items() if button.isChecked())
        self.model.show_statuses(wanted)
        self._show_chosen(self._chosen)

    def _choose(self, index: QModelIndex) -> None:
        finding = index.data(FINDING)
        if finding is not None and finding.id != self._chosen:
            self._point(index)

    def _point(self, index: QModelIndex) -> None:
        finding = index.data(FINDING)
        self._chosen = finding.id
        self.detail.show_finding(finding)
        self._session.pointed_at.emit(finding.id)

    def _follow(self, ref: str) -> None:
        if ref != self._chosen and self.model.row_of(ref) >= 0:
            self._show_chosen(ref)

    def _show_chosen(self, id: str) -> None:
        row = self.model.row_of(id)
        if row < 0:
            worst = self.model.index(0).data(FINDING) if self.model.rowCount() else None
            self.detail.show_finding(worst)
            return
        index = self.model.index(row)
        self._chosen = index.data(FINDING).id
        self.list.setCurrentIndex(index)
        self.detail.show_finding(index.data(FINDING))

    def _relayout(self) -> None:
        self.list.scheduleDelayedItemsLayout()
