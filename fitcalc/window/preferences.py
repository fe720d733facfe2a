"""How a person likes the window: kept on this machine, in no document."""

from dataclasses import asdict, dataclass, fields
from pathlib import Path
from typing import Literal, get_args

from PySide6.QtCore import QSettings, QStandardPaths

Theme = Literal["system", "light", "dark"]
TEXT_SIZES = (100, 125, 150, 175, 200)
"""Text sizes to choose from, % of the system's own."""
STACKED_FROM = 150
"""Text size, %, from which a title stands above its field."""
MOST_RECENT = 8


@dataclass(frozen=True)
class Preferences:
    """What the window is shown with.

    Attributes:
        text_size: % of the system's own.
        inches: lengths are shown in inches.
        pounds: masses are shown in pounds.
        letter: sheets are for Letter paper; otherwise for A4.
        recent: paths of the files opened last, the newest first.
    """

    theme: Theme = "system"
    text_size: int = 100
    inches: bool = False
    pounds: bool = False
    letter: bool = False
    recent: tuple[str, ...] = ()

    @property
    def stacked(self) -> bool:
        """Whether titles stand above their fields, for want of width."""
        return self.text_size >= STACKED_FROM

    @property
    def paper(self) -> str:
        """The size of paper that sheets are for."""
        return "letter" if self.letter else "a4"

    def __post_init__(self) -> None:
        if self.theme not in get_args(Theme):
            object.__setattr__(self, "theme", "system")
        if self.text_size not in TEXT_SIZES:
            object.__setattr__(self, "text_size", 100)


def own_folder(kind: QStandardPaths.StandardLocation) -> Path:
    """A folder of this program for its settings or its data."""
    return Path(QStandardPaths.writableLocation(kind)) / "fitcalc"


def settings() -> QSettings:
    """The file that the preferences and the window's shape are kept in."""
    folder = own_folder(QStandardPaths.StandardLocation.GenericConfigLocation)
    return QSettings(str(folder / "window.ini"), QSettings.Format.IniFormat)


def load_preferences() -> Preferences:
    """The preferences as they were left; what can't be read is as at first."""
    kept, first = settings(), Preferences()
    return Preferences(
        theme=str(kept.value("theme", first.theme)),  # type: ignore[arg-type]
        text_size=_whole(kept.value("text_size"), first.text_size),
        inches=kept.value("inches") == "true",
        pounds=kept.value("pounds") == "true",
        letter=kept.value("letter") == "true",
        recent=tuple(filter(None, str(kept.value("recent", "")).split("\n"))),
    )


def save_preferences(preferences: Preferences) -> None:
    """Keeps the preferences for the next start."""
    file = settings()
    for field in fields(preferences):
        file.setValue(field.name, _kept(asdict(preferences)[field.name]))
    file.sync()


def with_recent(recent: tuple[str, ...], path: Path) -> tuple[str, ...]:
    """The recent files with one more at their head."""
    name = str(path.absolute())
    return (name, *(each for each in recent if each != name))[:MOST_RECENT]


def _kept(value: object) -> object:
    if isinstance(value, bool):
        return "true" if value else "false"
    return "\n".join(value) if isinstance(value, tuple) else value


def _whole(value: object, otherwise: int) -> int:
    return int(str(value)) if str(value).isdecimal() else otherwise
