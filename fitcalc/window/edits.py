"""The one undo command, and the gesture that turns a drag into one of it."""

from collections.abc import Callable
from typing import Any

from PySide6.QtGui import QUndoCommand

from fitcalc.window.work import Work


class Edit(QUndoCommand):
    """One change of the work, as a person would name it.

    Attributes:
        gesture: edits that follow each other in one gesture become one; empty for an edit of its own.
    """

    def __init__(
        self, text: str, before: Work, after: Work, show: Callable[[Work], None], gesture: str
    ) -> None:
        super().__init__(text)
        self.before, self.after, self.gesture = before, after, gesture
        self._show = show

    def redo(self) -> None:
        """Shows the work after the change."""
        self._show(self.after)

    def undo(self) -> None:
        """Shows the work before the change."""
        self._show(self.before)

    def go_on_to(self, after: Work) -> None:
        """Becomes a change to another work; one that leads back to the start is none, and undoing it takes it away."""
        self.after = after
        self.setObsolete(after == self.before)


class Gesture:
    """A drag: any number of previews, then one undo step or none."""

    def __init__(self, session: Any, text: str) -> None:
        self._session, self._text, self._before = session, text, session.work

    def move(self, after: Work) -> None:
        """Shows where the drag would lead."""
        if after != self._session.work:
            self._session.preview(after)
        else:
            self._session.keep_waiting()

    def commit(self) -> None:
        """Ends the drag as one undo step."""
        self._session.push_from(self._before, self._text)

    def cancel(self) -> None:
        """Ends the drag as if it had not been."""
        self._session.show(self._before)
