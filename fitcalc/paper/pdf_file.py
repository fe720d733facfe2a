"""The frame of a PDF file: numbered objects, streams, and the table that says where each stands.

Source: ISO 32000-1:2008, 7.3 (objects), 7.5 (file structure).
"""

import zlib
from collections.abc import Mapping
from hashlib import md5

HEAD = b"%PDF-1.6\n%\xe2\xe3\xcf\xd3\n"
ENTRIES = Mapping[str, str]


class PdfFile:
    """Objects in the order in which they were added; the first has number 1."""

    def __init__(self) -> None:
        self._bodies: list[bytes | None] = []

    def reserved(self) -> int:
        """A number for an object that comes later."""
        self._bodies.append(None)
        return len(self._bodies)

    def add(self, entries: ENTRIES, number: int | None = None) -> int:
        """Adds a dictionary; its number."""
        return self._put(_dictionary(entries).encode("ascii"), number)

    def add_stream(self, content: bytes, entries: ENTRIES, number: int | None = None) -> int:
        """Adds a compressed stream; its number."""
        packed = zlib.compress(content, 6)
        head = _dictionary({**entries, "Length": str(len(packed)), "Filter": "/FlateDecode"})
        return self._put(head.encode("ascii") + b"\nstream\n" + packed + b"\nendstream", number)

    def written(self, root: int, info: int) -> bytes:
        """The whole file."""
        parts, starts, at = [HEAD], [], len(HEAD)
        for number, body in enumerate(self._bodies, start=1):
            assert body is not None, number
            starts.append(at)
            parts.append(b"%d 0 obj\n%b\nendobj\n" % (number, body))
            at += len(parts[-1])
        mark = md5(b"".join(parts), usedforsecurity=False).hexdigest()
        table = "".join(f"{start:010d} 00000 n \n" for start in starts)
        count = len(starts) + 1
        told = {"Size": f"{count}", "Root": ref(root), "Info": ref(info), "ID": f"[<{mark}> <{mark}>]"}
        end = f"xref\n0 {count}\n0000000000 65535 f \n{table}trailer\n{_dictionary(told)}\nstartxref\n{at}\n%%EOF\n"
        return b"".join([*parts, end.encode("ascii")])

    def _put(self, body: bytes, number: int | None) -> int:
        place = self.reserved() if number is None else number
        self._bodies[place - 1] = body
        return place


def ref(number: int) -> str:
    """A reference to an object."""
    return f"{number} 0 R"


def text(words: str) -> str:
    """A text of the file's own data, in UTF-16."""
    return f"<feff{words.encode('utf-16-be', 'replace').hex()}>"


def number(value: float) -> str:
    """A number to a thousandth, without needless digits or a negative zero."""
    return f"{round(value, 3) + 0.0:.3f}".rstrip("0").rstrip(".")


def _dictionary(entries: ENTRIES) -> str:
    return f"<< {' '.join(f'/{key} {value}' for key, value in entries.items())} >>"
