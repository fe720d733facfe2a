"""What the menus do."""

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Qt

from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.edit import with_value
from fitcalc.documents.setup import Setup
from fitcalc.window.actions import ENTRIES
from fitcalc.window.preferences import TEXT_SIZES
from fitcalc.window.work import held, with_document, with_driver, without_driver

if TYPE_CHECKING:
    from PySide6.QtWidgets import QDialog

    from fitcalc.fit.rework import Fit
    from fitcalc.window.main_window import MainWindow

FIRST_STATURE = 1750.0
"""What a new driver's file begins with; the window asks for the real one at once."""


class Commands(QObject):
    """One method for each entry of `actions.ENTRIES`."""

    def __init__(self, window: "MainWindow") -> None:
        super().__init__(window)
        self._window, self._session = window, window.session
        self._steps: QDialog | None = None

    def new_car(self) -> None:
        """A car of one's own, under a new name and in no file yet."""
        car = self._session.work.car.document
        note = f"Begun from the numbers of {car.name}: every one is still to be measured."
        own = with_value(with_value(car, "name", "New car"), "note", note)
        self._session.push("new car", replace(self._session.work, car=held(own)))
        self._session.wanted.emit("car.name")

    def new_driver(self) -> None:
        """A further driver, whose stature is asked for."""
        driver = Driver(name="New driver", measurements=Measurements(stature=FIRST_STATURE))
        self._session.push("new driver", with_driver(self._session.work, held(driver)))
        self._session.wanted.emit("driver.measurements.stature")

    def open_file(self) -> None:
        """Asks which file to open."""
        self._window.filing.ask_open()

    def save(self) -> None:
        """Saves everything that has changed."""
        self._window.settle_typing()
        self._window.filing.save_all(partial(self._window.statusBar().showMessage, "Saved.", 4000))

    def save_car_as(self) -> None:
        """Asks where to save the car."""
        self._window.filing.ask_name(self._session.work.car)

    def save_driver_as(self) -> None:
        """Asks where to save the chosen driver."""
        self._window.filing.ask_name(self._session.work.occupant.driver)

    def save_setup_as(self) -> None:
        """Asks where to save the chosen driver's rework."""
        self._window.filing.ask_name(self._session.work.occupant.setup)

    def bench_sheets(self) -> None:
        """Asks where the bench sheets of this rework go."""
        self._window.paperwork.ask_sheets_folder()

    def measuring_worksheet(self) -> None:
        """Asks where the measuring worksheet goes."""
        self._window.paperwork.ask_worksheet_folder()

    def read_worksheet(self) -> None:
        """Asks for a filled-in worksheet."""
        self._window.paperwork.ask_filled()

    def letter_paper(self, on: bool) -> None:
        """Makes sheets for Letter paper or for A4."""
        self._session.prefer(letter=on)

    def quit(self) -> None:
        """Closes the window, which asks where something is not saved."""
        self._window.close()

    def show_undo_list(self) -> None:
        """Every step, in a small window beside the work."""
        if self._steps is None:
            self._steps = self._undo_list()
        self._steps.show()
        self._steps.raise_()

    def load_photo(self) -> None:
        """Asks for a photo to lie under the side view."""
        self._window.photos.ask_file()

    def square_photo(self) -> None:
        """Asks for the points that square the photo."""
        self._window.photos.square()

    def remove_photo(self) -> None:
        """Takes the photo away from the car; its file stays."""
        self._session.edit("car.photo", None, "take the photo away")

    def pick_point(self) -> None:
        """Takes the next click in the sketch as the point in the worksheet that is looked at."""
        self._window.photos.pick_point()

    def ruler(self) -> None:
        """Measures between two points of the sketch, or stops doing so."""
        self._window.centre.ruler.toggle()

    def find_rework(self) -> None:
        """Looks for the least rework off the window's thread."""
        from fitcalc.fit.rework import fit

        work, rules = self._session.work, self._session.choice.rules
        search = partial(fit, work.car.document, work.driver, rules or None)
        self._window.jobs.start("looking for the least rework", lambda _tell: search(), self._use_fit)

    def search_rework(self) -> None:
        """Looks for the least work that passes, and for the next best."""
        self._window.desk.search()

    def trade_map(self) -> None:
        """Draws two changes against each other."""
        self._window.desk.trade()

    def certainty(self) -> None:
        """Asks how sure the rework is."""
        self._window.desk.certainty()

    def share_car(self) -> None:
        """Looks for one set of holes and bars for all drivers."""
        self._window.desk.shared()

    def straps(self) -> None:
        """Lays the straps of every driver, and looks for slots that serve all of them."""
        self._window.desk.straps()

    def as_built(self) -> None:
        """Asks for what was set, cut and measured after the work."""
        self._window.desk.show_built()

    def coverage(self) -> None:
        """Asks who of the population fits the car."""
        self._window.desk.coverage()

    def minutes_for_work(self) -> None:
        """Shows what each kind of work costs."""
        self._window.desk.show_minutes()

    def reset_rework(self) -> None:
        """Takes every change back, as one undo step."""
        self._session.push("as found", self._with_setup(Setup()))

    def next_driver(self) -> None:
        """Goes on with the next driver."""
        work = self._session.work
        self._session.choose_driver((work.chosen + 1) % len(work.occupants))

    def remove_driver(self) -> None:
        """Takes the chosen driver out; the last one stays."""
        self._session.push("remove driver", without_driver(self._session.work))

    def overlay_driver(self, on: bool) -> None:
        """Draws the next driver over, or nobody."""
        work = self._session.work
        self._session.choose(overlaid=(work.chosen + 1) % len(work.occupants) if on else None)

    def side_view(self) -> None:
        """Draws the car from its left."""
        self._window.centre.show_view("side")

    def plan_view(self) -> None:
        """Draws the car from above."""
        self._window.centre.show_view("plan")

    def pad_view(self) -> None:
        """Draws the pads, looking forward."""
        self._window.centre.show_view("pads")

    def fit_view(self) -> None:
        """Shows the whole picture."""
        self._window.centre.fit_view()

    def show_found(self, on: bool) -> None:
        """Draws the driver as found in grey, or not."""
        self._window.centre.found.setChecked(on)

    def inches(self, on: bool) -> None:
        """Shows lengths in inches or mm."""
        self._session.prefer(inches=on)

    def pounds(self, on: bool) -> None:
        """Shows masses in pounds or kg."""
        self._session.prefer(pounds=on)

    def system_theme(self) -> None:
        """Colours as the system has them."""
        self._session.prefer(theme="system")

    def light_theme(self) -> None:
        """Light colours."""
        self._session.prefer(theme="light")

    def dark_theme(self) -> None:
        """Dark colours."""
        self._session.prefer(theme="dark")

    def larger_text(self) -> None:
        """The next larger text size."""
        self._change_text(1)

    def smaller_text(self) -> None:
        """The next smaller text size."""
        self._change_text(-1)

    def next_panel(self) -> None:
        """Gives the keyboard to the next part of the window."""
        self._window.focus_next_panel()

    def show_keys(self) -> None:
        """Every short cut, in a small window beside the work."""
        lines = [f"<b>{each.keys}</b>&nbsp; {each.text.replace('&', '')}" for each in ENTRIES if each.keys]
        self._tell("Keys", "<br>".join(lines))

    def show_about(self) -> None:
        """What the program is."""
        self._tell(
            "About fitcalc", "Fits a driver to an open single-seater: seat, pedals, straps, clearances."
        )

    def _undo_list(self) -> "QDialog":
        """Made once and kept: with a view of a stack, Qt for Python gives up the undo actions of the stack too."""
        from PySide6.QtWidgets import QDialog, QUndoView, QVBoxLayout

        dialog = QDialog(self._window)
        dialog.setWindowTitle("Undo list")
        steps = QUndoView(self._session.undo_stack, dialog)
        steps.setEmptyLabel("as opened")
        steps.setAccessibleName("undo list")
        QVBoxLayout(dialog).addWidget(steps)
        return dialog

    def _use_fit(self, found: "Fit") -> None:
        self._session.push("least rework", self._with_setup(found.after.setup))
        unmet = [name for name, met in found.met.items() if not met]
        if unmet:
            self._session.said.emit(
                f"The least rework leaves the knee straighter than wished at: {', '.join(unmet)}."
            )

    def _with_setup(self, setup: Setup) -> Any:
        return with_document(self._session.work, "setup", setup)

    def _change_text(self, steps: int) -> None:
        at = TEXT_SIZES.index(self._session.preferences.text_size) + steps
        self._session.prefer(text_size=TEXT_SIZES[max(0, min(at, len(TEXT_SIZES) - 1))])

    def _tell(self, title: str, text: str) -> None:
        from PySide6.QtWidgets import QMessageBox

        box = QMessageBox(
            QMessageBox.Icon.NoIcon, title, text, QMessageBox.StandardButton.Close, self._window
        )
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.setModal(False)
        box.show()
