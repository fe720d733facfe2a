"""The measuring guide as a page: writes `docs/measuring.md` and one drawing per measurement in `docs/measuring/`.

Run: python docs/make_measuring.py
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from textwrap import fill
from types import MappingProxyType

from guide_svg import svg

from fitcalc.documents.car import Car
from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.driver import Driver
from fitcalc.documents.fields import Document
from fitcalc.documents.guide import Guide, example_path, guides

PAGE = Path(__file__).with_name("measuring.md")
FOLDER = Path(__file__).with_name("measuring")


@dataclass(frozen=True)
class Section:
    """One part of the page.

    Attributes:
        prefixes: beginnings of the paths of the measurements in it.
    """

    title: str
    words: str
    kind: type[Document]
    prefixes: tuple[str, ...]


SECTIONS = (
    Section(
        "Level the car",
        """Stand it on hard, flat ground with tyres at running pressure. Choose the plane that is z = 0 (floor top,
        undertray or ground), and pack the wheels until a spirit level says that this plane is level along and
        across. Drop a plumb line from both front hub centres and chalk the line between them: x = 0. Stretch a
        string along the middle of the car: y = 0. Everything else is measured from these three: x rearward, y to
        the driver's right, z up. Write down what you used.""",
        Car,
        ("reference.ground",),
    ),
    Section("Axles", "", Car, ("reference.wheelbase", "reference.front", "reference.rear")),
    Section(
        "Seat",
        """The seat stays where it was found. Its own lines and slots are measured from the junction of back and
        cushion.""",
        Car,
        ("seat.", "behind_seat"),
    ),
    Section("Seat rails", "How far the seat may move from where it was found.", Car, ("rails.",)),
    Section(
        "Pedals",
        """Each pedal alike; where the drawing shows two, the left one hangs and the right one stands on the floor.""",
        Car,
        ("pedals.",),
    ),
    Section("Footwell", "", Car, ("footwell.",)),
    Section("Steering wheel", "Wheels and rim straight ahead.", Car, ("steering_wheel.",)),
    Section("Gear lever and controls", "", Car, ("gear_lever.", "controls.")),
    Section("Mirrors", "", Car, ("mirrors.",)),
    Section("What could be moved for balance", "", Car, ("masses.",)),
    Section("Harness", "", Car, ("harness.",)),
    Section("Hoops", "", Car, ("hoops.",)),
    Section("Head restraint", "", Car, ("head_restraint.",)),
    Section("Sight", "", Car, ("sight_edges",)),
    Section("Cockpit", "", Car, ("cockpit.",)),
    Section(
        "Driver",
        "Only stature is required; each further measurement replaces an estimate.",
        Driver,
        ("measurements.", "mass"),
    ),
    Section("Shoes, helmet, kit", "", Driver, ("shoe.", "helmet.", "kit.")),
)
INTRO = """How to take each measurement, in the order of walking round the car, then round the driver. The blue line is
the tape, or the angle finder's two legs and its arc; rings are points to be measured. Chain lines are the
axle line, the level plane and the centre plane, or another position of what moves. Errors are those usual
by hand: common practice, no source. Written by `docs/make_measuring.py` from the texts and drawings that
the program itself shows: run it again."""


def files() -> Mapping[str, str]:
    """Everything that the script writes, by its path below `docs/`."""
    drawn = {f"measuring/{picture_name(guide)}": svg(guide.drawing) for _, guide in listed()}
    return MappingProxyType({PAGE.name: page(), **drawn})


def listed() -> Iterator[tuple[Section, Guide]]:
    """Every measurement with the section that it stands in, in the page's order."""
    for section in SECTIONS:
        for guide in guides(section.kind).values():
            if guide.field.startswith(section.prefixes):
                yield section, guide


def page() -> str:
    """The page."""
    parts = ["# How to measure", wrap(INTRO)]
    for section in SECTIONS:
        parts += [f"## {section.title}", *([wrap(section.words)] if section.words else [])]
        for owner, guide in listed():
            if owner is section:
                parts += entry(section.kind, guide)
    return "\n\n".join(parts) + "\n"


def entry(kind: type[Document], guide: Guide) -> list[str]:
    """One measurement: heading, drawing, words."""
    declared = declared_at(kind, example_path(guide.field.removesuffix(".*")))
    assert declared is not None
    error = f"{guide.error:g} {guide.unit}".removesuffix(" -")
    return [
        f"### {heading(kind, guide)}",
        f"![where to measure: {guide.title}](measuring/{picture_name(guide)})",
        wrap(f"{guide.how} {guide.care}"),
        wrap(f"**Usual error** ±{error}. **Decides most:** {guide.decides}"),
        wrap(f"In the file: `{guide.field}`{span(declared)}."),
    ]


def heading(kind: type[Document], guide: Guide) -> str:
    """The title, with that of the part it belongs to where it is a part of a part."""
    above = example_path(guide.field.removesuffix(".*")).rpartition(".")[0].removesuffix(".0")
    inner = above.count(".") >= 1 + above.startswith("pedals") or above == "harness.guide"
    owner = declared_at(kind, above) if inner else None
    return (f"{owner.title}: {guide.title}" if owner else guide.title).capitalize()


def span(declared: Declared) -> str:
    """The allowed range, in words."""
    if declared.low is None or declared.high is None:
        return ""
    return f", {declared.low:g} to {declared.high:g} {declared.unit}".removesuffix(" -")


def picture_name(guide: Guide) -> str:
    """File name of a measurement's drawing."""
    return guide.field.replace(".*", "").replace(".", "-") + ".svg"


def wrap(text: str) -> str:
    """A paragraph in lines of the page's width."""
    return fill(" ".join(text.split()), 118, break_on_hyphens=False, break_long_words=False)


def main() -> None:
    """Writes the page and its drawings, and takes away drawings of measurements that are no more."""
    FOLDER.mkdir(exist_ok=True)
    wanted_files = files()
    for old in FOLDER.glob("*.svg"):
        if f"{FOLDER.name}/{old.name}" not in wanted_files:
            old.unlink()
    for name, text in wanted_files.items():
        (PAGE.parent / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
