"""Lines to enter what was set, cut and measured after the work."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QLineEdit, QSizePolicy, QWidget

from fitcalc.documents.amounts import amount_of
from fitcalc.present.as_built_entry import Typed
from fitcalc.present.as_built_record import WantedRecord
from fitcalc.window.shown import Shown

PLUS_MINUS = "\N{PLUS-MINUS SIGN}"
HEAD = ("what", "made or measured", "", "sure within", "by the plan", "allowed")


@dataclass(frozen=True)
class Line:
    """One line: value with its unit, how sure it is, and what the plan has there."""

    wanted: WantedRecord
    value: QLineEdit
    unit: QLabel
    error: QLineEdit
    told: QLabel
    allowed: QLabel

    def typed(self, shown: Shown) -> Typed | None:
        """What was typed; None where nothing was."""
        text, error = self.value.text().strip(), self.error.text().strip()
        unit = shown.unit(self.wanted.unit)
        written = "" if unit == self.wanted.unit else unit
        where = f"{self.wanted.group}, {self.wanted.title}"
        return Typed(self.wanted.key, text, written, error, where=where) if text else None

    def show_as(self, shown: Shown, before: Shown) -> None:
        """Titles, units and plain numbers in other units."""
        wanted = self.wanted
        unit = shown.unit(wanted.unit)
        self.unit.setText(unit.removeprefix("-"))
        self.error.setPlaceholderText(shown.typed(wanted.error, wanted.unit))
        self.told.setText(shown.amount(wanted.expected, wanted.unit))
        self.allowed.setText(shown.words(wanted.allowed))
        self.value.setAccessibleName(f"{wanted.title}, made or measured, {unit}")
        self.error.setAccessibleName(f"{wanted.title}, sure within, {unit}")
        for field in (self.value, self.error):
            stored = (
                None if shown == before else amount_of(field.text(), wanted.unit, before.unit(wanted.unit))
            )
            if stored is not None:
                field.setText(shown.typed(stored, wanted.unit))


class BuiltRows(QWidget):
    """A field for everything that may be entered, under the headings of the bench sheet.

    Signals:
        edited: something else is entered than before.
    """

    edited = Signal()

    def __init__(self, wanted: Iterable[WantedRecord], shown: Shown, parent: QWidget) -> None:
        super().__init__(parent)
        self._shown = shown
        self._grid = QGridLayout(self)
        self._grid.setColumnStretch(0, 1)
        for at, title in enumerate(HEAD):
            self._put(0, at, self._quiet(title))
        self.lines: dict[str, Line] = {}
        for group, rows in groupby(wanted, key=lambda each: each.group):
            heading = QLabel(group, self)
            heading.setProperty("role", "heading")
            self._grid.addWidget(heading, self._grid.rowCount(), 0, 1, len(HEAD))
            for each in rows:
                self.lines[each.key] = self._line(each)

    def typed(self) -> tuple[Typed, ...]:
        """Everything that was entered."""
        return tuple(typed for line in self.lines.values() if (typed := line.typed(self._shown)) is not None)

    def take(self, typed: Iterable[Typed]) -> list[str]:
        """Fills in what was entered elsewhere; hands back the keys that there is no line for."""
        unknown = []
        for each in typed:
            line = self.lines.get(each.key)
            if line is None:
                unknown.append(each.key)
                continue
            line.value.setText(f"{each.text} {each.unit}".strip())
            line.error.setText(f"{each.error} {each.unit}".strip() if each.error else "")
        return unknown

    def show_as(self, shown: Shown) -> None:
        """Everything in other units; plain numbers are turned into them."""
        for line in self.lines.values():
            line.show_as(shown, self._shown)
        self._shown = shown

    def go_to(self, where: str) -> QWidget | None:
        """Gives the keyboard to the field that a sentence is about, and hands it back; None where there is none."""
        for line in self.lines.values():
            if where.startswith(f"{line.wanted.group}, {line.wanted.title}"):
                line.value.setFocus()
                line.value.selectAll()
                return line.value
        return None

    def _line(self, wanted: WantedRecord) -> Line:
        row, title = self._grid.rowCount(), QLabel(wanted.title, self)
        title.setWordWrap(True)
        title.setToolTip(wanted.how)
        line = Line(
            wanted,
            self._field(wanted),
            QLabel(self),
            self._field(wanted),
            self._quiet(""),
            self._quiet(""),
        )
        title.setBuddy(line.value)
        line.allowed.setWordWrap(True)
        for at, widget in enumerate((title, line.value, line.unit, line.error, line.told, line.allowed)):
            self._put(row, at, widget)
        line.show_as(self._shown, self._shown)
        return line

    def _field(self, wanted: WantedRecord) -> QLineEdit:
        field = QLineEdit(self)
        field.setMinimumWidth(1)
        field.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        field.setToolTip(f"{wanted.how} By {wanted.tool}." if wanted.tool else wanted.how)
        field.setAccessibleDescription(wanted.how)
        field.textEdited.connect(self.edited)
        return field

    def _quiet(self, text: str) -> QLabel:
        label = QLabel(text, self)
        label.setProperty("role", "quiet")
        return label

    def _put(self, row: int, column: int, widget: QWidget) -> None:
        self._grid.addWidget(widget, row, column)
