"""Who sits in what: the car's name, the driver to choose, and the second driver drawn over."""

from PySide6.QtWidgets import QComboBox, QFormLayout, QHBoxLayout, QLabel, QToolButton, QWidget

from fitcalc.window.session import Session

NOBODY = "nobody"


class People(QWidget):
    """The head of the left part."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.car = QLabel(self)
        self.car.setMinimumWidth(1)
        self.car.setWordWrap(True)
        self.car.setProperty("role", "heading")
        self.driver, self.over = self._box("driver"), self._box("second driver, drawn over")
        self.driver.activated.connect(self._choose)
        self.over.activated.connect(self._lay_over)
        self.add = QToolButton(self)
        self.add.setText("+")
        self.add.setAccessibleName("add a driver")
        self.add.setToolTip("Add a driver")
        self._lay_out()
        session.work_changed.connect(self.refresh)
        session.results_changed.connect(self.refresh)
        session.preferences_changed.connect(self._stack)
        self.refresh()

    def refresh(self) -> None:
        """Shows who there is."""
        work, choice = self._session.work, self._session.choice
        names = [person.driver.document.name for person in work.occupants]
        self.car.setText(work.car.document.name)
        _fill(self.driver, names, work.chosen)
        _fill(self.over, [NOBODY, *names], 0 if choice.overlaid is None else choice.overlaid + 1)

    def _lay_out(self) -> None:
        self._form = QFormLayout(self)
        self._form.setContentsMargins(6, 6, 6, 4)
        self._form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        self._form.addRow(self.car)
        line = QHBoxLayout()
        line.addWidget(self.driver, 1)
        line.addWidget(self.add)
        for text, box, field in (("&Driver", self.driver, line), ("Draw o&ver", self.over, self.over)):
            name = QLabel(text, self)
            name.setBuddy(box)
            self._form.addRow(name, field)
        self._stack()

    def _stack(self) -> None:
        wrap = QFormLayout.RowWrapPolicy
        self._form.setRowWrapPolicy(
            wrap.WrapAllRows if self._session.preferences.stacked else wrap.DontWrapRows
        )

    def _choose(self, place: int) -> None:
        self._session.choose_driver(place)

    def _lay_over(self, place: int) -> None:
        self._session.choose(overlaid=place - 1 if place else None)

    def _box(self, name: str) -> QComboBox:
        box = QComboBox(self)
        box.setAccessibleName(name)
        box.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        box.setMinimumContentsLength(3)
        return box


def _fill(box: QComboBox, names: list[str], chosen: int) -> None:
    if [box.itemText(at) for at in range(box.count())] != names:
        box.clear()
        box.addItems(names)
    box.setCurrentIndex(chosen)
