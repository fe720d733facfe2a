"""Ways in: the module, the version, completion in the shell."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from fitcalc.cli import main

ROOT = Path(__file__).resolve().parents[2]


def run(*words):
    return subprocess.run(words, capture_output=True, text=True, cwd=ROOT, check=False)


def completed(script, *words):
    """What bash offers for the last of these words."""
    typed = " ".join(f"'{word}'" for word in words)
    code = f'{script}\nCOMP_WORDS=({typed}); COMP_CWORD={len(words) - 1}; _fitcalc; echo "${{COMPREPLY[@]}}"'
    return run("bash", "-c", code).stdout.split()


@pytest.fixture
def script(capsys):
    if not shutil.which("bash"):
        pytest.skip("no bash on this system")
    assert main(["completion", "bash"]) == 0
    return capsys.readouterr().out


def test_module_runs_and_tells_its_version():
    told = run(sys.executable, "-m", "fitcalc", "--version")
    assert (told.returncode, told.stderr) == (0, "")
    assert told.stdout.startswith("fitcalc ")


@pytest.mark.parametrize(
    ("words", "offered"),
    [
        (("fitcalc", "che"), ["check"]),
        (("fitcalc", "--v"), ["--version"]),
        (("fitcalc", "check", "hill"), ["hillclimb"]),
        (("fitcalc", "check", "hillclimb", "rob"), ["robin"]),
        (("fitcalc", "check", "--ru"), ["--rules"]),
        (("fitcalc", "schema", "dr"), ["driver"]),
        (("fitcalc", "nonsense", "dr"), []),
    ],
)
def test_bash_completes(script, words, offered):
    assert completed(script, *words) == offered


def test_zsh_gets_the_same_through_its_bash_layer(script, capsys):
    main(["completion", "zsh"])
    told = capsys.readouterr().out
    assert told.endswith(script)
    assert "bashcompinit" in told
