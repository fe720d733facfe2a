"""The three parts side by side; where the text is too large for that, measurements and findings share one place."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTabWidget, QWidget

from fitcalc.window.findings.panel import Findings
from fitcalc.window.splitter import Splitter

LEAST_COLUMNS = 130
"""Width of the window, in letters, from which three parts have room side by side."""
LEFT, RIGHT = (46, 0.28), (44, 0.27)
"""Width of worksheet and of findings: letters, but no more than this share of the window."""
SHARED = (50, 0.36)
"""The same where they share one place."""


class Parts(Splitter):
    """Worksheet, sketch with rework, findings.

    Attributes:
        tabs: where worksheet and findings stand behind each other; hidden where there is room for both.
    """

    def __init__(self, left: QWidget, middle: QWidget, findings: Findings, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self._left, self._middle, self._findings = left, middle, findings
        self.setChildrenCollapsible(False)
        self.tabs = QTabWidget(self)
        self.tabs.setAccessibleName("measurements and findings")
        self.tabs.setDocumentMode(True)
        for at, part in enumerate((self.tabs, left, middle, findings)):
            self.insertWidget(at, part)
        self.setStretchFactor(2, 1)
        self.tabs.hide()

    @property
    def is_shared(self) -> bool:
        """Whether worksheet and findings share one place."""
        return self.tabs.count() > 0

    def arrange(self, width: int) -> None:
        """Puts the parts as they have room in a window of this width, px."""
        shared = width < LEAST_COLUMNS * self.fontMetrics().horizontalAdvance("n")
        if shared and not self.is_shared:
            self.tabs.addTab(self._left, "Measurements")
            self.tabs.addTab(self._findings, "Findings")
        elif self.is_shared and not shared:
            self.tabs.clear()
            self.insertWidget(1, self._left)
            self.insertWidget(3, self._findings)
        for part in (self._left, self._findings):
            part.setVisible(not shared or part is self.tabs.currentWidget())
        self.tabs.setVisible(shared)

    def share_out(self, width: int, least_left: int) -> None:
        """Gives worksheet and findings what their text needs, and the sketch the rest."""
        if self.is_shared:
            left = max(self._wide(SHARED, width), least_left)
            self.setSizes([left, width - left])
            return
        left, right = max(self._wide(LEFT, width), least_left), self._wide(RIGHT, width)
        self.setSizes([0, left, width - left - right, right])

    def bring_up(self, part: QWidget) -> None:
        """Shows a part that stands behind another."""
        for at in range(self.tabs.count()):
            page = self.tabs.widget(at)
            if page is not None and (page is part or page.isAncestorOf(part)):
                self.tabs.setCurrentIndex(at)

    def _wide(self, part: tuple[int, float], width: int) -> int:
        letters, share = part
        return min(letters * self.fontMetrics().horizontalAdvance("n"), int(width * share))
