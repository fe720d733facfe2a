"""What a finding opens to: how it was measured, whose limit it is, and what would mend it."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from fitcalc.window.findings.finding import Finding
from fitcalc.window.session import Session

NOTHING = "Choose a finding: here stands where its limit comes from and what would mend it."


class Detail(QFrame):
    """The foot of the findings."""

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session = session
        self._finding: Finding | None = None
        self.setProperty("role", "bar")
        self._words = QLabel(NOTHING, self)
        self._words.setWordWrap(True)
        self._words.setMargin(6)
        self._words.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        self._words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._words.setAccessibleName("source and remedy")
        self._jump = QPushButton("Go to the missing measurement", self)
        self._jump.clicked.connect(self._go)
        self._jump.hide()
        page = QVBoxLayout(self)
        page.setContentsMargins(0, 0, 0, 0)
        page.addWidget(self._area(), 1)
        line = QHBoxLayout()
        line.setContentsMargins(6, 0, 6, 6)
        line.addWidget(self._jump)
        line.addStretch(1)
        page.addLayout(line)

    def show_finding(self, finding: Finding | None) -> None:
        """Shows one finding whole."""
        self._finding = finding
        self._jump.setVisible(bool(finding and finding.missing))
        self._words.setText(words_of(finding) if finding else NOTHING)

    def _area(self) -> QScrollArea:
        area = QScrollArea(self, widgetResizable=True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setAccessibleName("source and remedy")
        area.setWidget(self._words)
        return area

    def _go(self) -> None:
        if self._finding:
            self._session.wanted.emit(self._finding.missing)


def words_of(finding: Finding) -> str:
    """All that is known of a finding, as rich text."""
    from html import escape

    told = (
        ("", f"<b>{escape(finding.what[:1].upper() + finding.what[1:])}</b>: {escape(finding.status)}"),
        ("", escape(finding.figures)),
        ("To mend it", escape(finding.remedy)),
        ("Limit from", escape(finding.source)),
        ("Rules", escape(finding.rules)),
        ("Measured", escape(finding.points)),
    )
    return "<br>".join(f"<b>{head}:</b> {text}" if head else text for head, text in told if text)
