"""The window: measurements, sketch with the rework below it, findings; cautions at its foot."""

from pathlib import Path

from PySide6.QtCore import QByteArray, QEvent, Qt
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QVBoxLayout, QWidget

from fitcalc.window.autosave import Autosave
from fitcalc.window.cautions import Cautions
from fitcalc.window.centre import Centre
from fitcalc.window.commands import Commands
from fitcalc.window.filing import Filing
from fitcalc.window.findings.panel import Findings
from fitcalc.window.garbage import Garbage
from fitcalc.window.jobs import Jobs
from fitcalc.window.look import Look
from fitcalc.window.menus import Menus
from fitcalc.window.notice import Notice, Offer
from fitcalc.window.paperwork import Paperwork
from fitcalc.window.parts import Parts
from fitcalc.window.people import People
from fitcalc.window.photos import Photos
from fitcalc.window.preferences import settings
from fitcalc.window.rework.panel import Rework
from fitcalc.window.session import Session
from fitcalc.window.splitter import Splitter
from fitcalc.window.status import Status
from fitcalc.window.studies.desk import Desk
from fitcalc.window.work import KINDS
from fitcalc.window.worksheet.panel import Worksheet

FIRST_SIZE = (1280, 800)
LEAST_LEFT = 318
"""Least width of the worksheet, px: its longest title, a field, its unit and how sure it is, side by side."""


