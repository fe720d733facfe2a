"""Which file a document belongs in, and whether somebody else has written to it since."""

from dataclasses import dataclass
from pathlib import Path

from fitcalc.documents.stamp import Stamp


@dataclass(frozen=True)
class Known:
    """A file as it was when this window last read or wrote it."""

    path: Path
    stamp: Stamp


def has_changed(file: Known) -> bool:
    """Whether a file is there and says something else than it did; one that is gone can be written again."""
    try:
        return not file.stamp.holds(file.path.read_bytes())
    except (OSError, ValueError):
        return False
