"""What a file was when it was read, so that a save notices that another program has written to it since."""

import hashlib
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Stamp:
    """One state of one file.

    Attributes:
        size: in bytes.
        mtime_ns: when the disk says it was written; tells little, as some disks count whole seconds.
        digest: SHA-256 of the bytes; decides.
    """

    size: int
    mtime_ns: int
    digest: str

    def holds(self, content: bytes) -> bool:
        """Whether a file with these bytes is as it was."""
        return self.digest == _digest(content)


def stamp_of(path: Path, content: bytes) -> Stamp:
    """The stamp of a file that was just read or written, and held these bytes."""
    try:
        written = path.stat().st_mtime_ns
    except OSError:
        written = 0  # a file that counts as touched is read again
    return Stamp(len(content), written, _digest(content))


def is_touched(path: Path | str, stamp: Stamp) -> bool:
    """Whether a file is gone, or may have been written since: a quick look, for asking often; it reads nothing."""
    try:
        now = Path(path).stat()
    except (OSError, ValueError):
        return True
    return (now.st_size, now.st_mtime_ns) != (stamp.size, stamp.mtime_ns)


def _digest(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()
