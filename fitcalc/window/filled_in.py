"""What a filled-in worksheet would change, to look at before it is taken in."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QHeaderView,
    QTreeWidget,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from fitcalc.documents.declared import Declared
from fitcalc.errors import InputError
from fitcalc.window.session import Session
from fitcalc.window.work import declared_for, with_document

if TYPE_CHECKING:
    from fitcalc.paper.worksheet_file import Change

HEAD = ("measurement", "before", "on the worksheet")
SIZE = (640, 420)
NOT_GIVEN = "not given"


class FilledIn(QDialog):
    """A table of changes beside the work; taken in, they are one undo step."""

    def __init__(self, session: Session, changes: "list[Change]", name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._changes, self._name = session, changes, name
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(f"From {name}")
        self.table = QTreeWidget(self)
        self.table.setHeaderLabels(HEAD)
        self.table.setRootIsDecorated(False)
        self.table.setAccessibleName("changes on the worksheet")
        self.table.header().setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for change in changes:
            self.table.addTopLevelItem(QTreeWidgetItem(self._row(change)))
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close, self)
        self.take = buttons.addButton("Take these over", QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.accepted.connect(self._use)
        buttons.rejected.connect(self.close)
        page = QVBoxLayout(self)
        page.addWidget(self.table)
        page.addWidget(buttons)
        self.resize(*SIZE)

    def _row(self, change: "Change") -> list[str]:
        declared = declared_for(f"{change.document}.{change.path}")
        title = f"{declared.title} ({change.document}.{change.path})"
        return [title, self._told(change.old, declared), self._told(change.new, declared)]

    def _told(self, value: float | str | None, declared: Declared) -> str:
        """A number with its unit, or a word as it is."""
        if value is None or isinstance(value, str):
            return NOT_GIVEN if value is None else value
        shown = self._session.shown
        return f"{shown.typed(value, declared.unit)} {shown.unit(declared.unit).strip('-')}"

    def _use(self) -> None:
        """Takes everything over as one undo step."""
        from fitcalc.paper.worksheet_file import applied

        work = self._session.work
        documents: dict[str, Any] = {"car": work.car.document, "driver": work.driver}
        try:
            for kind, document in documents.items():
                own = [change for change in self._changes if change.document == kind]
                work = with_document(work, kind, applied(own, document)) if own else work
        except InputError as error:
            self._session.said.emit(str(error))
            return
        self._session.push(f"take in {self._name}", work)
        self.close()
