"""What a monkey does at the window: one random act after another, through real events wherever there is one."""

import os
from pathlib import Path

from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, QRect, Qt, QUrl
from PySide6.QtGui import QDropEvent, QImage, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractSlider,
    QApplication,
    QComboBox,
    QDialog,
    QFileDialog,
    QInputDialog,
    QLineEdit,
    QMenu,
    QMenuBar,
    QMessageBox,
    QSplitterHandle,
    QWidget,
)  # fmt: skip

from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import save
from fitcalc.window.worksheet.fields import Entry

LEFT, RIGHT, MIDDLE = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton, Qt.MouseButton.MiddleButton
NONE, CTRL, SHIFT, ALT = (
    Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)  # fmt: skip
RUBBISH = (
    "", " ", "-", ".", ",", "e", "1e", "1e308", "-1e308", "nan", "inf", "-0", "0x10", "1_0", "12 3/8", "3/0", "250 mm", "9" * 50,
    "\u00b5", "\u202e123", "12'", '12"', "''''", "<b>bold</b>", "%s%n", "a\tb", "\U0001f600", "x" * 300, "1,234.5", "--5", "+5",
)  # fmt: skip
KEYS = (
    Qt.Key.Key_Tab, Qt.Key.Key_Backtab, Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_Space, Qt.Key.Key_Up,
    Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right, Qt.Key.Key_Home, Qt.Key.Key_End, Qt.Key.Key_PageUp,
    Qt.Key.Key_PageDown, Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_F1, Qt.Key.Key_F5, Qt.Key.Key_F6,
    Qt.Key.Key_Plus, Qt.Key.Key_Minus, Qt.Key.Key_0, Qt.Key.Key_5, Qt.Key.Key_A, Qt.Key.Key_Z, Qt.Key.Key_Y,
)  # fmt: skip
MOST_DRIVERS, MOST_DIALOGS = 6, 4
"""Beyond these the monkey takes drivers out and puts dialogs away, so that memory is measured on like work."""


def files_in(folder):
    """What the monkey opens, drops and names: sound, spoilt and odd files, and names that can't be written."""
    (folder / "spoilt.toml").write_bytes(b"[seat]\nkind = \xff\xfe")
    (folder / "empty.toml").write_bytes(b"")
    (folder / "rubbish.toml").write_text("a = [1, 2\n")
    (folder / "old_new.toml").write_text("format = 99\n[pedals]\n")
    for path in (*sample_cars().values(), *sample_drivers().values()):
        (folder / path.name).write_bytes(path.read_bytes())
    save(Setup(seat_travel=25.0), folder / "rework.toml")
    picture = QImage(640, 480, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.gray)
    picture.save(str(folder / "photo.png"))
    (folder / "photo.jpg").write_bytes(b"\xff\xd8\xff no picture")
    return folder, [
        *sorted(folder.iterdir()),
        folder / "missing.toml",
        folder,
        folder / "no_folder" / "car.toml",
    ]


