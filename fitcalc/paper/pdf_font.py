"""A TrueType font embedded in a PDF with the letters that are used, each findable as text.

Source: ISO 32000-1:2008, 9.7 (composite fonts), 9.8 (descriptors), 9.10.3 (letters behind the glyphs).
"""

import io
from collections.abc import Iterable
from dataclasses import dataclass
from hashlib import md5

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

from fitcalc.paper.lettering import opened_font
from fitcalc.paper.pdf_file import PdfFile, ref

PER_EM = 1000
"""Units of a PDF's font figures in the height of the lettering."""
SYMBOLIC = 4
STEM = {False: 80, True: 140}
"""Thickness of an upright, which viewers use only where the font is lost: from the font's look."""
UNUSED = ["FFTM", "GDEF", "GPOS", "GSUB", "kern"]
TABLES = ("glyf", "loca", "head", "hhea", "hmtx", "maxp")
MOST_CODES = 100
"""Entries in one block of a table of letters."""


@dataclass(frozen=True)
class Embedded:
    """A font in a file: its object's number, and the glyph of each letter."""

    number: int
    glyphs: dict[str, int]

    def encoded(self, words: str) -> str:
        """The words as a hexadecimal string of glyphs; a letter that the font lacks is its empty box."""
        return "".join(f"{self.glyphs.get(letter, 0):04x}" for letter in words)


def embed(file: PdfFile, bold: bool, letters: Iterable[str]) -> Embedded:
    """Puts the font into the file, cut down to these letters."""
    used = sorted({*letters, " "})
    font = _cut_down(bold, used)
    known = font.getBestCmap()
    glyphs = {letter: font.getGlyphID(known[ord(letter)]) for letter in used if ord(letter) in known}
    name = _name(bold, used)
    below = _descendant(file, font, name, bold)
    codes = file.add_stream(_letters_of(glyphs).encode("ascii"), {})
    told = {
        "Type": "/Font",
        "Subtype": "/Type0",
        "BaseFont": name,
        "Encoding": "/Identity-H",
        "DescendantFonts": f"[{ref(below)}]",
        "ToUnicode": ref(codes),
    }
    return Embedded(file.add(told), glyphs)


def _cut_down(bold: bool, letters: list[str]) -> TTFont:
    options = Options(hinting=False, layout_features=[], name_IDs=[], notdef_outline=True, glyph_names=False)
    options.drop_tables += UNUSED
    font = opened_font(bold)
    cutter = Subsetter(options)
    cutter.populate(text="".join(letters))
    cutter.subset(font)
    return font


def _name(bold: bool, letters: list[str]) -> str:
    """The font's name with the tag of six letters that a cut-down font has to have."""
    turned = md5("".join(letters).encode(), usedforsecurity=False).digest()
    tag = "".join(chr(ord("A") + byte % 26) for byte in turned[:6])
    return f"/{tag}+DejaVuSans{'-Bold' if bold else ''}"


def _descendant(file: PdfFile, font: TTFont, name: str, bold: bool) -> int:
    scale = PER_EM / font["head"].unitsPerEm
    widths = (f"{scale * font['hmtx'].metrics[glyph][0]:.0f}" for glyph in font.getGlyphOrder())
    told = {
        "Type": "/Font",
        "Subtype": "/CIDFontType2",
        "BaseFont": name,
        "CIDSystemInfo": "<< /Registry (Adobe) /Ordering (Identity) /Supplement 0 >>",
        "FontDescriptor": ref(_descriptor(file, font, name, bold)),
        "W": f"[0 [{' '.join(widths)}]]",
        "CIDToGIDMap": "/Identity",
    }
    return file.add(told)


def _descriptor(file: PdfFile, font: TTFont, name: str, bold: bool) -> int:
    head, line = font["head"], font["hhea"]
    scale = PER_EM / head.unitsPerEm
    box = " ".join(f"{scale * each:.0f}" for each in (head.xMin, head.yMin, head.xMax, head.yMax))
    program = _program(font)
    told = {
        "Type": "/FontDescriptor",
        "FontName": name,
        "Flags": f"{SYMBOLIC}",
        "FontBBox": f"[{box}]",
        "ItalicAngle": "0",
        "Ascent": f"{scale * line.ascent:.0f}",
        "Descent": f"{scale * line.descent:.0f}",
        "CapHeight": f"{scale * line.ascent:.0f}",
        "StemV": f"{STEM[bold]}",
        "FontFile2": ref(file.add_stream(program, {"Length1": f"{len(program)}"})),
    }
    return file.add(told)


def _program(font: TTFont) -> bytes:
    """The tables that draw glyphs, and no other."""
    there = font.keys()
    for table in [name for name in there if name not in (*TABLES, "GlyphOrder")]:
        del font[table]
    content = io.BytesIO()
    font.save(content, reorderTables=False)
    return content.getvalue()


def _letters_of(glyphs: dict[str, int]) -> str:
    """Which letter stands behind each glyph, so that text can be copied and searched."""
    rows = [f"<{glyph:04x}> <{letter.encode('utf-16-be').hex()}>" for letter, glyph in glyphs.items()]
    starts = range(0, len(rows), MOST_CODES)
    blocks = [rows[start : start + MOST_CODES] for start in starts]
    told = "\n".join(f"{len(block)} beginbfchar\n" + "\n".join(block) + "\nendbfchar" for block in blocks)
    return (
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CMapType 2 def\n/CMapName /Letters def\n"
        f"1 begincodespacerange\n<0000> <ffff>\nendcodespacerange\n{told}\nendcmap\nend\nend\n"
    )
