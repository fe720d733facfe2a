"""A part that is not given yet: its values are gathered as typed, and become one edit when they are enough."""

from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QFormLayout, QLabel, QLineEdit, QWidget

from fitcalc.documents.declared import Declared
from fitcalc.errors import InputError
from fitcalc.window.session import Session
from fitcalc.window.typed import stored_number
from fitcalc.window.work import at_ref, declared_for
from fitcalc.window.worksheet.fields import Line
from fitcalc.window.worksheet.lines import POINT

PATTERNS = {0: "", 2: "x z, x z, …", 3: "x y z, x y z, …"}
"""How points are typed in one line, by the numbers that each of them has."""


def leaves(ref: str) -> list[Declared]:
    """Every value that a part needs, and its lists of points, which may be needed; paths as in the document."""
    declared = declared_for(ref)
    if declared.kind != "section":
        return [declared]
    below = [declared_for(f"{ref}.{name}") for name in declared.names]
    document = ref.partition(".")[0]
    wanted = [
        each for each in below if each.required or (each.kind == "list" and _axes(f"{document}.{each.path}"))
    ]
    return [leaf for each in wanted for leaf in leaves(f"{document}.{each.path}")]


def _axes(ref: str) -> int:
    """How many numbers one entry of a list is typed as; 0 where an entry is more than a point."""
    entry = declared_for(f"{ref}.0")
    if entry.kind == "list":
        return 2
    is_point = entry.kind == "section" and set(entry.names) <= set(POINT)
    return len(set(entry.names) & {"x", "y", "z"}) if is_point else 0


class Draft(QWidget):
    """The fields of a part that is being given.

    Signals:
        judged: what is still lacking or wrong.
    """

    judged = Signal(str)

    def __init__(self, session: Session, ref: str, title: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._ref, self._title = session, ref, title
        self._is_entry = ref.rpartition(".")[2].isdecimal()
        self.fields: dict[str, QLineEdit | QComboBox] = {}
        form = QFormLayout(self)
        form.setContentsMargins(8, 0, 0, 4)
        form.setRowWrapPolicy(QFormLayout.RowWrapPolicy.WrapLongRows)
        for leaf in leaves(ref):
            name = QLabel(self._name(leaf), self)
            field = self._field(leaf)
            name.setBuddy(field)
            form.addRow(name, field)
        self.setFocusProxy(next(iter(self.fields.values())))

    def _field(self, leaf: Declared) -> QLineEdit | QComboBox:
        field: QLineEdit | QComboBox
        if leaf.kind == "choice":
            field = QComboBox(self)
            for value in leaf.choices:
                field.addItem(str(value), value)
            field.activated.connect(self._use)
        else:
            field = Line(self)
            field.setPlaceholderText(PATTERNS[self._points(leaf)])
            field.editingFinished.connect(self._use)
        field.setAccessibleName(f"{self._title}: {self._name(leaf)}")
        field.setToolTip(leaf.description)
        field.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.fields[leaf.path] = field
        return field

    def _name(self, leaf: Declared) -> str:
        above = leaf.path.removeprefix(self._ref.partition(".")[2]).strip(".").rpartition(".")[0]
        unit = self._session.shown.unit(leaf.unit).strip("-")
        words = (
            f"{declared_for(f'{self._document}.{self._path}.{above}').title}, {leaf.title}"
            if above
            else leaf.title
        )
        return f"{words} ({unit})" if unit else words

    @property
    def _document(self) -> str:
        return self._ref.partition(".")[0]

    @property
    def _path(self) -> str:
        return self._ref.partition(".")[2]

    def _points(self, leaf: Declared) -> int:
        return _axes(f"{self._document}.{leaf.path}") if leaf.kind == "list" else 0

    def _use(self) -> None:
        lacking = [self._name(leaf) for leaf in leaves(self._ref) if leaf.required and self._text(leaf) == ""]
        if lacking:
            self.judged.emit(f"Still to be given: {', '.join(lacking)}.")
            return
        try:
            self._give(self._gathered())
        except InputError as error:
            self.judged.emit(str(error))

    def _give(self, value: Any) -> None:
        if self._is_entry:
            above = self._ref.rpartition(".")[0]
            self._session.edit(above, (*at_ref(self._session.work, above), value), self._title)
        else:
            self._session.edit(self._ref, value, self._title)

    def _gathered(self) -> Any:
        gathered: dict[str, Any] = {}
        for leaf in leaves(self._ref):
            steps = [step for step in leaf.path.removeprefix(self._path).split(".") if step]
            if not steps:
                return self._value(leaf)
            if self._text(leaf) == "":
                continue
            holder = gathered
            for step in steps[:-1]:
                holder = holder.setdefault(step, {})
            holder[steps[-1]] = self._value(leaf)
        return gathered

    def _text(self, leaf: Declared) -> str:
        field = self.fields[leaf.path]
        return field.currentText() if isinstance(field, QComboBox) else field.text().strip()

    def _value(self, leaf: Declared) -> Any:
        field, text = self.fields[leaf.path], self._text(leaf)
        if isinstance(field, QComboBox):
            return field.currentData()
        if leaf.kind == "text":
            return text
        if leaf.kind == "list":
            return tuple(self._entry(leaf, group) for group in text.split(",") if group.strip())
        return stored_number(text, leaf.unit, self._session.shown, leaf.path)

    def _entry(self, leaf: Declared, group: str) -> Any:
        numbers = tuple(
            stored_number(number, "mm", self._session.shown, leaf.path) for number in group.split()
        )
        if len(numbers) != self._points(leaf):
            raise InputError(
                leaf.path, f'"{group.strip()}"', f"must be {self._points(leaf)} numbers and a comma"
            )
        names = declared_for(f"{self._document}.{leaf.path}.0").names
        axes = [name for name in ("x", "y", "z") if name in names]
        return dict(zip(axes, numbers, strict=True)) if axes else numbers
