"""The findings as Qt's list model."""

from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from fitcalc.checks.check import STATUSES, Status
from fitcalc.window.findings.finding import Finding

Index = QModelIndex | QPersistentModelIndex
FINDING = Qt.ItemDataRole.UserRole
ROOT = QModelIndex()


class FindingsModel(QAbstractListModel):
    """Findings of the statuses that are wanted, worst first."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._all: tuple[Finding, ...] = ()
        self._shown: tuple[Finding, ...] = ()
        self._statuses = frozenset(STATUSES)

    def rowCount(self, parent: Index = ROOT) -> int:
        """How many findings are listed."""
        return 0 if parent.isValid() else len(self._shown)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """One finding, whole or as a sentence."""
        if not index.isValid() or index.row() >= len(self._shown):
            return None
        finding = self._shown[index.row()]
        if role == FINDING:
            return finding
        words = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
        return finding.sentence if role in words else None

    def show_findings(self, findings: tuple[Finding, ...]) -> None:
        """Lists other findings; those that stay in their place keep it."""
        self._all = findings
        self._filter()

    def show_statuses(self, statuses: frozenset[Status]) -> None:
        """Lists only findings of these statuses."""
        self._statuses = statuses
        self._filter()

    def row_of(self, id: str) -> int:
        """Row of a check, or of the first one on that figure; -1 when none is listed."""
        rows = [at for at, finding in enumerate(self._shown) if id in (finding.id, finding.figure)]
        return rows[0] if rows else -1

    def count(self, status: Status) -> int:
        """How many findings have a status, listed or not."""
        return sum(finding.status == status for finding in self._all)

    def _filter(self) -> None:
        """Brings the rows up to date in place: the list keeps its scroll, and only rows that differ are painted."""
        shown = tuple(finding for finding in self._all if finding.status in self._statuses)
        before = self._shown
        if len(shown) < len(before):
            self.beginRemoveRows(ROOT, len(shown), len(before) - 1)
            self._shown = shown
            self.endRemoveRows()
        elif len(shown) > len(before):
            self.beginInsertRows(ROOT, len(before), len(shown) - 1)
            self._shown = shown
            self.endInsertRows()
        self._shown = shown
        for row, (old, new) in enumerate(zip(before, shown, strict=False)):
            if old != new:
                self.dataChanged.emit(self.index(row), self.index(row))