class Monkey:
    """Acts upon one window by chance."""

    def __init__(self, chance, window, folder):
        self.chance, self.window = chance, window
        self.folder, self.files = folder

    def act(self):
        """One act; its name and what it was done to."""
        if self.window.session.work.occupants[MOST_DRIVERS:]:
            self.window.menus.actions["remove_driver"].trigger()
        dialogs = [each for each in self.shown(QDialog) if not isinstance(each, QMessageBox)]
        for dialog in dialogs[MOST_DIALOGS:]:
            dialog.close()
        name, act = self.chance.choice(ACTS)
        return f"{name} {act(self) or ''}"

    def shown(self, kind):
        """Top-level widgets of a kind that are seen."""
        return [
            each for each in QApplication.topLevelWidgets() if isinstance(each, kind) and each.isVisible()
        ]

    def widgets(self, *kinds):
        """Widgets of a kind that a hand could reach."""
        found = self.window.findChildren(QWidget)
        return [
            each
            for each in found
            if isinstance(each, kinds) and each.isEnabled() and not each.visibleRegion().isEmpty()
        ]

    def spot(self, widget):
        """A place in what is seen of a widget."""
        seen: QRect = widget.visibleRegion().boundingRect()
        return QPoint(
            self.chance.randint(seen.left(), seen.right()), self.chance.randint(seen.top(), seen.bottom())
        )

    def click(self):
        widgets = self.widgets(QWidget)
        if not widgets or self.blocked():
            return self.answer()
        widget = self.chance.choice(widgets)
        if isinstance(widget, QMenuBar) and self.chance.random() < 0.5:
            return ""
        press = QTest.mouseDClick if self.chance.random() < 0.1 else QTest.mouseClick
        button = self.chance.choice((LEFT, LEFT, LEFT, LEFT, RIGHT, MIDDLE))
        press(widget, button, self.chance.choice((NONE, NONE, NONE, CTRL, SHIFT)), self.spot(widget))
        return f"{type(widget).__name__} {button.name}"

    def button(self):
        found = self.widgets(QAbstractButton)
        if found and not self.blocked():
            QTest.mouseClick(self.chance.choice(found), LEFT)

    def blocked(self):
        return QApplication.activeModalWidget() is not None or QApplication.activePopupWidget() is not None

    def drag_sketch(self):
        """From a grip, or from anywhere, to anywhere; sometimes called off, sometimes in the middle of other things."""
        sketch = self.window.centre.sketch
        port = sketch.viewport()
        if self.blocked() or port.visibleRegion().isEmpty():
            return
        at = self.spot(port)
        grips = [mark for mark in sketch._marks._marks.values() if type(mark.primitive).__name__ == "Handle"]
        if grips and self.chance.random() < 0.7:
            near = sketch.mapFromScene(self.chance.choice(grips).sceneBoundingRect().center())
            at = near if port.rect().contains(near) else at
        QTest.mousePress(port, LEFT, NONE, at)
        for _ in range(self.chance.randint(1, 8)):
            at = at + QPoint(self.chance.randint(-60, 60), self.chance.randint(-40, 40))
            at = self.spot(port) if not port.rect().contains(at) else at
            QTest.mouseMove(port, at)
            QApplication.processEvents()
        end = self.chance.random()
        if end < 0.15:
            QTest.keyClick(sketch, Qt.Key.Key_Escape)
        elif end < 0.25:
            self.menu_entry()
        QTest.mouseRelease(port, LEFT, NONE, at)

    def drag_part(self):
        """Sliders, scroll bars and the bars between panels."""
        found = self.widgets(QAbstractSlider, QSplitterHandle)
        found = [each for each in found if not each.metaObject().className().endswith("ScrollArea")]
        if not found or self.blocked():
            return
        widget = self.chance.choice(found)
        start = self.spot(widget)
        QTest.mousePress(widget, LEFT, NONE, start)
        for _ in range(self.chance.randint(1, 6)):
            QTest.mouseMove(widget, self.spot(widget))
        QTest.mouseRelease(widget, LEFT, NONE, self.spot(widget))

    def wheel(self):
        found = self.widgets(QWidget)
        if not found or self.blocked():
            return
        widget = self.chance.choice([*found, self.window.centre.sketch.viewport()])
        at = QPointF(self.spot(widget)) if not widget.visibleRegion().isEmpty() else QPointF()
        turn = QPoint(0, self.chance.choice((-480, -120, 120, 480)))
        event = QWheelEvent(
            at, QPointF(widget.mapToGlobal(at.toPoint())), QPoint(), turn, Qt.MouseButton.NoButton,
            self.chance.choice((NONE, CTRL)), Qt.ScrollPhase.NoScrollPhase, False,
        )  # fmt: skip
        QApplication.sendEvent(widget, event)

    def key(self):
        target = QApplication.activePopupWidget() or QApplication.focusWidget() or self.window
        for _ in range(self.chance.randint(1, 5)):
            key = self.chance.choice(KEYS)
            QTest.keyClick(target, key, self.chance.choice((NONE, NONE, NONE, SHIFT, CTRL)))
            if QApplication.activeModalWidget() or target is not QApplication.focusWidget():
                return

    def type_in(self):
        """A number or rubbish into a field of the worksheet, or whatever has the keyboard."""
        fields = self.widgets(QLineEdit)
        if not fields or self.blocked():
            return ""
        field = self.chance.choice(fields)
        field.setFocus()
        field.selectAll()
        text = self.text_for(field)
        for letter in text:
            QTest.keyClick(field, letter) if letter.isascii() and letter.isprintable() else field.insert(
                letter
            )
        QTest.keyClick(field, self.chance.choice((Qt.Key.Key_Tab, Qt.Key.Key_Return, Qt.Key.Key_Escape)))
        return f"{getattr(field, 'ref', '')} {text[:30]!r}"

    def text_for(self, field):
        number = isinstance(field, Entry) and field.declared.kind == "number"
        if self.chance.random() < 0.3 or not number:
            return self.chance.choice(RUBBISH)
        low, high = field.declared.low or 0.0, field.declared.high or 1000.0
        try:
            now = float(field.text())
        except ValueError:
            now = (low + high) / 2
        return f"{self.chance.choice((self.chance.uniform(low, high), now * self.chance.uniform(0.95, 1.05))):.1f}"

    def choose(self):
        """Another entry of a box: driver, overlay, rules, what moves, a choice of the worksheet."""
        found = [each for each in self.widgets(QComboBox) if each.count()]
        if found and not self.blocked():
            box = self.chance.choice(found)
            at = self.chance.randrange(box.count())
            box.setCurrentIndex(at)
            box.activated.emit(at)

    def sweep(self):
        """Something moves, plays, stands still, goes to the worst."""
        bar = self.window.centre.sweep
        if bar.what.count():
            at = self.chance.randrange(bar.what.count())
            bar.what.setCurrentIndex(at)
            bar.what.activated.emit(at)
        self.chance.choice(
            (bar.play.click, bar.worst.click, lambda: bar.slider.setValue(self.chance.randint(0, 40)))
        )()

    def section(self):
        self.chance.choice(self.window.worksheet.sections).heading.click()

    def menu_entry(self):
        """Any entry of the menus, by its action; leaving is an act of its own."""
        names = [name for name in self.window.menus.actions if name != "quit"]
        name = self.chance.choice(names)
        if not self.blocked():
            self.window.menus.actions[name].trigger()
        return name

    def sample(self):
        """A sample or a recent file from its menu."""
        menus = [menu for menu in self.window.findChildren(QMenu) if menu.actions()]
        if menus and not self.blocked():
            menu = self.chance.choice(menus)
            menu.aboutToShow.emit()
            entries = [
                each
                for each in menu.actions()
                if each.isEnabled() and not each.menu() and "Quit" not in each.text()
            ]
            if entries:
                self.chance.choice(entries).trigger()

    def undo_chain(self):
        stack = self.window.session.undo_stack
        for _ in range(self.chance.randint(1, 4)):
            step = self.chance.choice((stack.undo, stack.redo))
            for _ in range(self.chance.randint(1, 10)):
                step()
        if stack.count() and self.chance.random() < 0.2:
            stack.setIndex(self.chance.randint(0, stack.count()))

    def look(self):
        names = (
            "inches",
            "pounds",
            "system_theme",
            "light_theme",
            "dark_theme",
            "larger_text",
            "smaller_text",
        )
        self.window.menus.actions[self.chance.choice(names)].trigger()

    def resize(self):
        self.window.resize(self.chance.randint(300, 1900), self.chance.randint(200, 1100))

    def drop(self):
        """A file dropped on the window."""
        file, data = self.chance.choice(self.files), QMimeData()
        data.setUrls([QUrl.fromLocalFile(str(file))])
        if not self.blocked():
            event = QDropEvent(QPointF(50, 50), Qt.DropAction.CopyAction, data, LEFT, NONE)
            QApplication.sendEvent(self.window, event)
        return file.name

    def photo(self):
        """A photo beside the car's own file."""
        self.window.filing.write(self.window.session.work.car, self.folder / "own_car.toml")
        self.window.photos.load(
            str(self.folder / self.chance.choice(("photo.png", "photo.jpg", "missing.png")))
        )

    def wait(self):
        QTest.qWait(self.chance.choice((10, 50, 150, 400)))

    def answer(self):
        """Something done with the dialog or menu in front: a name typed, a button pressed, or put away."""
        popup = QApplication.activePopupWidget()
        if popup is not None:
            for _ in range(self.chance.randint(0, 4)):
                QTest.keyClick(popup, Qt.Key.Key_Down)
            QTest.keyClick(popup, self.chance.choice((Qt.Key.Key_Escape, Qt.Key.Key_Return)))
            return "popup"
        dialogs = self.shown(QDialog)
        if not dialogs:
            return ""
        dialog = QApplication.activeModalWidget() or self.chance.choice(dialogs)
        if isinstance(dialog, QFileDialog):
            self.name_file(dialog)
        elif isinstance(dialog, QInputDialog) and self.chance.random() < 0.6:
            dialog.setDoubleValue(self.chance.uniform(0.0, 7000.0))
            dialog.accept()
        else:
            self.press(dialog)
        return type(dialog).__name__

    def name_file(self, dialog):
        if self.chance.random() < 0.3:
            dialog.reject()
            return
        dialog.setDirectory(str(self.folder))
        name = self.chance.choice(
            (*(each.name for each in self.files), "own.toml", "own", "a/b.toml", "x" * 300, "..", " ")
        )
        line = dialog.findChild(QLineEdit)
        line.setText(name)
        QTest.keyClick(line, Qt.Key.Key_Return)

    def press(self, dialog):
        buttons = [
            each for each in dialog.findChildren(QAbstractButton) if each.isEnabled() and each.isVisible()
        ]
        if buttons and self.chance.random() < 0.7:
            QTest.mouseClick(self.chance.choice(buttons), LEFT)
        else:
            QTest.keyClick(dialog, Qt.Key.Key_Escape)

    def leave(self):
        """Quits, as a person would; whoever runs the monkey opens another window where it is gone."""
        if not self.blocked():
            self.window.menus.actions["quit"].trigger()

    def touch_file(self):
        """Another program writes, takes away or locks a file that was opened here."""
        file = self.folder / self.chance.choice(
            ("hillclimb.toml", "robin.toml", "own_car.toml", "rework.toml")
        )
        if file.exists():
            self.chance.choice(
                (lambda: file.write_text(file.read_text() + "# seen\n"), file.unlink, lambda: os.utime(file))
            )()
        else:
            source = {**sample_cars(), **sample_drivers()}.get(file.stem)
            file.write_bytes(Path(source).read_bytes() if source else b"")


WEIGHTS = {
    "click": 12, "button": 8, "drag_sketch": 12, "drag_part": 8, "wheel": 5, "key": 10, "type_in": 14, "choose": 8,
    "sweep": 5, "section": 5, "menu_entry": 6, "sample": 3, "undo_chain": 6, "look": 5, "resize": 3, "drop": 4, "photo": 2,
    "wait": 8, "answer": 14, "leave": 1, "touch_file": 1,
}  # fmt: skip
ACTS = [(name, getattr(Monkey, name)) for name, weight in WEIGHTS.items() for _ in range(weight)]
SETTLE = QEvent.Type.DeferredDelete