class MainWindow(QMainWindow):
    """Everything that one session shows."""

    def __init__(self, session: Session, look: Look) -> None:
        super().__init__()
        self.session, self.look = session, look
        self._may_close, self._garbage = False, Garbage(self)
        self.jobs, self.filing, self.autosave = Jobs(self), Filing(session, self), Autosave(session, self)
        self.notice, self.cautions = Notice(self), Cautions(self)
        self.people, self.worksheet = People(session, self), Worksheet(session, look, self)
        self.centre, self.findings = Centre(session, look, self), Findings(session, look, self)
        self.rework = Rework(session, look, self)
        self._lay_out()
        self.commands, self.photos, self.paperwork = Commands(self), Photos(self), Paperwork(self)
        self.desk = Desk(self)
        self.menus = Menus(self)
        self.status = Status(self)
        self._connect()
        self.setAcceptDrops(True)
        self.resize(*FIRST_SIZE)
        self._restore_shape()
        self._share_out()
        self._show_title()
        look.dress(
            self.notice, self.people, self.centre, self.rework, self.findings, *self.worksheet.plain_parts
        )
        look.show_as(session.preferences)

    def settle_typing(self) -> None:
        """Uses what is typed in the field that has the keyboard."""
        focused = self.focusWidget()
        if focused is not None:
            focused.clearFocus()
            focused.setFocus()

    def focus_next_panel(self) -> None:
        """Gives the keyboard to the next of worksheet, sketch, rework and findings."""
        panels = [self.worksheet, self.centre, self.rework, self.findings]
        focused = self.focusWidget()
        at = next((at for at, panel in enumerate(panels) if focused and panel.isAncestorOf(focused)), -1)
        first = panels[(at + 1) % len(panels)]
        self.parts.bring_up(first)
        for child in first.findChildren(QWidget):
            if (
                child.focusPolicy() & Qt.FocusPolicy.TabFocus
                and child.isVisibleTo(self)
                and child.isEnabled()
            ):
                child.setFocus(Qt.FocusReason.ShortcutFocusReason)
                return

    def paintEvent(self, event: QPaintEvent) -> None:
        """Has everything evaluated once the window stands there."""
        super().paintEvent(event)
        self.session.begin()

    def changeEvent(self, event: QEvent) -> None:
        """Looks, when the person comes back to the window, whether somebody else has written to its files."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and self.isActiveWindow():
            self.filing.look_for_changes()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Parts stand behind each other where the window becomes too narrow for them, and beside each other again."""
        super().resizeEvent(event)
        before = self.parts.is_shared
        self.parts.arrange(self.width())
        if self.parts.is_shared != before:
            self._share_out()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Asks where something is not saved; then leaves nothing running and nothing behind."""
        self.settle_typing()
        if (self.session.unsaved() or self.desk.unkept()) and not self._may_close:
            event.ignore()
            self._ask_before_closing()
            return
        self._let_go()
        self.jobs.wait()
        self.session.let_go()
        self.centre.photo.layer.wait()
        self._garbage.let_go()
        self.autosave.forget()
        settings().setValue("geometry", self.saveGeometry())
        event.accept()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Takes files."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Opens the files that are dropped."""
        event.acceptProposedAction()
        for url in event.mimeData().urls():
            if url.isLocalFile():
                self.filing.open(Path(url.toLocalFile()))

    def _lay_out(self) -> None:
        left = QWidget(self)
        left.setMinimumWidth(LEAST_LEFT)
        self.people.setMinimumWidth(1)
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.people)
        column.addWidget(self.worksheet, 1)
        self.middle = middle = Splitter(Qt.Orientation.Vertical, self)
        middle.setChildrenCollapsible(False)
        middle.addWidget(self.centre)
        middle.addWidget(self.rework)
        middle.setStretchFactor(0, 1)
        self.parts = Parts(left, middle, self.findings, self)
        page = QWidget(self)
        rows = QVBoxLayout(page)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(0)
        for part in (self.notice, self.parts, self.cautions):
            rows.addWidget(part, 1 if part is self.parts else 0)
        self.setCentralWidget(page)

    def _share_out(self) -> None:
        """Gives every part what its text needs, and the sketch the rest."""
        self.parts.arrange(self.width())
        self.parts.share_out(self.width(), LEAST_LEFT)
        share = 6 if self.session.preferences.stacked else 4
        strip = self.rework.height_for(min(14 * self.fontMetrics().lineSpacing(), self.height() // share))
        self.middle.setSizes([self.height() - strip, strip])
        foot = min(10 * self.fontMetrics().lineSpacing(), self.height() // 5)
        for panel in (self.worksheet, self.findings):
            panel.setSizes([self.height() - foot, foot])

    def _connect(self) -> None:
        session = self.session
        session.preferences_changed.connect(self._show_preferences)
        session.said.connect(self.notice.say)
        session.wanted.connect(lambda _ref: self.parts.bring_up(self.worksheet))
        session.pointed_at.connect(self._bring_up_finding)
        session.asked.connect(self._offer)
        session.files_changed.connect(self._show_title)
        session.work_changed.connect(self._show_title)
        self.jobs.refused.connect(self.notice.say)
        self.rework.fit_wanted.connect(self.commands.find_rework)
        self.rework.reset_wanted.connect(self.commands.reset_rework)
        self.people.add.clicked.connect(self.commands.new_driver)

    def _bring_up_finding(self, ref: str) -> None:
        if ref.partition(".")[0] not in KINDS:
            self.parts.bring_up(self.findings)

    def _offer(self, sentence: str, offers: tuple[Offer, ...]) -> None:
        self.notice.say(sentence, *offers)

    def _show_preferences(self) -> None:
        resized = self.look.show_as(self.session.preferences)
        if resized:
            self._share_out()

    def _show_title(self) -> None:
        work = self.session.work
        self.setWindowModified(bool(self.session.unsaved()))
        self.setWindowTitle(f"{work.driver.name} in {work.car.document.name}[*] - fitcalc")

    def _let_go(self) -> None:
        """Leaves nothing half done, so that no event of a widget that goes meets one that has gone."""
        self.centre.picker.stop()
        self.centre.sweep.play.setChecked(False)
        focused = self.focusWidget()
        if focused is not None:
            focused.clearFocus()

    def _ask_before_closing(self) -> None:
        from PySide6.QtWidgets import QMessageBox

        told = [self.filing.describe(each) for each in self.session.unsaved()]
        names = ", ".join([*told, *(each.windowTitle() for each in self.desk.unkept())])
        buttons = QMessageBox.StandardButton
        box = QMessageBox(
            QMessageBox.Icon.NoIcon, "Not saved", f"Not saved: {names}.", buttons.NoButton, self
        )
        box.setStandardButtons(buttons.Save | buttons.Discard | buttons.Cancel)
        box.setDefaultButton(buttons.Save)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.button(buttons.Save).clicked.connect(lambda: self.filing.save_all(self._keep_and_close))
        box.button(buttons.Discard).clicked.connect(self._close_now)
        box.open()

    def _keep_and_close(self) -> None:
        """Keeps what was measured after the work too, and closes."""
        waiting = self.desk.unkept()
        if waiting:
            waiting[0].keep(self._keep_and_close)
        else:
            self._close_now()

    def _close_now(self) -> None:
        self._may_close = True
        self.close()

    def _restore_shape(self) -> None:
        geometry = settings().value("geometry")
        if isinstance(geometry, QByteArray):
            self.restoreGeometry(geometry)
