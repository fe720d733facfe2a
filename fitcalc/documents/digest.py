"""A short fingerprint of documents, by which a printed sheet is matched to its files."""

import hashlib

from fitcalc.documents.fields import Document

DIGITS = 12
"""Of the digest's 64 hexadecimal digits, how many stand on a sheet."""


def digest(*documents: Document) -> str:
    """Short SHA-256 of documents by what they say, whatever their layout and comments."""
    content = "\n".join(document.model_dump_json() for document in documents)
    return hashlib.sha256(content.encode()).hexdigest()[:DIGITS]
