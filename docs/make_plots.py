"""The plot of the tutorial: writes `docs/trade.png`, the trade map of a sample.

Run: python docs/make_plots.py
"""

from pathlib import Path

from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.rework import fit
from fitcalc.paper.chart_file import write_chart_file
from fitcalc.paper.job import about_result
from fitcalc.paper.page import Paper
from fitcalc.present.trade_chart import trade_chart
from fitcalc.present.usual_trade import usual_trade

PICTURE = Path(__file__).with_name("trade.png")
PAGE = Paper("picture", 190.0, 214.0)


def main() -> None:
    """Writes the picture."""
    after = fit(load_car(sample_path("student")), load_driver(sample_path("robin"))).after
    record = usual_trade(after, after.setup)
    assert record is not None
    write_chart_file([trade_chart(record)], about_result(after, "sample"), PAGE, PICTURE)


if __name__ == "__main__":
    main()
