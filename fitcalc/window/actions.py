"""Everything that can be done from a menu, as a table."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Entry:
    """One line of a menu.

    Attributes:
        name: the method of `Commands` that it calls, and how tests and tool bar find it.
        keys: short cut.
        is_switch: stays on or off; the method is given which.
        ends_group: a rule follows in the menu.
    """

    name: str
    menu: str
    text: str
    keys: str = ""
    tip: str = ""
    is_switch: bool = False
    ends_group: bool = False


ENTRIES = (
    Entry(
        "new_car", "&File", "&New car", "Ctrl+N", "A car of your own: it starts from the numbers of this one"
    ),
    Entry(
        "new_driver",
        "&File",
        "New &driver",
        "Ctrl+Shift+N",
        "A further driver, of whom only the stature is needed",
        ends_group=True,
    ),
    Entry("open_file", "&File", "&Open…", "Ctrl+O", "A car, driver or rework file"),
    Entry("save", "&File", "&Save", "Ctrl+S", "Everything that has changed"),
    Entry("save_car_as", "&File", "Save &car as…", "", "The car under another name"),
    Entry("save_driver_as", "&File", "Save dri&ver as…", "", "The chosen driver under another name"),
    Entry(
        "save_setup_as",
        "&File",
        "Save re&work as…",
        "Ctrl+Shift+S",
        "The chosen driver's rework under another name",
        ends_group=True,
    ),
    Entry(
        "bench_sheets",
        "&File",
        "&Bench sheets…",
        "Ctrl+B",
        "Fit summary, cut list, dimensioned drawings and true-scale parts of this rework, into a folder",
    ),
    Entry(
        "measuring_worksheet",
        "&File",
        "&Measuring worksheet…",
        "",
        "What car and driver still lack, to print and fill in, into a folder",
    ),
    Entry(
        "read_worksheet",
        "&File",
        "&Take in a filled worksheet…",
        "",
        "Numbers from a filled-in CSV or XLSX worksheet, as one undo step",
    ),
    Entry(
        "letter_paper",
        "&File",
        "&Letter paper",
        "",
        "Sheets for Letter paper; otherwise for A4",
        is_switch=True,
        ends_group=True,
    ),
    Entry("quit", "&File", "&Quit", "Ctrl+Q", "Asks first where something is not saved"),
    Entry("show_undo_list", "&Edit", "Undo &list", "Ctrl+U", "Every step so far; click one to go back to it"),
    Entry("find_rework", "&Rework", "Find &least rework", "F5", "Seat first, then pedal bars"),
    Entry(
        "search_rework",
        "&Rework",
        "&Search with alternatives…",
        "Shift+F5",
        "The least work that passes every check, the next best, and which limits shut each other out",
    ),
    Entry(
        "trade_map",
        "&Rework",
        "&Trade map…",
        "F7",
        "Two changes against each other: what passes; click a place to try it",
    ),
    Entry(
        "certainty",
        "&Rework",
        "&Certainty…",
        "F8",
        "What tape and body leave open: odds beside the findings, intervals, what to measure again",
        ends_group=True,
    ),
    Entry(
        "as_built",
        "&Rework",
        "As &built…",
        "F9",
        "After the work: enter what was set, cut and measured, and see it against plan and prediction",
    ),
    Entry(
        "minutes_for_work",
        "&Rework",
        "&Minutes for work…",
        "",
        "What drilling, welding and the like cost at the bench; searches for the least work weigh changes by it",
    ),
    Entry("reset_rework", "&Rework", "As &found", "Ctrl+Backspace", "Take every change back"),
    Entry("next_driver", "&Driver", "Ne&xt driver", "Ctrl+D", "Another of the drivers of this car"),
    Entry("remove_driver", "&Driver", "&Remove driver", "", "Take the chosen driver out of this car"),
    Entry(
        "overlay_driver",
        "&Driver",
        "Draw the next driver &over",
        "Ctrl+Shift+D",
        "A second driver, laid over the sketch",
        is_switch=True,
        ends_group=True,
    ),
    Entry(
        "share_car",
        "&Driver",
        "One car for &all drivers…",
        "",
        "One set of holes and bars, and what each driver sets",
    ),
    Entry(
        "straps",
        "&Driver",
        "S&traps and slots…",
        "",
        "How the straps run for every driver of this car, where anchors may be, and slots that serve all",
    ),
    Entry(
        "coverage",
        "&Driver",
        "&Who fits this car…",
        "",
        "What part of the published population fits, and which limit turns away whom",
    ),
    Entry(
        "load_photo", "&Photo", "&Load…", "", "A picture beside the car's file, to lie under the side view"
    ),
    Entry(
        "square_photo",
        "&Photo",
        "&Square it",
        "",
        "By two known points, a level line and one place in the car",
    ),
    Entry("remove_photo", "&Photo", "&Take it away", "", "The file stays", ends_group=True),
    Entry(
        "pick_point",
        "&Photo",
        "&Pick the point",
        "Ctrl+P",
        "Click in the sketch or on the photo where the point is whose line in the worksheet has the keyboard",
    ),
    Entry("side_view", "&View", "&Side", "Ctrl+1", "From the car's left"),
    Entry("plan_view", "&View", "&Plan", "Ctrl+2", "From above"),
    Entry("pad_view", "&View", "Pe&dals", "Ctrl+3", "Looking forward at the pads"),
    Entry("fit_view", "&View", "&Whole picture", "Ctrl+0", "Show all of it", ends_group=True),
    Entry(
        "show_found",
        "&View",
        "As &found in grey",
        "Ctrl+G",
        "The driver as found, behind the driver after",
        is_switch=True,
        ends_group=True,
    ),
    Entry(
        "ruler",
        "&View",
        "&Ruler",
        "Ctrl+R",
        "The distance between any two points of the sketch",
        ends_group=True,
    ),
    Entry("inches", "&View", "&Inches", "Ctrl+I", "Lengths in inches; files stay in mm", is_switch=True),
    Entry(
        "pounds",
        "&View",
        "P&ounds",
        "Ctrl+L",
        "Masses in pounds; files stay in kg",
        is_switch=True,
        ends_group=True,
    ),
    Entry("system_theme", "&View", "Colours of the s&ystem", "", "Light or dark as the system is"),
    Entry("light_theme", "&View", "&Light"),
    Entry("dark_theme", "&View", "D&ark", ends_group=True),
    Entry("larger_text", "&View", "Lar&ger text", "Ctrl++", "Up to 200 %"),
    Entry("smaller_text", "&View", "S&maller text", "Ctrl+-", "Down to 100 %", ends_group=True),
    Entry("next_panel", "&View", "Next pa&nel", "F6", "Worksheet, sketch, rework, findings"),
    Entry("show_keys", "&Help", "&Keys", "F1", "Every short cut"),
    Entry("show_about", "&Help", "&About fitcalc"),
)
MENUS = ("&File", "&Edit", "&Rework", "&Driver", "&Photo", "&View", "&Help")
TOOLS = ("save", "undo", "redo", "", "inches", "pounds", "", "smaller_text", "larger_text")
"""What stands in the tool bar; empty for a rule."""
