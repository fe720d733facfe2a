"""The only holder of state: what is worked on, how it came out, what is pointed at, and how it is shown."""

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QUndoStack

from fitcalc.checks.limits import load_limit_set
from fitcalc.fit.result import Result
from fitcalc.window.changed_files import Known
from fitcalc.window.edits import Edit, Gesture
from fitcalc.window.evaluation import Evaluation
from fitcalc.window.preferences import Preferences, save_preferences
from fitcalc.window.previews import first_results, posed
from fitcalc.window.results import Choice, Results, results_of
from fitcalc.window.shown import Shown
from fitcalc.window.work import Held, Work, at_ref, with_ref

REST = 120
"""How long the hand must rest in a drag until everything is evaluated, ms."""
STEPS = 1000
"""How many steps can be undone: one every half minute for eight hours, which take some 7 MB; design inference."""


class Session(QObject):
    """One person's work at one car.

    Signals:
        work_changed: a document is another one than before.
        settled: the work stays as it is now, until the next change.
        posed: the driver sits as the work says; figures and checks are still to come.
        results_changed: the results fit the work again.
        pointed_at: the ref of a value, or the id of a check, that is looked at.
        wanted: the ref of a measurement that the person should be taken to.
        files_changed: something was saved, opened or is new.
        preferences_changed: how everything is shown.
        said: one sentence for the person.
        asked: a sentence, and what can be done about it as pairs of words and a callable.
    """

    work_changed = Signal()
    settled = Signal()
    posed = Signal()
    results_changed = Signal()
    pointed_at = Signal(str)
    wanted = Signal(str)
    files_changed = Signal()
    preferences_changed = Signal()
    said = Signal(str)
    asked = Signal(str, object)

    def __init__(self, work: Work, preferences: Preferences, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.work, self.preferences, self.choice = work, preferences, Choice()
        self.undo_stack = QUndoStack(self)
        self.undo_stack.setUndoLimit(STEPS)
        self.files: dict[int, Known] = {}
        self._saved = {each.key: each.document for each in work.documents()}
        self._gestures = 0
        self._odds: tuple[Work, Mapping[str, float]] = (work, {})
        self.results: Results = first_results(work)
        self.drawn = self.results
        self._rest = QTimer(self, singleShot=True, interval=REST)
        self._rest.timeout.connect(self._ask)
        self.evaluation = Evaluation(self)
        self.evaluation.done.connect(self._use)
        self.evaluation.refused.connect(self.said)

    @property
    def shown(self) -> Shown:
        """The units that the person reads."""
        return Shown(self.preferences.inches, self.preferences.pounds)

    @property
    def result(self) -> Result:
        """The chosen driver after the rework, as last evaluated."""
        return self.results.after

    @property
    def odds(self) -> Mapping[str, float]:
        """How likely each check passes, 0 to 1, by id; empty where that was not asked for this very work."""
        work, odds = self._odds
        return odds if work is self.work else {}

    def take_odds(self, work: Work, odds: Mapping[str, float]) -> None:
        """Remembers how likely each check passes."""
        self._odds = (work, odds)
        self.results_changed.emit()

    def edit(self, ref: str, value: Any, text: str, gesture: str = "") -> None:
        """Replaces one value as one undo step, or as part of the gesture that is under way.

        Raises:
            InputError: the document would not be valid; nothing is changed.
        """
        if at_ref(self.work, ref) != value:
            self.push(text, with_ref(self.work, ref, value), gesture)

    def push(self, text: str, after: Work, gesture: str = "") -> None:
        """Replaces the work as one undo step."""
        if after != self.work or _keys(after) != _keys(self.work):
            name = f"{gesture} {self._gestures}" if gesture else ""
            step = self._last_step()
            if name and step is not None and step.gesture == name:
                self._go_on(step, after)
            else:
                self.undo_stack.push(Edit(text, self.work, after, self.preview if name else self.show, name))

    def push_from(self, before: Work, text: str) -> None:
        """Makes what was previewed since then one undo step, or none where it led back."""
        if self.work == before:
            self.show(before)
        else:
            self.undo_stack.push(Edit(text, before, self.work, self.show, ""))

    def choose_driver(self, place: int) -> None:
        """Goes on with another of the drivers; one undo step, so that undo never changes somebody out of sight."""
        driver = self.work.occupants[place].driver.document
        self.push(f"choose {driver.name}", replace(self.work, chosen=place))

    def end_gesture(self) -> None:
        """Later edits of the same value are undo steps of their own."""
        self._gestures += 1
        self.hurry()

    def gesture(self, text: str) -> Gesture:
        """Begins a drag."""
        return Gesture(self, text)

    def show(self, work: Work) -> None:
        """Shows a work without an undo step: the posture at once, the rest as soon as it is evaluated."""
        self._take(work)
        self._pose()
        self._ask()

    def preview(self, work: Work) -> None:
        """Shows a work while a hand moves it: the posture at once, the rest when the hand rests."""
        self._take(work)
        self._pose()
        self._rest.start(REST)

    def choose(self, **choice: Any) -> None:
        """Asks for results under other rules, or with another driver overlaid.

        Raises:
            InputError: a limit set is not known; the choice is as before.
        """
        chosen = replace(self.choice, **choice)
        for rules in filter(None, (chosen.rules, chosen.compared)):
            load_limit_set(rules)
        self.choice = chosen
        self._ask()

    def prefer(self, **preferences: Any) -> None:
        """Shows everything another way, and keeps it so."""
        self.preferences = replace(self.preferences, **preferences)
        save_preferences(self.preferences)
        self.preferences_changed.emit()

    def begin(self) -> None:
        """Evaluates what the first paint left out, as soon as there is nothing else to do."""
        if not self.results.is_checked and not self.evaluation.is_busy:
            self._rest.start(0)

    def hurry(self) -> None:
        """Has everything evaluated now, not only when the hand rests."""
        if self._rest.isActive():
            self._ask()

    def keep_waiting(self) -> None:
        """The hand has not come to rest yet, though it changed nothing."""
        if self._rest.isActive():
            self._rest.start(REST)

    def let_go(self) -> None:
        """Evaluates no more, not even what waits for the hand to rest, and waits until no thread runs."""
        self._rest.stop()
        self.evaluation.wait()

    def finish_evaluation(self) -> None:
        """Waits until the results fit the work."""
        if self._rest.isActive() or self.evaluation.is_busy or not self.results.is_checked:
            self._rest.stop()
            self.evaluation.drop()
            self.settled.emit()
            self._use(results_of(self.work, self.choice, self.results))

    def is_unsaved(self, document: Held[Any]) -> bool:
        """Whether a document differs from its file, or from what it was opened as."""
        return bool(self._saved[document.key] != document.document)

    def original(self, document: Held[Any]) -> Any:
        """A document as its file, or the sample it was opened from, has it."""
        return self._saved[document.key]

    def unsaved(self) -> list[Held[Any]]:
        """Every document with changes that are in no file."""
        return [each for each in self.work.documents() if self.is_unsaved(each)]

    def path_of(self, document: Held[Any]) -> Path | None:
        """The file that a document belongs in; None where it has none yet."""
        known = self.files.get(document.key)
        return known.path if known else None

    def mark_saved(self, document: Held[Any], file: Known) -> None:
        """Remembers which file a document belongs in, and that the file says what the document says."""
        self.files[document.key], self._saved[document.key] = file, document.document
        self.files_changed.emit()

    def take_over(self, work: Work, originals: dict[int, Any], files: dict[int, Known]) -> None:
        """Goes on with work that was left behind: it is as unsaved as it was."""
        self._saved |= originals
        self.files |= files
        self.show(work)
        self.files_changed.emit()

    def _last_step(self) -> Edit | None:
        """The step that made the work what it is; None where there is none, or where steps were undone."""
        stack = self.undo_stack
        if stack.index() == 0 or stack.canRedo():
            return None
        step = stack.command(stack.index() - 1)
        return step if isinstance(step, Edit) else None

    def _go_on(self, step: Edit, after: Work) -> None:
        """Makes a change part of the last step."""
        step.go_on_to(after)
        if step.isObsolete():
            self.undo_stack.undo()
        else:
            step.redo()

    def _take(self, work: Work) -> None:
        self.work = work
        for each in work.documents():
            self._saved.setdefault(each.key, each.document)
        self.work_changed.emit()

    def _pose(self) -> None:
        self.drawn = posed(self.work, self.results)
        self.posed.emit()

    def _ask(self) -> None:
        self._rest.stop()
        self.settled.emit()
        self.evaluation.ask(partial(results_of, self.work, self.choice, self.results))

    def _use(self, results: Results) -> None:
        """Shows results, unless the work has gone on meanwhile; then those of the newer work will follow."""
        self.results = results
        if results.work is self.work:
            self.drawn = results
            self.results_changed.emit()


def _keys(work: Work) -> list[int]:
    return [each.key for each in work.documents()]
