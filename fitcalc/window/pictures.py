"""Which picture of the results is shown in which view."""

from collections.abc import Callable, Collection, Mapping

from fitcalc.fit.result import Result
from fitcalc.present.pad_view import pad_view
from fitcalc.present.picture import Picture, View
from fitcalc.present.plan_view import plan_view
from fitcalc.present.side_view import side_view
from fitcalc.window.results import Results

Drawer = Callable[[Result, Result | None, Result | None, Collection[str] | None], Picture]
DRAWERS: Mapping[View, Drawer] = {"side": side_view, "plan": plan_view, "pads": pad_view}
TITLES: Mapping[View, str] = {"side": "Side", "plan": "Plan", "pads": "Pedals"}


def picture_of(results: Results, view: View, with_found: bool, emphasis: Collection[str] | None) -> Picture:
    """The picture of a view; the driver as found in grey where the rework changed anything."""
    found = results.found if with_found and results.found is not results.after else None
    return DRAWERS[view](results.after, found, results.other, emphasis)
