"""The worksheet: sections of lines, the driver first, with the measuring guide at its foot."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QToolTip, QVBoxLayout, QWidget

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.errors import InputError
from fitcalc.window.look import Look
from fitcalc.window.session import Session
from fitcalc.window.shown import Shown
from fitcalc.window.splitter import Splitter
from fitcalc.window.worksheet.estimates import Taken, taken_for
from fitcalc.window.worksheet.guide_pane import GuidePane
from fitcalc.window.worksheet.order import SECTIONS, section_with
from fitcalc.window.worksheet.rows import RowWidget
from fitcalc.window.worksheet.section import SectionWidget

FIRST = "driver.measurements.stature"


class Worksheet(Splitter):
    """What was measured on driver and car."""

    def __init__(self, session: Session, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(Qt.Orientation.Vertical, parent)
        self._session = session
        self._driver: Driver | None = None
        self._car: Car | None = None
        self._taken: dict[str, Taken] = {}
        self._is_entered = False
        self._made, self._stacked = self._measure(), session.preferences.stacked
        self.setAccessibleName("measurements")
        self.setChildrenCollapsible(False)
        self._area = self._scroll_area()
        self.guide = GuidePane(session, look, self)
        self.addWidget(self._area)
        self.addWidget(self.guide)
        self.setStretchFactor(0, 1)
        self.setSizes([500, 150])
        session.settled.connect(self._follow)
        session.results_changed.connect(self._suggest)
        session.preferences_changed.connect(self._start_over)
        look.changed.connect(self._start_over)
        session.wanted.connect(self.go_to)
        self.sections[0].open()
        self.refresh()

    def refresh(self) -> None:
        """Shows what the documents say now."""
        driver, self._car = self._session.work.driver, self._session.work.car.document
        if driver is not self._driver:
            self._driver, self._taken = driver, taken_for(driver)
        for section in self.sections:
            section.refresh(self._taken)

    @property
    def plain_parts(self) -> tuple[QWidget, ...]:
        """All but the lines, of which there are many: headings and guide."""
        return (self.guide, *(section.heading for section in self.sections))

    def go_to(self, ref: str) -> None:
        """Opens the section of a ref and gives its field the keyboard."""
        owner = section_with(ref)
        if owner is None:
            return
        section = next(each for each in self.sections if each.section is owner)
        section.open()
        self.refresh()
        field = section.field(ref)
        if field is not None:
            field.setFocus(Qt.FocusReason.OtherFocusReason)
            field.selectAll() if hasattr(field, "selectAll") else None
            self._area.ensureWidgetVisible(field, 10, 60)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Shows the drawing of where the tape goes in the tool tip of a field."""
        if (
            isinstance(event, QHelpEvent)
            and event.type() == QEvent.Type.ToolTip
            and isinstance(watched, QWidget)
        ):
            QToolTip.showText(event.globalPos(), self.guide.tip(watched.ref), watched)  # type: ignore[attr-defined]
            return True
        return False

    def _watch(self, row: RowWidget) -> None:
        for field in row.fields:
            field.installEventFilter(self)

    def _follow(self) -> None:
        """Leaves the lines alone where only the rework changed."""
        work = self._session.work
        if work.driver is not self._driver or work.car.document is not self._car:
            self.refresh()

    def _scroll_area(self) -> QScrollArea:
        page = QWidget(self)
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        self.sections = [SectionWidget(self._session, section, page) for section in SECTIONS]
        for section in self.sections:
            section.entered.connect(self._show_entered)
            section.made.connect(self._watch)
            column.addWidget(section)
        column.addStretch(1)
        area = QScrollArea(self, widgetResizable=True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setAccessibleName("measurements")
        area.setWidget(page)
        return area

    def _suggest(self) -> None:
        """Shows how to take the next measurement of the body, until a line is gone to."""
        if self._is_entered:
            return
        lacking = next((ref for ref, taken in self._taken.items() if not taken.measured), "")
        self.guide.show_ref(lacking or FIRST, "Next to measure: " if lacking else "")

    def _show_entered(self, ref: str) -> None:
        if not ref:
            self.refresh()
            return
        self._is_entered = True
        try:
            self.guide.show_ref(ref)
        except InputError:
            return
        self._session.pointed_at.emit(ref)
        focused = self.focusWidget()
        if focused is not None:
            self._area.ensureWidgetVisible(focused, 10, 30)

    def _measure(self) -> tuple[Shown, float]:
        """The units and the size of text that lines have room for."""
        return self._session.shown, self.font().pointSizeF()

    def _start_over(self) -> None:
        """Fits the lines to other units or another text size; makes them anew where titles move above fields or back."""
        made, stacked = self._measure(), self._session.preferences.stacked
        if (made, stacked) == (self._made, self._stacked):
            return
        for section in self.sections:
            section.forget() if stacked != self._stacked else section.fit(made[0] != self._made[0])
        self._made, self._stacked = made, stacked
        self.refresh()
