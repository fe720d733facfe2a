"""Palette, style and text size of the whole program."""

from functools import partial

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from fitcalc.window.colours import DARK, LIGHT, Colours
from fitcalc.window.preferences import Preferences

ROLES = {
    QPalette.ColorRole.Window: "panel",
    QPalette.ColorRole.WindowText: "ink",
    QPalette.ColorRole.Base: "paper",
    QPalette.ColorRole.AlternateBase: "panel",
    QPalette.ColorRole.Text: "ink",
    QPalette.ColorRole.PlaceholderText: "quiet",
    QPalette.ColorRole.Button: "raised",
    QPalette.ColorRole.ButtonText: "ink",
    QPalette.ColorRole.ToolTipBase: "paper",
    QPalette.ColorRole.ToolTipText: "ink",
    QPalette.ColorRole.Highlight: "accent",
    QPalette.ColorRole.HighlightedText: "on_accent",
    QPalette.ColorRole.Accent: "accent",
    QPalette.ColorRole.Link: "accent",
    QPalette.ColorRole.LinkVisited: "accent",
    QPalette.ColorRole.BrightText: "failed",
    QPalette.ColorRole.Mid: "rule",
    QPalette.ColorRole.Midlight: "rule",
    QPalette.ColorRole.Dark: "rule",
    QPalette.ColorRole.Light: "raised",
    QPalette.ColorRole.Shadow: "estimated",
}
FADED = (QPalette.ColorRole.WindowText, QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText)

SHEET = """
QToolTip {{ color: {ink}; background: {paper}; border: 1px solid {rule}; padding: 4px; }}
QLabel[role="heading"] {{ font-weight: bold; }}
QLabel[role="quiet"] {{ color: {quiet}; }}
QLabel[role="refused"] {{ color: {failed}; }}
QLabel[role="live"] {{ color: {ink}; background: {paper}; border: 1px solid {rule}; padding: 1px; }}
QFrame[role="bar"] {{ background: {panel}; border-top: 1px solid {rule}; }}
QLineEdit {{ background: {paper}; color: {ink}; border: 1px solid {rule}; border-radius: 2px; padding: 1px 3px; }}
QLineEdit:focus {{ border: 2px solid {accent}; padding: 0px 2px; }}
QToolButton[role="section"] {{ font-weight: bold; text-align: left; border: none; border-bottom: 1px solid {rule};
  background: {raised}; padding: 4px; }}
QToolButton[role="section"]:focus {{ border: 2px solid {accent}; padding: 2px 3px; }}
QToolButton:checked {{ background: {paper}; border: 1px solid {accent}; border-radius: 2px; }}
QToolButton[role="section"]:checked {{ background: {raised}; border: none; border-bottom: 1px solid {rule}; }}
QToolButton[role="section"]:checked:focus {{ border: 2px solid {accent}; }}
QSplitter::handle {{ background: {rule}; }}
QListView {{ background: {paper}; border: 1px solid {rule}; }}
QListView:focus {{ border: 2px solid {accent}; }}
"""


class Look(QObject):
    """How the program looks; follows the system where the person does not choose.

    Font and palette are the program's; the style sheet is given part by part, and to no part with many widgets: Qt goes
    through every widget below it each time. It comes with the first `show_as`, when the parts are made.

    Signals:
        changed: colours or text size are others than before.
    """

    changed = Signal()

    def __init__(
        self, application: QApplication, preferences: Preferences, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._application, self._preferences = application, preferences
        self._dressed: list[QWidget] = []
        self._sheet = ""
        self._system_size = QFontDatabase.systemFont(QFontDatabase.SystemFont.GeneralFont).pointSizeF()
        application.styleHints().colorSchemeChanged.connect(self._follow_system)
        application.setFont(self._font())
        application.setPalette(palette_of(self.colours))

    @property
    def colours(self) -> Colours:
        """The palette in use."""
        theme = self._preferences.theme
        if theme == "system":
            scheme = self._application.styleHints().colorScheme()
            return DARK if scheme == Qt.ColorScheme.Dark else LIGHT
        return DARK if theme == "dark" else LIGHT

    def show_as(self, preferences: Preferences) -> bool:
        """Takes over another theme or text size; whether the size of text is another one than before."""
        before, self._preferences = self._application.font().pointSizeF(), preferences
        resized, sheet = self._font().pointSizeF() != before, sheet_of(self.colours)
        if not resized and sheet == self._sheet:
            return False
        self._application.setFont(self._font())
        self._application.sendPostedEvents(None, QEvent.Type.ApplicationFontChange)
        if sheet != self._sheet:
            self._sheet = sheet
            self._application.setPalette(palette_of(self.colours))
            self._application.sendPostedEvents(None, QEvent.Type.ApplicationPaletteChange)
            for part in self._dressed:
                part.setStyleSheet(sheet)
        self.changed.emit()
        return resized

    def dress(self, *parts: QWidget) -> None:
        """Gives parts, and all that is in them, the style sheet, now and whenever it changes."""
        for part in parts:
            self._dressed.append(part)
            part.destroyed.connect(partial(self._dressed.remove, part))
            if self._sheet:
                part.setStyleSheet(self._sheet)

    def _follow_system(self) -> None:
        if self._preferences.theme == "system":
            self.show_as(self._preferences)

    def _font(self) -> QFont:
        font = QFont(self._application.font())
        font.setPointSizeF(self._system_size * self._preferences.text_size / 100)
        return font


def palette_of(colours: Colours) -> QPalette:
    """The colours as Qt's roles."""
    palette = QPalette()
    for role, name in ROLES.items():
        palette.setColor(role, QColor(getattr(colours, name)))
    for role in FADED:
        palette.setColor(QPalette.ColorGroup.Disabled, role, QColor(colours.quiet))
    return palette


def sheet_of(colours: Colours) -> str:
    """What the palette alone can't say."""
    return SHEET.format(**{name: getattr(colours, name) for name in Colours.__dataclass_fields__})
