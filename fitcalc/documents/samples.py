"""The invented cars and drivers that come with the program."""

from pathlib import Path

from fitcalc.documents.messages import nearest_hint, shown
from fitcalc.errors import InputError

FOLDER = "sample_chassis"


def sample_folder() -> Path:
    """Where the samples are: inside the installed package, or beside it in a checkout."""
    package = Path(__file__).resolve().parents[1]
    return next(
        (place for place in (package / FOLDER, package.parent / FOLDER) if place.is_dir()), package / FOLDER
    )


def sample_cars() -> dict[str, Path]:
    """The sample cars' files by name, as in `hillclimb`."""
    return _files(sample_folder())


def sample_drivers() -> dict[str, Path]:
    """The sample drivers' files by name."""
    return _files(sample_folder() / "drivers")


def sample_path(name: str) -> Path:
    """The file of the sample car, or else the sample driver, of that name.

    Raises:
        InputError: there is no such sample.
    """
    samples = sample_drivers() | sample_cars()
    if name not in samples:
        there_are = f"there are {', '.join(samples)}" if samples else "no samples are installed"
        raise InputError(shown(name), "not a sample", there_are, nearest_hint(name, tuple(samples)))
    return samples[name]


def _files(folder: Path) -> dict[str, Path]:
    return {path.stem: path for path in sorted(folder.glob("*.toml"))}
