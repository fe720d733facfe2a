"""Work that was never saved outlives the program: kept on this machine while it runs, offered again after a crash."""

import json
import os
import secrets
from dataclasses import astuple, dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from PySide6.QtCore import QLockFile, QObject, QStandardPaths, QTimer

from fitcalc.documents.atomic import replace_file
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.fields import Document
from fitcalc.documents.setup import Setup
from fitcalc.documents.stamp import Stamp
from fitcalc.errors import InputError
from fitcalc.window.changed_files import Known
from fitcalc.window.preferences import own_folder
from fitcalc.window.session import Session
from fitcalc.window.work import Held, Occupant, Work, held

PAUSE = 800
"""From a change until it is kept, ms: a drag is kept once, at its end."""


@dataclass(frozen=True)
class Recovered:
    """What was left behind.

    Attributes:
        when: when it was kept, as a person reads it.
        originals: by key, each document as its file or its sample had it.
        files: by key, the file of each document that has one, as it was then.
    """

    work: Work
    when: str
    originals: dict[int, Document]
    files: dict[int, Known]


class Autosave(QObject):
    """Keeps one session's unsaved work in a file of its own."""

    def __init__(self, session: Session, parent: QObject) -> None:
        super().__init__(parent)
        self._session = session
        self._file = recovery_folder() / f"{os.getpid()}-{secrets.token_hex(4)}.json"
        self._lock = QLockFile(str(self._file.with_suffix(".lock")))
        self._timer = QTimer(self, singleShot=True, interval=PAUSE)
        self._timer.timeout.connect(self.keep)
        session.work_changed.connect(self._timer.start)
        session.files_changed.connect(self._timer.start)

    def keep(self) -> None:
        """Keeps the work as it is now, or nothing when all of it is saved."""
        self._timer.stop()
        if not self._session.unsaved():
            self._file.unlink(missing_ok=True)
            return
        try:
            recovery_folder().mkdir(parents=True, exist_ok=True)
            self._lock.setStaleLockTime(0)
            self._lock.tryLock(0)
            replace_file(self._file, self.text().encode())
        except (OSError, InputError) as error:
            self._session.said.emit(f"The work can't be kept safe on this machine: {error}")

    def text(self) -> str:
        """All that is worked on, as it is kept."""
        return json.dumps(_kept(self._session))

    def forget(self) -> None:
        """Nothing is left to recover: everything is saved, or was thrown away on purpose."""
        self._timer.stop()
        self._file.unlink(missing_ok=True)
        self._lock.unlock()


def recovery_folder() -> Path:
    """Where unsaved work is kept."""
    return own_folder(QStandardPaths.StandardLocation.GenericDataLocation) / "recovery"


def left_behind() -> list[Path]:
    """What ended sessions left, the newest first; those of programs that still run are left alone."""
    files = sorted(recovery_folder().glob("*.json"), key=lambda path: path.stat().st_mtime, reverse=True)
    return [path for path in files if _is_abandoned(path)]


def recover(path: Path) -> Recovered | None:
    """The work in a recovery file; None where it can't be used."""
    try:
        kept = json.loads(path.read_text(encoding="utf-8"))
        return _recovered(kept)
    except (OSError, ValueError, KeyError, TypeError):
        return None


def discard(path: Path) -> None:
    """Takes a recovery file away."""
    path.unlink(missing_ok=True)
    path.with_suffix(".lock").unlink(missing_ok=True)


def _is_abandoned(path: Path) -> bool:
    lock = QLockFile(str(path.with_suffix(".lock")))
    lock.setStaleLockTime(0)
    free = lock.tryLock(0)
    if free:
        lock.unlock()
    return free


def _kept(session: Session) -> dict[str, Any]:
    def document(each: Held[Any]) -> dict[str, Any]:
        file = session.files.get(each.key)
        return {
            "document": each.document.model_dump(mode="json"),
            "original": session.original(each).model_dump(mode="json"),
            "path": str(file.path.absolute()) if file else "",
            "stamp": astuple(file.stamp) if file else (),
        }

    work = session.work
    people = [{"driver": document(each.driver), "setup": document(each.setup)} for each in work.occupants]
    when = datetime.now().strftime("%H:%M on %d %B %Y")
    return {
        "when": when,
        "car": document(work.car),
        "occupants": people,
        "chosen": work.chosen,
        "effort": document(work.effort),
    }


def _recovered(kept: dict[str, Any]) -> Recovered:
    originals: dict[int, Document] = {}
    files: dict[int, Known] = {}

    def document(kind: type[Document], each: dict[str, Any]) -> Held[Any]:
        made = held(kind.model_validate_json(json.dumps(each["document"])))
        originals[made.key] = kind.model_validate_json(json.dumps(each["original"]))
        if each["path"]:
            files[made.key] = Known(Path(each["path"]), Stamp(*each["stamp"]))
        return made

    car = document(Car, kept["car"])
    people = tuple(
        Occupant(document(Driver, p["driver"]), document(Setup, p["setup"])) for p in kept["occupants"]
    )
    effort = document(Effort, kept["effort"]) if "effort" in kept else held(Effort())
    return Recovered(Work(car, people, kept["chosen"], effort), kept["when"], originals, files)
