"""The slider that moves a pedal or the wheel through its range while the body follows."""

from dataclasses import replace

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QSizePolicy, QSlider, QToolButton, QWidget

from fitcalc.window.movements import STEERING, Movement, movements_of
from fitcalc.window.results import Results
from fitcalc.window.session import Session

STILL = "nothing moves"
STEPS = 40
"""Steps of the slider from one end of a range to the other."""
FRAME = 40
"""From one step of a play to the next, ms."""


class SweepBar(QWidget):
    """What moves, how far, and the way through it.

    Attributes:
        words: what there is to say of this moment.

    Signals:
        moved: another moment is to be drawn.
    """

    moved = Signal()

    def __init__(self, session: Session, parent: QWidget) -> None:
        super().__init__(parent)
        self._session, self._forward = session, True
        self._movements: tuple[Movement, ...] = ()
        self.what = QComboBox(self)
        self.what.setAccessibleName("what moves")
        self.what.setToolTip("Moves a pedal or the wheel through its range; the body follows")
        self.slider = QSlider(Qt.Orientation.Horizontal, self)
        self.slider.setAccessibleName("part of the range")
        self.slider.setRange(0, STEPS)
        self.slider.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.play, self.worst = self._button("Play", True), self._button("Worst", False)
        self.worst.setToolTip(
            "Go to where the shoe or the fist passes closest; of the wheel, once more: where an arm is straightest"
        )
        self.words = ""
        self._timer = QTimer(self, interval=FRAME)
        self._timer.timeout.connect(self._step)
        self._lay_out()
        self.what.activated.connect(self._start)
        self.slider.valueChanged.connect(self._show)
        self.play.toggled.connect(self._play)
        self.worst.clicked.connect(self._go_to_worst)
        session.settled.connect(self._follow)
        self._follow()

    @property
    def movement(self) -> Movement | None:
        """What moves, or nothing."""
        at = self.what.currentIndex()
        return self._movements[at - 1] if at > 0 else None

    @property
    def part(self) -> float:
        """Where in its range it is."""
        movement = self.movement
        if movement is None:
            return 0.0
        return movement.low + (movement.high - movement.low) * self.slider.value() / STEPS

    def at_moment(self, results: Results) -> Results:
        """The results with the driver as he or she sits at this moment; the same where nothing moves."""
        movement = self.movement
        if movement is None or movement not in movements_of(results.after.car):
            self.words = ""
            return results
        from fitcalc.window.moments import at_moment

        moved = replace(results, after=at_moment(results.after, movement.name, self.part))
        self.words = self._said(moved, movement)
        return moved

    def hideEvent(self, event: QHideEvent) -> None:
        """Stops a play that nobody sees."""
        super().hideEvent(event)
        self.play.setChecked(False)

    def _lay_out(self) -> None:
        line = QHBoxLayout(self)
        line.setContentsMargins(6, 2, 6, 2)
        for widget in (self.what, self.slider, self.play, self.worst):
            line.addWidget(widget)

    def _button(self, text: str, stays: bool) -> QToolButton:
        button = QToolButton(self)
        button.setText(text)
        button.setCheckable(stays)
        button.setAccessibleName({"Play": "play the movement", "Worst": "go to the worst moment"}[text])
        button.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        return button

    def _follow(self) -> None:
        """Offers what this car has."""
        movements = movements_of(self._session.work.car.document)
        if movements != self._movements:
            self._movements = movements
            self.what.clear()
            self.what.addItems([STILL, *(each.name for each in movements)])
        self._enable()

    def _enable(self) -> None:
        moves = self.movement is not None
        for widget in (self.slider, self.play, self.worst):
            widget.setEnabled(moves)
        if not moves:
            self.play.setChecked(False)

    def _start(self) -> None:
        self.play.setChecked(False)
        was = self.slider.blockSignals(True)
        self.slider.setValue(STEPS // 2 if self.movement and self.movement.name == STEERING else 0)
        self.slider.blockSignals(was)
        self._enable()
        self.moved.emit()

    def _show(self) -> None:
        self.moved.emit()

    def _play(self, on: bool) -> None:
        if on:
            self._timer.start()
        else:
            self._timer.stop()

    def _step(self) -> None:
        at = self.slider.value()
        if at in (0, STEPS):
            self._forward = at == 0
        self.slider.setValue(at + (1 if self._forward else -1))

    def _go_to_worst(self) -> None:
        """Steps to the worst moment; where there are several, on from one to the next."""
        from fitcalc.window.moments import worst

        movement = self.movement
        found = worst(self._session.result, movement.name) if movement else ()
        if movement is None or not found:
            return
        self.play.setChecked(False)
        places = [round(STEPS * (each.at - movement.low) / (movement.high - movement.low)) for each in found]
        here = places.index(self.slider.value()) if self.slider.value() in places else -1
        self.slider.setValue(places[(here + 1) % len(places)])

    def _said(self, results: Results, movement: Movement) -> str:
        shown, sitting = self._session.shown, results.after.sitting
        if movement.name == STEERING:
            wheel = results.after.car.steering_wheel
            angles = " and ".join(
                shown.amount(float(arm.elbow_angle[0]), "deg") for arm in sitting.hands or ()
            )
            turned = shown.signed(self.part * (wheel.lock if wheel else 0.0), "deg")
            return f"{turned}: elbows {angles}{self._near(results, movement)}"
        knee = shown.amount(float(sitting.pedals[movement.name].rest.knee_angle[0]), "deg")
        return f"{100 * self.part:.0f} %: knee {knee}{self._near(results, movement)}"

    def _near(self, results: Results, movement: Movement) -> str:
        """What comes closest at this moment."""
        from fitcalc.window.moments import nearest_now

        near = nearest_now(results.after, movement.name, self.part)
        return f", {near.id.replace('_', ' ')} {self._session.shown.amount(near.room, 'mm')}" if near else ""
