"""Runs a command as a person does and hands back what it printed."""

import io
import json
from contextlib import redirect_stdout

from fitcalc.cli import main


def printed(*words):
    """Status and text."""
    told = io.StringIO()
    with redirect_stdout(told):
        status = main([str(word) for word in words])
    return status, told.getvalue()


def printed_json(*words):
    """Status and record."""
    status, text = printed(*words, "--json")
    return status, json.loads(text)
