"""Each file operation of a save made to fail in each way, and a disk that is really full or really read-only.

    PYTHONPATH=. python tests/reliability/fault_injection.py

After each fault the file holds all of the old or all of the new, it was refused with one sentence or saved, and no
part is left beside it - but where removing the part is what fails. The real disks are small ones in memory; they need
the superuser and are left out where they can't be had.
"""

import errno
import os
import subprocess
import sys
from collections import Counter
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory
from unittest.mock import patch

from fitcalc.documents.atomic import PART, previous_version
from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_driver, load_setup, save
from fitcalc.errors import InputError

FAULTS = (errno.ENOSPC, errno.EACCES, errno.EIO, errno.EROFS, errno.EDQUOT, errno.EPERM)
OLD, NEW = Setup(seat_travel=20.0), Setup(seat_travel=40.0)
OPERATIONS = {
    "reading, opening": (Path, "open"),
    "reading, size and kind": (Path, "stat"),
    "whether it is there": (Path, "exists"),
    "writing": ("file", "write"),
    "flushing": ("file", "flush"),
    "to the disk": (os, "fsync"),
    "rights": (Path, "chmod"),
    "second name": (os, "link"),
    "moving": (os, "replace"),
    "taking a part away": (Path, "unlink"),
    "looking for old parts": (Path, "glob"),
    "opening the folder": (os, "open"),
    "closing the folder": (os, "close"),
}


class Faulty:
    """Lets every call through but one."""

    def __init__(self, real, step, number):
        self.real, self.step, self.number, self.seen, self.hit = real, step, number, 0, False

    def __call__(self, *given, **named):
        self.seen += 1
        if self.seen == self.step:
            self.hit = True
            raise OSError(self.number, os.strerror(self.number))
        return self.real(*given, **named)


class FaultyFile:
    """An open file of which one method fails."""

    def __init__(self, file, method, faulty):
        self.file = file
        setattr(self, method, faulty.bound(getattr(file, method)))

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.file.close()

    def __getattr__(self, name):
        return getattr(self.file, name)


class FaultyMethod(Faulty):
    """The same for a method of every file that is opened."""

    def bound(self, real):
        def call(*given):
            self.real = real
            return self(*given)

        return call


def with_fault(operation, step, number, act):
    """Whether the fault was met while acting, and what the act came to."""
    owner, name = OPERATIONS[operation]
    if owner == "file":
        faulty, real = FaultyMethod(None, step, number), Path.open
        patched = patch.object(Path, "open", lambda *given: FaultyFile(real(*given), name, faulty))
    else:
        real = getattr(owner, name)
        faulty = Faulty(real, step, number)
        patched = patch.object(owner, name, lambda *given, **named: faulty(*given, **named))
    with patched:
        came_to = outcome(act)
    return faulty.hit, came_to


def outcome(act):
    try:
        act()
    except InputError as error:
        return "refused" if "\n" not in str(error) else "FAULT: more than one line"
    except Exception as error:
        return f"FAULT: {type(error).__name__} {error}"
    return "saved"


def left(path, operation, came_to):
    """What a fault left; "" where all is well."""
    found = load_setup(path)
    parts = len(list(path.parent.glob(PART)))
    kept = load_setup(previous_version(path)) if previous_version(path).exists() else OLD
    if found not in (OLD, NEW) or kept != OLD or (came_to == "saved" and found != NEW):
        return "LOST"
    return "PART LEFT" if parts and operation != "taking a part away" else ""


def injected(operation, number, folder):
    """Every call of one operation failing in one way, one save each."""
    for step in count(1):
        path = Path(folder, f"{len(os.listdir(folder))}-{step}", "rework.toml")
        path.parent.mkdir()
        path.write_text("seat_travel = 20  # bolts\n")
        hit, came_to = with_fault(operation, step, number, lambda path=path: save(NEW, path))
        if not hit:
            return
        yield came_to, left(path, operation, came_to)


def on_disk(options, folder, act):
    """Acts on a small disk of its own; None where there can be none."""
    mount = ["mount", "-t", "tmpfs", "-o", options, "tmpfs", folder]
    if os.name == "nt" or os.geteuid() or subprocess.run(mount, capture_output=True).returncode:
        return None
    try:
        return act(Path(folder))
    finally:
        subprocess.run(["umount", folder], check=True)


def on_full_disk(folder):
    """A driver saved on a disk of 64 kB until it is full: what was there stays."""
    people = [
        Driver(name="full", note="x" * size, measurements=Measurements(stature=1700.0))
        for size in (9_000, 9_001)
    ]
    path = folder / "driver.toml"
    save(people[0], path)
    while outcome(lambda: save(people[0], folder / f"{len(os.listdir(folder))}.toml")) == "saved":
        pass
    came_to = outcome(lambda: save(people[1], path))
    whole = load_driver(path) == people[0] and not list(folder.glob(PART))
    return came_to if whole else "LOST"


def on_read_only_disk(folder):
    """A disk that turns read-only: what was there stays."""
    save(OLD, folder / "rework.toml")
    subprocess.run(["mount", "-o", "remount,ro", str(folder)], check=True)
    came_to = outcome(lambda: save(NEW, folder / "rework.toml"))
    return came_to if load_setup(folder / "rework.toml") == OLD else "LOST"


def run():
    """Prints what every fault came to; 1 where anything was lost, left or not caught."""
    wrong = 0
    with TemporaryDirectory() as folder:
        for operation in OPERATIONS:
            found = Counter(pair for number in FAULTS for pair in injected(operation, number, folder))
            wrong += sum(number for (came_to, words), number in found.items() if words or "FAULT" in came_to)
            print(
                f"{operation}: "
                + ", ".join(
                    f"{number} {came_to} {words}".strip() for (came_to, words), number in found.items()
                )
            )
    for words, options, act in (
        ("full", "size=64k", on_full_disk),
        ("read-only", "size=64k", on_read_only_disk),
    ):
        with TemporaryDirectory() as folder:
            came_to = on_disk(options, folder, act)
        wrong += came_to not in (None, "refused")
        print(f"a disk that is {words}: {came_to or 'could not be had'}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(run())
