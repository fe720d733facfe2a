"""Valid files mutated as people, editors and strangers would: each loads or is refused with one sentence, within 2 s.

PYTHONPATH=. nice python tests/reliability/mutate_files.py [files]
"""

import re

from damage import main, valid_files

NUMBER = re.compile(rb"(?<![\w.])-?\d+(?:\.\d+)?(?![\w.])")
ODD_VALUES = (
    b"nan", b"inf", b"-inf", b"0", b"-0.0", b"1e308", b"-1e308", b"1e-320", b"9" * 400, b"0x7fffffffffffffff", b"true",
    b'"250 mm"', b"''", b"[]", b"{}", b"[[[]]]", b"1979-05-27", b"07:32:00", b"1_0", b"2,5", b"250 mm", b"1" * 5_000,
)  # fmt: skip
ODD_BYTES = (
    b"\0", b"\r", b"\r\n", b"\t", b"\xff\xfe", b"\xef\xbb\xbf", b"\xe2\x80\xa8", b"\xed\xa0\x80", b'"', b"'''", b'"""',
    b"\\", b"\\u0000", b"\\U0010FFFF", b"#", b"=", b"[", b"]]", b"{", b"}", b".", b"a.b.c = 1\n", b"[seat]\n",
    b"[[pedals]]\n", b"[" * 3_000, b"a." * 90 + b"a = 1\n", b"# " + b"x" * 20_000 + b"\n", b"[rails]\nkind = 3\n",
)  # fmt: skip

OTHERS = valid_files()


def other_number(chance, content):
    """One number replaced by a value that is odd, far or near."""
    places = list(NUMBER.finditer(content))
    if not places:
        return content
    place = chance.choice(places)
    far = str(float(place[0]) * chance.choice((-1.0, 0.001, 0.1, 1 / 25.4, 25.4, 10.0, 1000.0))).encode()
    return content[: place.start()] + chance.choice((*ODD_VALUES, far, far, far)) + content[place.end() :]


def odd_bytes(chance, content):
    """Something odd put in anywhere."""
    at = chance.randrange(len(content) + 1)
    return content[:at] + chance.choice(ODD_BYTES) + content[at:]


def cut(chance, content):
    """A piece cut out, or the end cut off."""
    start = chance.randrange(len(content))
    return content[:start] + content[start + chance.choice((1, 5, 50, 500, len(content))) :]


def lines_moved(chance, content):
    """A line taken out, given twice, or put somewhere else."""
    lines = content.splitlines(keepends=True) or [b""]
    line = lines.pop(chance.randrange(len(lines)))
    for _ in range(chance.randrange(3)):
        lines.insert(chance.randrange(len(lines) + 1), line)
    return b"".join(lines)


def crossed(chance, content):
    """The start of this file with the end of another."""
    _, other = chance.choice(OTHERS)
    return content[: chance.randrange(len(content) + 1)] + other[chance.randrange(len(other)) :]


def letter(chance, content):
    """One byte replaced by any other."""
    at = chance.randrange(len(content))
    return content[:at] + bytes([chance.randrange(256)]) + content[at + 1 :]


def repeated(chance, content):
    """A piece repeated many times."""
    start = chance.randrange(len(content))
    piece = content[start : start + chance.choice((1, 10, 100))]
    return content[:start] + piece * chance.choice((2, 50, 1_000)) + content[start:]


KINDS = (other_number, other_number, other_number, odd_bytes, cut, lines_moved, letter, crossed, repeated)


def mutated(chance, content):
    """One to three mutations, one after another."""
    for _ in range(chance.choice((1, 1, 2, 3))):
        content = chance.choice(KINDS)(chance, content) or b"\n"
    return content


if __name__ == "__main__":
    main(mutated, 100_000)
