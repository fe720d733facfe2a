"""A file replaced in one step: whatever fails, either all of the old or all of the new is there."""

import errno
import os
import secrets
import time
from contextlib import suppress
from pathlib import Path

from fitcalc.errors import InputError

REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk quota is used up",
    errno.EROFS: "the disk is read-only",
    errno.EACCES: "the folder or the file is read-only",
    errno.EPERM: "the folder or the file is read-only",
    errno.EIO: "the disk reports a fault",
    errno.ENOENT: "there is no such folder",
    errno.ENAMETOOLONG: "the name is too long",
}
CANNOT_SYNC = (errno.EINVAL, errno.ENOTSUP, errno.EBADF)
"""What file systems answer that can't flush a folder, as some network ones."""

PART = ".fitcalc-*.part"
"""What a file is called until it is whole."""
STALE_S = 86_400
"""Age at which a part is surely of a save that was killed."""


def replace_file(path: Path, content: bytes, keeps_previous: bool = False) -> None:
    """Writes a file whole and flushed beside its place, then moves it there.

    A link is followed; the permissions of a file that is there are kept. With `keeps_previous` the file that is
    replaced stays beside the new one, as `name~`; where the disk can't do that, the new one is written all the same.

    Raises:
        InputError: it could not be written; the old file is as it was, unless the sentence says otherwise.
    """
    try:
        _replace(Path(os.path.realpath(path)), content, keeps_previous)
    except (OSError, ValueError) as error:
        raise _refusal(path, error, "the file is as it was; save it somewhere else") from None
    folder = Path(os.path.realpath(path)).parent
    _take_stale_parts_away(folder)
    try:
        _flush_folder(folder)
    except OSError as error:
        raise _refusal(path, error, "it is written, but may not outlive a power cut; save it again") from None


def previous_version(path: Path) -> Path:
    """Where the previous version of a file is kept."""
    return path.with_name(f"{path.name}~")


def _replace(path: Path, content: bytes, keeps_previous: bool) -> None:
    if path.exists() and not os.access(path, os.W_OK):
        raise PermissionError(errno.EACCES, "read-only")
    part = _part_beside(path)
    try:
        _write_flushed(part, content)
        if path.exists():
            part.chmod(path.stat().st_mode & 0o7777)
            if keeps_previous:
                _keep(path)
        os.replace(part, path)
    except BaseException:
        part.unlink(missing_ok=True)
        raise


def _keep(path: Path) -> None:
    """The file under its second name too, by a link or else by a copy; the file itself stays where it is."""
    part = _part_beside(path)
    with suppress(OSError):
        try:
            _link_or_copy(path, part)
            os.replace(part, previous_version(path))
        finally:  # two names of one file are not moved onto each other, so the part may still be there
            part.unlink(missing_ok=True)


def _link_or_copy(path: Path, part: Path) -> None:
    try:
        os.link(path, part)
    except OSError:
        _write_flushed(part, path.read_bytes())


def _part_beside(path: Path) -> Path:
    return path.with_name(PART.replace("*", secrets.token_hex(6)))


def _take_stale_parts_away(folder: Path) -> None:
    with suppress(OSError):
        for part in folder.glob(PART):
            if part.stat().st_mtime < time.time() - STALE_S:
                part.unlink(missing_ok=True)


def _write_flushed(path: Path, content: bytes) -> None:
    with path.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _flush_folder(folder: Path) -> None:
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    except OSError as error:
        if error.errno not in CANNOT_SYNC:
            raise
    finally:
        os.close(handle)


def _refusal(path: Path, error: OSError | ValueError, hint: str) -> InputError:
    number = getattr(error, "errno", None)
    reason = REASONS.get(number or 0) or getattr(error, "strerror", None) or str(error)
    return InputError(str(path), "", f"could not be saved, because {reason}", hint)
