"""The reference of the files as a page: writes `docs/files.md` from what the documents declare.

Run: python docs/make_files.py
"""

from collections.abc import Iterator
from pathlib import Path

from fitcalc.documents.as_built import History, Readings
from fitcalc.documents.car import Car
from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Change, Effort
from fitcalc.documents.fields import Document, Point, SideMark
from fitcalc.documents.setup import Setup

PAGE = Path(__file__).with_name("files.md")
FILES: dict[str, type[Document]] = {
    "Car file": Car,
    "Driver file": Driver,
    "Setup file": Setup,
    "Effort file": Effort,
    "Readings file": Readings,
    "History file": History,
}
INTRO = """# The files

Every field of the five kinds of file, from what the program itself declares: written by `docs/make_files.py`, run it
again. How to hold the tape stands in [measuring.md](measuring.md), with a drawing for each measurement.

The files are TOML in UTF-8, with any line ends, up to 1 MB. A field in bold must be given; any other has a default or
may be left out, and a whole section that is not required too. `[]` stands for the entries of a list. Lengths are mm,
angles degrees, masses kg. Numbers stand without quotes and without a unit. NaN and infinity are refused, and so is any
key that is not listed here. `format` is the version of the layout: older files are brought up to date when they are
read, newer ones are refused and left as they are. Saving keeps comments, order and layout, and keeps the version before
beside the file, as `name.toml~`.

For programs: `fitcalc schema car`, `driver`, `setup`, `effort`, `readings` or `history` prints the same as JSON Schema."""
POINTS = """A point is written in one line, as in `pivot = { x = 250, y = 0, z = 400, tolerance = 2, note = "bush" }`."""
POINT, MARK = tuple(Point.model_fields), tuple(SideMark.model_fields)
CHANGES = tuple(
    name for name, field in Effort.model_fields.items() if field.annotation is Change and name != "seat_travel"
)
SAME = {
    "clutch": "brake",
    "throttle": "brake",
    "shoulder_right": "shoulder_left",
    "lap_right": "lap_left",
    **dict.fromkeys(CHANGES, "seat_travel"),
}
"""Sections that are like another one of the same owner, so that their fields are listed once."""


def page() -> str:
    """The page."""
    parts = [INTRO]
    for title, kind in FILES.items():
        parts += [f"## {title}", *(part for path in sections(kind, "") for part in section(kind, path))]
    parts += ["## Points", POINTS, table(Point, ""), "A point in side view is the same without `y`."]
    return "\n\n".join(parts) + "\n"


def sections(kind: type[Document], path: str) -> Iterator[str]:
    """The path of each section, the file itself as "", each ahead of those in it."""
    yield path
    for name in names(kind, path):
        below = joined(path, name)
        entry = joined(below, "0") if known(kind, below).kind == "list" else below
        declared = declared_at(kind, entry)
        if declared is not None and declared.kind == "section" and declared.names not in (POINT, MARK):
            yield entry


def section(kind: type[Document], path: str) -> Iterator[str]:
    """Heading and fields of one section, and of those in it."""
    if path:
        yield f"### {shown(path)}"
        yield known(kind, owner(path)).description
    if same := twin(kind, path):
        yield f"As `{shown(same)}`."
        return
    yield table(kind, path)
    for below in list(sections(kind, path))[1:] if path else ():
        yield from section(kind, below)


def table(kind: type[Document], path: str) -> str:
    """The fields of one section."""
    rows = [row(known(kind, joined(path, name)), name, kind) for name in names(kind, path)]
    return "\n".join(("| field | what it is | unit | allowed | left out |", "|---|---|---|---|---|", *rows))


def row(field: Declared, name: str, kind: type[Document]) -> str:
    """One field."""
    key = f"**`{name}`**" if field.required else f"`{name}`"
    title = "" if field.title.replace("-", "_") == name else f"{field.title}: "
    words = f"{title}{field.description}".replace("|", "\\|")
    return f"| {key} | {words} | {field.unit.removesuffix('-')} | {allowed(field, kind)} | {default(field)} |"


def allowed(field: Declared, kind: type[Document]) -> str:
    """What may stand there, in words."""
    if field.kind == "number" and field.low is not None and field.high is not None:
        return f"{field.low:g} to {field.high:g}"
    if field.kind == "choice":
        return ", ".join(f"`{choice!r}`".replace("'", '"') for choice in field.choices)
    if field.kind == "list":
        return listed(field, kind)
    return words_for(field) if field.kind == "section" else "text"


def listed(field: Declared, kind: type[Document]) -> str:
    """What a list holds."""
    entry = known(kind, joined(field.path, "0"))
    return f"list: each {words_for(entry)}" if entry.kind == "section" else "list of `[x, z]` pairs"


def words_for(field: Declared) -> str:
    """A section, or the point that it is."""
    if field.names == MARK:
        return "a [point](#points) in side view"
    return "a [point](#points)" if field.names == POINT else "a section, see below"


def default(field: Declared) -> str:
    """What holds where the field is left out."""
    if field.required:
        return "must be given"
    if field.kind == "number" and field.default is not None:
        return f"{field.default:g}"
    return f'`"{field.default}"`' if isinstance(field.default, str) and field.default else ""


def twin(kind: type[Document], path: str) -> str | None:
    """The section of the same owner that this one is like."""
    above, _, name = path.rpartition(".")
    other = SAME.get(name)
    return joined(above, other) if other and other in names(kind, above) else None


def owner(path: str) -> str:
    """The path of the field that a section, or the list it is an entry of, stands in."""
    return path.removesuffix(".0")


def known(kind: type[Document], path: str) -> Declared:
    """What is declared at a path that is there."""
    found = declared_at(kind, path)
    assert found is not None, path
    return found


def names(kind: type[Document], path: str) -> tuple[str, ...]:
    """The fields of a section."""
    return known(kind, path).names if path else tuple(kind.model_fields)


def joined(path: str, name: str) -> str:
    """A path one step further down."""
    return f"{path}.{name}" if path else name


def shown(path: str) -> str:
    """A path as the page shows it."""
    return path.replace(".0", "[]")


def main() -> None:
    """Writes the page."""
    PAGE.write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
