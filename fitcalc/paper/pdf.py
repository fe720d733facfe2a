"""Pages written as PDF: vector lines, embedded fonts, text that can be selected and searched.

A viewer is asked not to fit the pages to the paper when it prints them, since some are templates at true scale.
"""

import io
from collections.abc import Sequence
from math import cos, radians, sin

from reportlab.lib.colors import HexColor
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from fitcalc.paper.frame import About, sheet_of
from fitcalc.paper.lettering import registered_font
from fitcalc.paper.page import Page, Paper, Stroke, Words, corner_of, corners_of
from fitcalc.present.picture import XY
from fitcalc.units import MM_PER_INCH

POINTS = 72.0 / MM_PER_INCH
"""Points in a mm."""
PROGRAM = "fitcalc"
WHITE = HexColor("#FFFFFF")
BUTT, MITRE = 0, 0


def pdf_bytes(pages: Sequence[Page], about: About, paper: Paper, title: str) -> bytes:
    """A PDF of framed pages; the same pages give the same bytes.

    Args:
        pages: as from `frame.framed`.
        about: what they belong to, for the file's own data.
        paper: as all but lying pages lie.
        title: of the file.
    """
    content = io.BytesIO()
    canvas = Canvas(
        content, invariant=1, pageCompression=1, initialFontName=registered_font(False), lang="en"
    )
    _describe(canvas, about, title)
    for page in pages:
        _draw(canvas, page, sheet_of(page, paper))
    canvas.save()
    return content.getvalue()


def _describe(canvas: Canvas, about: About, title: str) -> None:
    canvas.setTitle(title)
    canvas.setSubject(f"{about.subject}; documents {about.digest}")
    canvas.setCreator(PROGRAM)
    canvas.setProducer(PROGRAM)
    canvas.setAuthor("")
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")


def _draw(canvas: Canvas, page: Page, paper: Paper) -> None:
    """One page; all lengths on it are mm."""
    canvas.setPageSize((POINTS * paper.width, POINTS * paper.height))
    canvas.scale(POINTS, POINTS)
    canvas.setLineCap(BUTT)
    canvas.setLineJoin(MITRE)
    for mark in page.marks:
        if isinstance(mark, Words):
            _write(canvas, mark)
        else:
            _stroke(canvas, mark)
    canvas.showPage()


def _stroke(canvas: Canvas, stroke: Stroke) -> None:
    shown, filled = stroke.width > 0.0, stroke.fill is not None
    canvas.saveState()
    if stroke.clip is not None:
        left, bottom, right, top = stroke.clip
        frame = canvas.beginPath()
        frame.rect(left, bottom, right - left, top - bottom)
        canvas.clipPath(frame, stroke=0, fill=0)
    if shown:
        canvas.setLineWidth(stroke.width)
        canvas.setStrokeColor(HexColor(stroke.colour))
        canvas.setDash(list(stroke.dash))
    if filled:
        canvas.setFillColor(HexColor(stroke.fill))
    canvas.drawPath(_path(canvas, stroke.points, stroke.closed or filled), stroke=shown, fill=filled)
    canvas.restoreState()


def _write(canvas: Canvas, words: Words) -> None:
    if words.backed:
        canvas.setFillColor(WHITE)
        canvas.drawPath(_path(canvas, corners_of(words), True), stroke=0, fill=1)
    c, s = cos(radians(words.turn)), sin(radians(words.turn))
    line = canvas.beginText()
    line.setTextTransform(c, s, -s, c, *corner_of(words))
    line.setFont(registered_font(words.bold), words.size)
    line.setFillColor(HexColor(words.colour))
    line.textOut(words.text)
    canvas.drawText(line)


def _path(canvas: Canvas, points: Sequence[XY], closed: bool) -> PDFPathObject:
    path = canvas.beginPath()
    path.moveTo(*points[0])
    for point in points[1:]:
        path.lineTo(*point)
    if closed:
        path.close()
    return path
