"""Menus and tool bar, made from the table of actions."""

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QToolBar

from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.window.actions import ENTRIES, MENUS, TOOLS, Entry

if TYPE_CHECKING:
    from fitcalc.window.main_window import MainWindow


class Menus(QObject):
    """Every action by name, in the menus and in the tool bar."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window = window
        self.actions: dict[str, QAction] = {}
        self.menus = {title: self._menu(title) for title in MENUS}
        self._add_undo()
        for entry in ENTRIES:
            self._add(entry)
        self._recent = self._submenu("&File", "Open &recent", "save")
        self._recent.aboutToShow.connect(self._fill_recent)
        self._fill_samples("&File", "Sample c&ars", sample_cars())
        self._fill_samples("&File", "Sample dr&ivers", sample_drivers())
        self._add_tools()
        window.session.preferences_changed.connect(self.refresh)
        window.session.work_changed.connect(self.refresh)
        window.session.results_changed.connect(self.refresh)
        window.session.files_changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Switches stand as the session does; what can't be done is grey."""
        session = self._window.session
        for name, on in (
            ("inches", session.preferences.inches),
            ("pounds", session.preferences.pounds),
            ("letter_paper", session.preferences.letter),
            ("overlay_driver", session.choice.overlaid is not None),
            ("show_found", self._window.centre.found.isChecked()),
        ):
            self.actions[name].setChecked(on)
        several = len(session.work.occupants) > 1
        for name in ("next_driver", "remove_driver", "overlay_driver", "share_car"):
            self.actions[name].setEnabled(several)

    def _menu(self, title: str) -> QMenu:
        menu = self._window.menuBar().addMenu(title)
        menu.setToolTipsVisible(True)
        return menu

    def _add(self, entry: Entry) -> None:
        action = QAction(entry.text, self._window)
        action.setShortcut(QKeySequence(entry.keys))
        action.setToolTip(entry.tip or entry.text.replace("&", ""))
        action.setStatusTip(entry.tip)
        action.setCheckable(entry.is_switch)
        does = getattr(self._window.commands, entry.name)
        action.triggered.connect(does if entry.is_switch else lambda: does())
        self.actions[entry.name] = action
        self.menus[entry.menu].addAction(action)
        if entry.ends_group:
            self.menus[entry.menu].addSeparator()

    def _add_undo(self) -> None:
        stack = self._window.session.undo_stack
        for name, action, keys in (
            ("undo", stack.createUndoAction(self._window, "&Undo"), QKeySequence.StandardKey.Undo),
            ("redo", stack.createRedoAction(self._window, "&Redo"), QKeySequence.StandardKey.Redo),
        ):
            action.setShortcut(QKeySequence(keys))
            action.setIconText(name.capitalize())
            action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
            self.actions[name] = action
            self.menus["&Edit"].addAction(action)

    def _submenu(self, menu: str, title: str, before: str) -> QMenu:
        made = QMenu(title, self._window)
        self.menus[menu].insertMenu(self.actions[before], made)
        return made

    def _fill_samples(self, menu: str, title: str, samples: dict[str, Path]) -> None:
        made = self._submenu(menu, title, "save")
        for name, path in samples.items():
            made.addAction(name).triggered.connect(partial(self._open, path))

    def _fill_recent(self) -> None:
        self._recent.clear()
        for name in self._window.session.preferences.recent:
            self._recent.addAction(name.replace("&", "&&")).triggered.connect(partial(self._open, Path(name)))
        if self._recent.isEmpty():
            self._recent.addAction("nothing yet").setEnabled(False)

    def _open(self, path: Path, checked: bool = False) -> None:
        self._window.filing.open(path)

    def _add_tools(self) -> None:
        bar = QToolBar("tools", self._window)
        bar.setObjectName("tools")
        bar.setMovable(False)
        for name in TOOLS:
            if name:
                bar.addAction(self.actions[name])
            else:
                bar.addSeparator()
        self._window.addToolBar(bar)
