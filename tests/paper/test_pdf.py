"""The PDF read back: page sizes, text, embedded fonts; rendered: the check bars are 100 mm long."""

import io
import shutil
import subprocess

import numpy as np
import pytest
from pypdf import PdfReader
from sheet_jobs import every_part_job

from fitcalc.paper.frame import BAR, About, area
from fitcalc.paper.page import A4, LETTER, Page, Words
from fitcalc.paper.pages import sheet_pages
from fitcalc.paper.pdf import pdf_bytes
from fitcalc.present.bench_parts import bench_number

PAPERS = {"a4": (A4, 210.0, 297.0), "letter": (LETTER, 215.9, 279.4)}
RESOLUTION = 600
PIXEL = 25.4 / RESOLUTION
POINTS = 72.0 / 25.4


@pytest.fixture(scope="module", params=PAPERS)
def written(request, tmp_path_factory):
    paper, wide, high = PAPERS[request.param]
    job = every_part_job()
    pages = sheet_pages(job, paper)
    content = pdf_bytes(pages, job.about, paper, "Bench sheets")
    path = tmp_path_factory.mktemp("pdf") / "sheets.pdf"
    path.write_bytes(content)
    return job, pages, PdfReader(io.BytesIO(content)), path, (wide, high)


def test_pages_have_the_size_of_the_paper(written):
    _, pages, reader, _, (wide, high) = written
    for page, made in zip(reader.pages, pages, strict=True):
        size = (page.mediabox.width / POINTS, page.mediabox.height / POINTS)
        expected = (high, wide) if made.lying else (wide, high)
        assert tuple(map(float, size)) == pytest.approx(expected, abs=0.01)


def test_text_can_be_selected(written):
    job, _, reader, _, _ = written
    text = " ".join(page.extract_text() for page in reader.pages)
    words = " ".join(text.split())
    for part in job.bench.parts:
        assert part.id in words
        assert bench_number(part.sizes[0].value) in words
    assert job.about.digest in words


def test_every_font_is_embedded(written):
    _, _, reader, _, _ = written
    fonts = [font for page in reader.pages for font in page["/Resources"]["/Font"].values()]
    descriptors = [font.get_object().get("/FontDescriptor") for font in fonts]
    assert all(each is not None and "/FontFile2" in each.get_object() for each in descriptors)


def test_the_file_is_whole(written):
    _, pages, _, path, _ = written
    again = PdfReader(path, strict=True)
    assert len(again.pages) == len(pages)
    assert all(page.extract_text() for page in again.pages)


def test_viewers_are_asked_not_to_scale_what_they_print(written):
    _, _, reader, _, _ = written
    assert reader.root_object["/ViewerPreferences"]["/PrintScaling"] == "/None"


def written_alone(*marks, paper=A4):
    page = Page("alone", "no scale", marks)
    return PdfReader(io.BytesIO(pdf_bytes([page], About("s", "d", "0"), paper, "t")), strict=True)


@pytest.mark.parametrize("turn", [0.0, 90.0])
@pytest.mark.parametrize(
    "text", ["plain (words) \\ here", "\N{PLUS-MINUS SIGN}0.2 \N{DEGREE SIGN} Ø8.4 \N{EN DASH}"]
)
def test_any_letter_of_the_font_comes_back(text, turn):
    reader = written_alone(Words(text, (50.0, 50.0), 3.0, turn=turn))
    assert " ".join(reader.pages[0].extract_text().split()) == text


def test_a_letter_that_the_font_lacks_harms_nothing():
    reader = written_alone(Words("a \N{CJK UNIFIED IDEOGRAPH-8ECA} b", (50.0, 50.0), 3.0))
    assert reader.pages[0].extract_text()


def test_what_the_file_says_of_itself_may_be_in_any_script():
    page = Page("alone", "no scale", (Words("x", (9.0, 9.0), 3.0),))
    about = About("M\N{LATIN SMALL LETTER U WITH DIAERESIS}ller \N{CJK UNIFIED IDEOGRAPH-8ECA}", "d", "0")
    reader = PdfReader(io.BytesIO(pdf_bytes([page], about, A4, "t")))
    assert reader.metadata.subject == f"{about.subject}; documents 0"


def longest_run(line):
    """Length of the longest run of dark pixels."""
    edges = np.flatnonzero(np.diff(np.concatenate([[0], line.astype(np.int8), [0]])))
    return int(np.max(edges[1::2] - edges[::2], initial=0))


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="poppler's pdftoppm is not installed")
def test_check_bars_print_100_mm_long_in_both_directions(written, tmp_path):
    _, pages, _, path, size_mm = written
    number = str(next(at for at, page in enumerate(pages, start=1) if page.true_scale))
    command = [
        "pdftoppm",
        "-r",
        str(RESOLUTION),
        "-gray",
        "-f",
        number,
        "-l",
        number,
        "-singlefile",
        path,
        tmp_path / "page",
    ]
    subprocess.run(command, check=True)
    content = (tmp_path / "page.pgm").read_bytes()
    _, size, _, pixels = content.split(b"\n", 3)
    wide, high = map(int, size.split())
    dark = np.frombuffer(pixels, dtype=np.uint8)[: wide * high].reshape(high, wide) < 128
    paper = A4 if size_mm[1] == A4.height else LETTER
    foot = high - int((area(paper)[1] + 0.5) / PIXEL)
    corner = dark[high // 2 : foot, : int(125.0 / PIXEL)]
    level = max(longest_run(line) for line in corner)
    upright = max(longest_run(line) for line in corner[:, : int(20.0 / PIXEL)].T)
    tick = 0.18  # half a tick's width stands beyond each end of the bar
    assert level * PIXEL == pytest.approx(BAR + tick, abs=0.1)
    assert upright * PIXEL == pytest.approx(BAR + tick, abs=0.1)
