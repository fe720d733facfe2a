"""The as-built file of one driver: the builds so far, and one more."""

from pathlib import Path

from fitcalc.documents.as_built import Build, History, Measured, is_day, require_driver
from fitcalc.documents.messages import shown
from fitcalc.documents.stamp import Stamp
from fitcalc.documents.store import load_stamped, save
from fitcalc.errors import InputError
from fitcalc.present.as_built_comparison import with_history, with_predictions
from fitcalc.present.as_built_record import BuiltRecord


def history_in(file: Path | str, driver: str) -> tuple[History, Stamp | None]:
    """The builds in a file, and its stamp; none where there is no such file yet.

    Raises:
        InputError: it can't be read, or is another driver's.
    """
    if not Path(file).exists():
        return History(driver=driver), None
    history, stamp = load_stamped(History, file)
    require_driver(history, driver, str(file))
    return history, stamp


def build_of(said: Measured, day: str, note: str, digest: str, car: str, where: str = "day") -> Build:
    """One entry of the history.

    Args:
        said: what was entered.
        day: of the measuring, as 2026-05-31.
        note: in place of the one that was entered; empty leaves that.
        digest: of the documents that it was made from.
        car: its name.
        where: what the day's field is called where it is refused.

    Raises:
        InputError: there is no such day.
    """
    if not is_day(day):
        raise InputError(where, shown(day), "must be a day of the calendar", "write it as 2026-05-31")
    return Build(
        date=day,
        car=car,
        documents=digest,
        made=said.made,
        bars=said.bars,
        readings=said.readings,
        note=note or said.note,
    )


def with_kept(
    record: BuiltRecord, build: Build, history: History, stamp: Stamp | None, file: Path | str
) -> BuiltRecord:
    """Adds a build to a file, and hands back the record with the whole history.

    Raises:
        InputError: the file can't be written, or was changed since it was read.
    """
    kept = history.with_build(with_predictions(build, record))
    save(kept, file, stamp)
    return with_history(record, kept)
