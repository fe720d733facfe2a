"""The bytes and the text of a file: never more than a bounded size, and one sentence where they can't be had."""

import stat
from pathlib import Path

from fitcalc.documents.messages import shown
from fitcalc.errors import InputError

LARGEST = 1_000_000
"""Most bytes that are read, so that any file is read or refused soon; three lines of 10,000 points fit."""
MARK = b"\xef\xbb\xbf"
"""The byte order mark that some editors put first."""


def content(path: Path) -> bytes:
    """The bytes of a file.

    Raises:
        InputError: there is no such file, or it can't be read, or it is too large.
    """
    found = content_if_there(path)
    if found is None:
        raise InputError(str(path), "missing", "there is no such file", "check name and folder")
    return found


def content_if_there(path: Path) -> bytes | None:
    """The bytes of a file; None where there is none.

    Raises:
        InputError: it can't be read, or it is too large.
    """
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            kind = "a directory" if path.is_dir() else "not a file on a disk"
            raise InputError(str(path), kind, "must be a file", "name a .toml file")
        with path.open("rb") as file:
            found = file.read(LARGEST + 1)
    except FileNotFoundError:
        return None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(
            shown(str(path)), "unreadable", reason, "check its permissions and its name"
        ) from None
    require_size(found, str(path))
    return found


def require_size(found: bytes, name: str) -> None:
    """Refuses what is too large to be read again."""
    if len(found) > LARGEST:
        raise InputError(
            name, "too large", f"must be {LARGEST / 1e6:g} MB or less", "check that it is the right file"
        )


def decoded(found: bytes, name: str) -> str:
    """The text of a file's bytes, without a byte order mark.

    Raises:
        InputError: they are no UTF-8 text, or nothing but space.
    """
    try:
        text = found.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = found.count(b"\n", 0, error.start) + 1
        raise InputError(
            name, "not UTF-8 text", f"line {line} holds other bytes", "save it as UTF-8"
        ) from None
    if not text.strip():
        raise InputError(name, "empty", "must hold a document", "start from one of the samples")
    return text
