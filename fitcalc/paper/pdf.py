"""Pages written as PDF: vector lines, embedded fonts, text that can be selected and searched.

A viewer is asked not to fit the pages to the paper when it prints them, since some are templates at true scale.
"""

from collections.abc import Mapping, Sequence

from fitcalc.paper.frame import About, sheet_of
from fitcalc.paper.page import Page, Paper, Words
from fitcalc.paper.pdf_content import FONTS, POINTS, content_of
from fitcalc.paper.pdf_file import PdfFile, ref, text
from fitcalc.paper.pdf_font import Embedded, embed

PROGRAM = "fitcalc"


def pdf_bytes(pages: Sequence[Page], about: About, paper: Paper, title: str) -> bytes:
    """A PDF of framed pages; the same pages give the same bytes.

    Args:
        pages: as from `frame.framed`.
        about: what they belong to, for the file's own data.
        paper: as all but lying pages lie.
        title: of the file.
    """
    file = PdfFile()
    tree = file.reserved()
    fonts = {bold: embed(file, bold, _letters(pages, bold)) for bold in FONTS}
    places = [_page(file, page, sheet_of(page, paper), tree, fonts) for page in pages]
    kids = " ".join(ref(each) for each in places)
    file.add({"Type": "/Pages", "Kids": f"[{kids}]", "Count": f"{len(places)}"}, tree)
    shown = "<< /PrintScaling /None /DisplayDocTitle true >>"
    root = file.add({"Type": "/Catalog", "Pages": ref(tree), "Lang": "(en)", "ViewerPreferences": shown})
    told = {"Title": title, "Subject": f"{about.subject}; documents {about.digest}", "Creator": PROGRAM}
    info = file.add({key: text(words) for key, words in {**told, "Producer": PROGRAM}.items()})
    return file.written(root, info)


def _letters(pages: Sequence[Page], bold: bool) -> set[str]:
    words = (
        mark.text for page in pages for mark in page.marks if isinstance(mark, Words) and mark.bold == bold
    )
    return set().union(*words)


def _page(file: PdfFile, page: Page, paper: Paper, tree: int, fonts: Mapping[bool, Embedded]) -> int:
    named = " ".join(f"/{FONTS[bold]} {ref(font.number)}" for bold, font in fonts.items())
    told = {
        "Type": "/Page",
        "Parent": ref(tree),
        "MediaBox": f"[0 0 {POINTS * paper.width:.4f} {POINTS * paper.height:.4f}]",
        "Resources": f"<< /Font << {named} >> >>",
        "Contents": ref(file.add_stream(content_of(page.marks, fonts), {})),
    }
    return file.add(told)
