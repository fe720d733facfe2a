"""Draws docs/sketch.png, the README's picture: the hillclimb sample after its rework, the driver as found in grey."""

import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.rework import fit
from fitcalc.present.side_view import side_view
from fitcalc.window.sketch.export import sketch_png

SIZE = (1280, 660)


def main() -> None:
    """Write the picture beside this script."""
    application = QApplication([])
    fitted = fit(load_car(sample_path("hillclimb")), load_driver(sample_path("robin")))
    sketch_png(side_view(fitted.after, found=fitted.found), Path(__file__).with_name("sketch.png"), SIZE)
    application.quit()


if __name__ == "__main__":
    main()
