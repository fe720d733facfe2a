"""Plots as files of their own: a PDF with a page for each, or an SVG or PNG for each."""

import io
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import matplotlib

from fitcalc.documents.atomic import replace_file
from fitcalc.errors import InputError
from fitcalc.paper.chart import chart_pages
from fitcalc.paper.frame import About, framed
from fitcalc.paper.page import Page, Paper
from fitcalc.paper.page_image import page_figure
from fitcalc.paper.pdf import pdf_bytes
from fitcalc.present.chart import Chart

KINDS = (".pdf", ".svg", ".png")
DOTS_PER_INCH = 200.0
SETTINGS: Any = {"svg.hashsalt": "fitcalc", "path.simplify": False}


def write_chart_file(charts: Sequence[Chart], about: About, paper: Paper, path: Path) -> list[Path]:
    """Writes plots by the name's ending; several SVG or PNG get numbers: `map-1.png`, `map-2.png`.

    Raises:
        InputError: the ending is none of them, or the file can't be written.
    """
    kind = path.suffix.lower()
    if kind not in KINDS:
        raise InputError("--out", str(path), f"must end in {', '.join(KINDS)}")
    pages = framed(chart_pages(charts, paper), about, paper)
    if kind == ".pdf":
        files = {path: pdf_bytes(pages, about, paper, charts[0].title)}
    else:
        files = dict(
            zip(_names(path, len(pages)), (_image(page, paper, kind) for page in pages), strict=True)
        )
    for name, content in files.items():
        replace_file(name, content)
    return list(files)


def _names(path: Path, count: int) -> list[Path]:
    if count == 1:
        return [path]
    return [path.with_name(f"{path.stem}-{at}{path.suffix}") for at in range(1, count + 1)]


def _image(page: Page, paper: Paper, kind: str) -> bytes:
    content = io.BytesIO()
    told = {"Date": None} if kind == ".svg" else {"Software": "fitcalc"}
    with matplotlib.rc_context(SETTINGS):
        figure = page_figure(page, paper)
        figure.patch.set_visible(True)
        figure.patch.set_facecolor("white")
        figure.savefig(content, format=kind[1:], dpi=DOTS_PER_INCH, metadata=told)
    return content.getvalue()
