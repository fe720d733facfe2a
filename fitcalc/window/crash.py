"""The guard against bugs: the work is kept, a report is written on this machine, and the window stays open."""

import platform
import sys
import traceback
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QStandardPaths, qVersion

from fitcalc.window.preferences import own_folder


class CrashGuard:
    """Stands where Python reports exceptions that nobody caught."""

    def __init__(
        self, keep: Callable[[], None], documents: Callable[[], str], tell: Callable[[str], None]
    ) -> None:
        self._keep, self._documents, self._tell = keep, documents, tell
        self._before = sys.excepthook
        sys.excepthook = self.caught

    def release(self) -> None:
        """Steps back for what stood there before."""
        sys.excepthook = self._before

    def caught(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Keeps the work, writes the report, and says where it is."""
        if issubclass(kind, KeyboardInterrupt):
            self._before(kind, error, trace)
            return
        text = "".join(traceback.format_exception(kind, error, trace))
        sys.stderr.write(text)
        path = write_report(text, self._attached())
        self._tell(
            "Something went wrong in the program. The work is kept; a report with your documents in it is in "
            f"{path}, and nowhere else."
        )
        self._keep()

    def _attached(self) -> str:
        """The documents; what is wrong with the program may be wrong with them too."""
        try:
            return self._documents()
        except Exception as error:  # noqa: BLE001 - a report without them is better than none
            return f"The documents can't be attached: {error!r}"


def write_report(text: str, documents: str) -> Path:
    """A file with the error, the versions of what was running, and the documents; it is sent nowhere."""
    folder = own_folder(QStandardPaths.StandardLocation.GenericDataLocation) / "crashes"
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{datetime.now():%Y%m%d-%H%M%S-%f}.txt"
    head = f"fitcalc {_version()}, Python {platform.python_version()}, Qt {qVersion()}, {platform.platform()}"
    path.write_text(f"{head}\n\n{text}\n{documents}\n", encoding="utf-8")
    return path


def _version() -> str:
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("fitcalc")
    except PackageNotFoundError:
        return "(not installed)"
