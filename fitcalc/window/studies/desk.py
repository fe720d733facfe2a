"""Starts the studies of one window, and keeps one window for each kind."""

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from fitcalc.errors import InputError
from fitcalc.fit.progress import Progress
from fitcalc.window.drags import snapped
from fitcalc.window.rework.spans import control_at
from fitcalc.window.work import Work, at_ref, with_ref

if TYPE_CHECKING:
    from fitcalc.window.main_window import MainWindow
    from fitcalc.window.studies.built_window import BuiltWindow
    from fitcalc.window.studies.minutes import Minutes
    from fitcalc.window.studies.study import Pair, Study
    from fitcalc.window.studies.study_window import StudyWindow

Worker = Callable[[Work, str, Progress], "Study"]
SEARCH, TRADE, CERTAINTY, SHARED, COVERAGE, STRAPS = (
    "Search for the least work",
    "Trade map",
    "Certainty",
    "One car for all drivers",
    "Who fits this car",
    "Straps and slots",
)
BUSY = {
    SEARCH: "looking for the least work",
    TRADE: "drawing the map",
    CERTAINTY: "drawing cars and bodies",
    SHARED: "looking for what fits all",
    COVERAGE: "seating the population",
    STRAPS: "laying the straps",
}


class Desk(QObject):
    """The studies of one window."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window, self._session = window, window.session
        self.open: dict[str, StudyWindow] = {}
        self.minutes: Minutes | None = None
        self.built: dict[int, BuiltWindow] = {}
        """What was measured after the work, by the driver's key."""
        self._workers: dict[str, Worker] = {}

    def unkept(self) -> "list[BuiltWindow]":
        """Where something was entered after the work that is in no as-built file."""
        return [each for each in self.built.values() if each.is_unkept]

    def search(self) -> None:
        """Looks for the least work that passes."""
        from fitcalc.window.studies.study import search_study

        self._start(SEARCH, search_study)

    def trade(self, pair: "Pair | None" = None) -> None:
        """Draws the map of two changes."""
        from fitcalc.window.studies.study import trade_study

        self._start(TRADE, lambda work, rules, progress: trade_study(work, rules, pair, progress))

    def certainty(self) -> None:
        """Asks how sure the rework is."""
        from fitcalc.window.studies.study import certainty_study

        self._start(CERTAINTY, certainty_study)

    def shared(self, pads: bool = False) -> None:
        """Looks for one set of holes and bars for all drivers, who may each have pads of their own."""
        from fitcalc.window.studies.study import shared_study

        self._start(SHARED, lambda work, rules, progress: shared_study(work, rules, pads, progress))

    def coverage(self) -> None:
        """Asks who of the population fits."""
        from fitcalc.window.studies.study import coverage_study

        self._start(COVERAGE, coverage_study)

    def show_minutes(self) -> None:
        """Shows what each kind of work costs."""
        from fitcalc.window.studies.minutes import Minutes

        if self.minutes is None:
            self.minutes = Minutes(self._session, self._window.filing, self._window)
            self._window.look.dress(self.minutes)
        self.minutes.show()
        self.minutes.raise_()
        self.minutes.activateWindow()

    def straps(self) -> None:
        """Lays the straps of every driver, and looks for slots that serve all of them."""
        from fitcalc.window.studies.study import straps_study

        self._start(STRAPS, straps_study)

    def show_built(self) -> None:
        """Asks for what was set, cut and measured after the work."""
        from fitcalc.window.studies.built_window import BuiltWindow

        key, window = self._session.work.occupant.driver.key, self._window
        if key not in self.built:
            self.built[key] = BuiltWindow(self._session, window.look, window.jobs, window)
            window.look.dress(self.built[key])
        shown = self.built[key]
        shown.show()
        shown.raise_()
        shown.activateWindow()
        shown.follow_plan()

    def _renew(self, title: str) -> None:
        self._start(title, self._workers[title])

    def _start(self, title: str, worker: Worker) -> None:
        work, rules = self._session.work, self._session.choice.rules
        self._window.jobs.start(
            BUSY[title],
            lambda progress: worker(work, rules, progress),
            lambda study: self._show(title, worker, study, work),
        )

    def _show(self, title: str, worker: Worker, study: "Study", work: Work) -> None:
        from fitcalc.window.studies.study_window import StudyWindow

        if study.odds:
            self._session.take_odds(work, study.odds)
        shown = self.open.get(title)
        if shown is None:
            shown = self.open[title] = StudyWindow(title, self._session, self._window.look, self._window)
            self._window.look.dress(shown)
            shown.paired.connect(self.trade)
            shown.padded.connect(self.shared)
            shown.placed.connect(self.try_place)
            shown.wanted.connect(self.go_to)
            shown.weights_wanted.connect(self._window.commands.minutes_for_work)
            shown.again.connect(partial(self._renew, title))
        self._workers[title] = worker
        shown.show_study(study, work)
        shown.show()
        shown.raise_()

    def try_place(self, pair: "Pair", x: float, y: float) -> None:
        """Makes a place on the map the rework, as near as can be set; one undo step."""
        session = self._session
        try:
            work = session.work
            for path, value in zip(pair, (x, y), strict=True):
                control = control_at(work.car.document, f"setup.{path}")
                work = with_ref(work, control.ref, snapped(control, value))
        except InputError as error:
            session.said.emit(str(error))
            return
        session.push("try a place on the map", work)
        if session.work is work:
            self.trade(pair)

    def go_to(self, path: str) -> None:
        """Goes to a measurement of the car or the driver."""
        for ref in (f"car.{path}", f"driver.{path}", f"driver.measurements.{path}"):
            try:
                at_ref(self._session.work, ref)
            except InputError:
                continue
            self._session.wanted.emit(ref)
            self._window.activateWindow()
            return
