"""A page as a figure, to be written as SVG or PNG."""

from functools import cache

from matplotlib.artist import Artist
from matplotlib.backend_bases import RendererBase
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle
from matplotlib.transforms import Affine2D, Transform

from fitcalc.paper.lettering import font_file
from fitcalc.paper.page import Mark, Page, Paper, Stroke, Words, corner_of, corners_of
from fitcalc.units import MM_PER_INCH

POINTS = 72.0 / MM_PER_INCH
"""Points in a mm."""


def page_figure(page: Page, paper: Paper) -> Figure:
    """A page to be drawn on paper that lies as the page does."""
    figure = Figure(figsize=(paper.width / MM_PER_INCH, paper.height / MM_PER_INCH), dpi=72.0)
    figure.patch.set_visible(False)
    for order, mark in enumerate(page.marks):
        for artist in _artists(mark, figure):
            artist.set_zorder(order)
            figure.add_artist(artist)
    return figure


def _artists(mark: Mark, figure: Figure) -> list[Artist]:
    to_page = Affine2D().scale(1.0 / MM_PER_INCH) + figure.dpi_scale_trans
    return _words(mark, to_page) if isinstance(mark, Words) else [_stroke(mark, to_page)]


def _stroke(stroke: Stroke, to_page: Transform) -> Line2D | Polygon:
    shown = stroke.width > 0.0
    if stroke.fill is None and not stroke.closed:
        xs, ys = zip(*stroke.points, strict=True)
        line = Line2D(xs, ys, color=stroke.colour, linewidth=stroke.width * POINTS, transform=to_page)
        line.set_dash_capstyle("butt")
        line.set_solid_capstyle("butt")
        line.set_solid_joinstyle("miter")
        artist: Line2D | Polygon = line
    else:
        face = stroke.fill or "none"
        edge = stroke.colour if shown else "none"
        artist = Polygon(
            stroke.points,
            closed=True,
            facecolor=face,
            edgecolor=edge,
            linewidth=stroke.width * POINTS,
            transform=to_page,
        )
    if stroke.dash and shown:
        artist.set_linestyle((0.0, [length / stroke.width for length in stroke.dash]))
    if stroke.clip is not None:
        left, bottom, right, top = stroke.clip
        artist.set_clip_path(Rectangle((left, bottom), right - left, top - bottom, transform=to_page))
    return artist


def _words(words: Words, to_page: Transform) -> list[Artist]:
    line = _WordLine(words, to_page)
    if not words.backed:
        return [line]
    veil = Polygon(
        corners_of(words), closed=True, facecolor="white", edgecolor="none", linewidth=0.0, transform=to_page
    )
    return [veil, line]


class _WordLine(Artist):
    """One line of words from its left end, without the layout that text of several lines needs."""

    def __init__(self, words: Words, to_page: Transform) -> None:
        super().__init__()
        self._words, self._to_page = words, to_page

    def draw(self, renderer: RendererBase) -> None:
        """Writes the words."""
        words = self._words
        pen = renderer.new_gc()
        pen.set_foreground(words.colour)
        x, y = self._to_page.transform(corner_of(words))
        if renderer.flipy():
            y = renderer.get_canvas_width_height()[1] - y
        renderer.draw_text(pen, x, y, words.text, _font(words.bold, words.size), words.turn)
        pen.restore()


@cache
def _font(bold: bool, size: float) -> FontProperties:
    return FontProperties(fname=font_file(bold), size=size * POINTS)
