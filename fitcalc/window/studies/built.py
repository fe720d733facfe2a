"""What was entered after the work, held against plan and prediction off the window's thread."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from fitcalc.fit.progress import Progress
from fitcalc.present.as_built_entry import Typed
from fitcalc.present.as_built_record import BuiltRecord
from fitcalc.window.work import Work

EVALUATED = 0.3
"""Part of the work that is done when plan and rework as made are evaluated: design inference."""


@dataclass(frozen=True, eq=False)
class Entered:
    """What a person says about one build.

    Attributes:
        typed: what was set, cut and measured.
        day: as 2026-05-31.
        file: the as-built file; None where none was chosen.
    """

    work: Work
    rules: str
    typed: tuple[Typed, ...]
    day: str
    note: str
    file: Path | None


@dataclass(frozen=True, eq=False)
class Built:
    """One build beside plan and prediction.

    Attributes:
        plain: the same of a build of which nothing was entered: all that may be.
        is_kept: whether the build is in the file.
    """

    entered: Entered
    record: BuiltRecord
    plain: BuiltRecord
    is_kept: bool


def compared(entered: Entered, keeps: bool) -> Callable[[Progress], Built]:
    """The task of holding a build against its plan; where it `keeps` and something was entered, the file gets it too.

    Raises:
        InputError: a value, the day or the file can't be used.
    """

    def task(progress: Progress) -> Built:
        from fitcalc.documents.digest import digest
        from fitcalc.fit.evaluate import evaluate
        from fitcalc.present.as_built_comparison import built_record
        from fitcalc.present.as_built_entry import entered as all_of
        from fitcalc.present.as_built_history import build_of, history_in, with_kept

        car, driver, rules = entered.work.car.document, entered.work.driver, entered.rules or None
        planned = evaluate(car, driver, entered.work.setup, rules)
        said, nothing = all_of(None, entered.typed, planned), all_of(None, (), planned)
        made = evaluate(car, driver, said.made, rules)
        progress(EVALUATED)
        papers = digest(car, driver, planned.setup)
        build = build_of(said, entered.day, entered.note, papers, car.name)
        plain = build_of(nothing, entered.day, "", papers, car.name)
        history, stamp = history_in(entered.file, driver.name) if entered.file else (None, None)
        record = built_record(build, planned, made, history, rules)
        is_kept = keeps and not record.is_empty
        if is_kept and history is not None and entered.file is not None:
            record = with_kept(record, build, history, stamp, entered.file)
        return Built(entered, record, built_record(plain, planned, planned, None, rules), is_kept)

    return task
