"""As built as files in one folder: the page to print, and the sheet to fill in."""

from pathlib import Path

from fitcalc.documents.atomic import replace_file
from fitcalc.paper.as_built_file import as_built_csv, as_built_xlsx
from fitcalc.paper.as_built_pages import as_built_pages
from fitcalc.paper.frame import About
from fitcalc.paper.page import Paper
from fitcalc.paper.pdf import pdf_bytes
from fitcalc.paper.sheets import make_folder
from fitcalc.present.as_built_record import BuiltRecord


def write_as_built(record: BuiltRecord, paper: Paper, folder: Path) -> list[Path]:
    """Writes the page as PDF and the record as JSON, and the sheet to fill in where nothing was read yet.

    Raises:
        InputError: the folder can't be made or written.
    """
    subject = f"{record.driver} in {record.car}; rules: {record.rules}"
    about = About(subject, record.date, record.documents)
    files = {
        "as_built.pdf": pdf_bytes(as_built_pages(record, about, paper), about, paper, "As built"),
        "as_built.json": record.model_dump_json(indent=2).encode(),
    }
    if record.wanted:
        told = {"subject": subject, "date": record.date, "documents": record.documents}
        files |= {"as_built.csv": as_built_csv(record), "as_built.xlsx": as_built_xlsx(record, told)}
    make_folder(folder)
    for name, content in files.items():
        replace_file(folder / name, content)
    return [folder / name for name in files]
