"""A stranger's file reads nothing but the photo that it names, and exhausts neither memory nor time."""

import io
import struct
import tracemalloc
import zipfile
import zlib

import pytest
from openpyxl import Workbook
from PySide6.QtGui import QImage

from fitcalc.documents.content import LARGEST
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car
from fitcalc.errors import InputError
from fitcalc.paper.sheet_reading import UNPACKED
from fitcalc.paper.worksheet_file import read_worksheet
from fitcalc.window.photo import LARGEST_BYTES, photo_file, read_photo

SHEET = '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
FIRST = "xl/worksheets/sheet1.xml"
PHOTO = """
[photo]
path = "{}"
first = {{ right = 0, down = 0 }}
second = {{ right = 100, down = 0 }}
distance = 100
level_start = {{ right = 0, down = 0 }}
level_end = {{ right = 100, down = 0 }}
at = {{ x = 0, z = 0 }}
"""
ELSEWHERE = (
    "/etc/passwd",
    "../secret.png",
    "folder/photo.png",
    "..",
    "C:photo.png",
    "file:///etc/passwd",
    "a\\\\b.png",
    "",
)


def car_text(rules="club", photo=""):
    text = (
        sample_path("hillclimb")
        .read_text(encoding="utf-8")
        .replace('\nrules = "club"', f'\nrules = "{rules}"')
    )
    return text + (PHOTO.format(photo) if photo is not None else "")


def refused(read, *given):
    with pytest.raises(InputError) as caught:
        read(*given)
    assert "\n" not in str(caught.value)
    return str(caught.value)


@pytest.mark.parametrize("name", ELSEWHERE)
def test_a_car_names_no_photo_elsewhere(tmp_path, name):
    path = tmp_path / "car.toml"
    path.write_text(car_text(photo=name), encoding="utf-8")
    assert "photo.path" in refused(load_car, path)


@pytest.mark.parametrize("name", ELSEWHERE)
def test_a_car_names_no_rules_elsewhere(tmp_path, name):
    path = tmp_path / "car.toml"
    path.write_text(car_text(rules=name, photo=None), encoding="utf-8")
    assert "rules" in refused(load_car, path)


@pytest.mark.parametrize("is_folder", [False, True])
def test_a_link_out_of_the_folder_is_no_photo(tmp_path, is_folder):
    secret, folder = tmp_path / "secret", tmp_path / "cars"
    secret.mkdir() if is_folder else secret.write_bytes(b"private")
    folder.mkdir()
    (folder / "photo.png").symlink_to(secret)
    assert "beside the car's file" in refused(photo_file, folder / "car.toml", "photo.png")


def test_a_link_in_a_circle_is_no_photo(tmp_path):
    (tmp_path / "photo.png").symlink_to(tmp_path / "photo.png")
    refused(lambda: read_photo(photo_file(tmp_path / "car.toml", "photo.png")))


def test_a_drawing_that_names_further_files_is_no_photo(qapp, tmp_path):
    image = QImage(4, 4, QImage.Format.Format_RGB32)
    image.save(str(tmp_path / "secret.png"))
    drawing = tmp_path / "photo.png"
    drawing.write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="{tmp_path}/secret.png" '
        'width="9" height="9"/></svg>',
        encoding="utf-8",
    )
    assert "no picture" in refused(read_photo, drawing)


def png(wide, high):
    """A picture of one colour, which packs a thousandfold; no more than forty lines of it are there."""

    def chunk(name, data):
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    packer, row = zlib.compressobj(9), b"\0" + bytes(3 * min(wide, 40_000))
    packed = b"".join(packer.compress(row) for _ in range(min(high, 40))) + packer.flush()
    head = struct.pack(">IIBBBBB", wide, high, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", packed) + chunk(b"IEND", b"")


@pytest.mark.parametrize(("wide", "high"), [(30_000, 30_000), (30_000, 2_200), (40_000, 10), (2**31 - 1, 9)])
def test_a_photo_that_unpacks_to_too_much_is_refused(qapp, tmp_path, wide, high):
    file = tmp_path / "photo.png"
    file.write_bytes(png(wide, high))
    refused(read_photo, file)


def test_a_photo_of_too_many_bytes_is_refused(qapp, tmp_path):
    file = tmp_path / "photo.png"
    with file.open("wb") as opened:
        opened.write(png(9, 9))
        opened.truncate(LARGEST_BYTES + 1)
    assert "MB or less" in refused(read_photo, file)


def test_a_document_of_too_many_bytes_is_refused(tmp_path):
    path = tmp_path / "car.toml"
    with path.open("wb") as opened:
        opened.truncate(2_000 * LARGEST)
    assert "1 MB or less" in refused(load_car, path)


@pytest.mark.parametrize("line", ["floor", "roof"])
def test_a_line_of_more_than_ten_thousand_points_is_refused(tmp_path, line):
    points = ", ".join(f"[{100 + at / 20:g}, 1]" for at in range(10_001))
    lines = [each for each in car_text(photo=None).splitlines() if not each.startswith(f"{line} = [")]
    lines.insert(lines.index("[footwell]") + 1, f"{line} = [{points}]")
    path = tmp_path / "car.toml"
    path.write_text("\n".join(lines), encoding="utf-8")
    assert "at most 10000 entries" in refused(load_car, path)


def workbook(path, **members):
    """A workbook with some of its members replaced."""
    book, made = Workbook(), io.BytesIO()
    book.active["A1"] = "document"
    book.save(made)
    with zipfile.ZipFile(made) as old, zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            new.writestr(name, members.get(name.rpartition("/")[2].partition(".")[0]) or old.read(name))
    return path


def cell(text, head=""):
    """A sheet of one cell."""
    return f'{head}{SHEET}<sheetData><row><c t="inlineStr"><is><t>{text}</t></is></c></row></sheetData></worksheet>'


def laughs(times):
    """Entities that name each other, ten times ten times ten."""
    ladder = "".join(f'<!ENTITY e{at + 1} "{f"&e{at};" * 10}">' for at in range(times))
    return cell(f"&e{times};", f'<!DOCTYPE x [<!ENTITY e0 "{"x" * 100}">{ladder}]>')


HOSTILE = (
    laughs(9),
    cell("&e;", '<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]>'),
    f'{SHEET}<dimension ref="A1:XFD1048576"/><sheetData><row r="1"/><row r="1048576"/></sheetData></worksheet>',
    SHEET,
    "<a>" * 5_000,
    "\0",
    f"{SHEET}{' ' * UNPACKED}</worksheet>",
)


@pytest.mark.parametrize("sheet", HOSTILE)
def test_a_hostile_workbook_is_refused_in_little_memory(tmp_path, sheet):
    path = workbook(tmp_path / "sheet.xlsx", sheet1=sheet)
    tracemalloc.start()
    refused(read_worksheet, path)
    _, most = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert most < 60e6


def test_a_workbook_packed_in_a_way_that_is_not_known_is_refused(tmp_path):
    path = workbook(tmp_path / "sheet.xlsx")
    content = bytearray(path.read_bytes())
    for at in range(len(content) - 12):
        if content[at : at + 4] == b"PK\x01\x02":
            content[at + 10 : at + 12] = b"\x63\x00"
    path.write_bytes(content)
    refused(read_worksheet, path)
