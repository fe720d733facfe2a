"""Plots written to a file of their own."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from fitcalc.commands.asking import Options, today
from fitcalc.errors import InputError

if TYPE_CHECKING:
    from fitcalc.fit.result import Result
    from fitcalc.present.chart import Chart

KINDS = (".pdf", ".svg", ".png")


def require_picture(options: Options) -> None:
    """Refuses a name that no picture can have, before anything is worked out."""
    if options.out and Path(options.out).suffix.lower() not in KINDS:
        raise InputError("--out", options.out, f"must end in {', '.join(KINDS)}")


def write_charts(charts: "Sequence[Chart]", options: Options, result: "Result") -> None:
    """One page for each plot, as PDF, SVG or PNG by the name's ending; said where a person reads."""
    from fitcalc.paper.chart_file import write_chart_file
    from fitcalc.paper.job import about_result
    from fitcalc.paper.page import PAPERS

    about = about_result(result, today())
    for path in write_chart_file(charts, about, PAPERS[options.paper], Path(options.out)):
        if not options.json:
            print(path)
