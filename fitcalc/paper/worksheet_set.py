"""The worksheet as files in one folder: to print, and to fill in."""

from pathlib import Path

from fitcalc.documents.atomic import replace_file
from fitcalc.documents.car import Car
from fitcalc.documents.digest import digest
from fitcalc.documents.driver import Driver
from fitcalc.paper.frame import About
from fitcalc.paper.page import Paper
from fitcalc.paper.pdf import pdf_bytes
from fitcalc.paper.sheets import make_folder
from fitcalc.paper.worksheet_file import worksheet_csv, worksheet_xlsx
from fitcalc.paper.worksheet_pages import worksheet_pages
from fitcalc.present.worksheet_rows import worksheet

TITLE = "Measuring worksheet"


def write_worksheet(
    car: Car | None, driver: Driver | None, everything: bool, paper: Paper, folder: Path, date: str
) -> list[Path]:
    """Writes the worksheet as PDF, CSV and XLSX.

    Raises:
        InputError: the folder can't be made or written.
    """
    given = [document for document in (car, driver) if document is not None]
    subject = (
        " and ".join(document.name for document in given) or "empty: a car and a driver not yet measured"
    )
    about = About(subject, date, digest(*given) if given else "none")
    entries = worksheet(car, driver, everything)
    files = {
        "worksheet.pdf": pdf_bytes(worksheet_pages(entries, about, paper), about, paper, TITLE),
        "worksheet.csv": worksheet_csv(entries),
        "worksheet.xlsx": worksheet_xlsx(
            entries, {"subject": subject, "date": date, "documents": about.digest}
        ),
    }
    make_folder(folder)
    for name, content in files.items():
        replace_file(folder / name, content)
    return [folder / name for name in files]
