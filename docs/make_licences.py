"""The licences of what the program needs to run: writes `docs/licences.md` from the installed packages.

Run in an environment that has the program's dependencies: python docs/make_licences.py
"""

import re
import tomllib
from importlib.metadata import Distribution, PackageNotFoundError, distribution
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
PAGE = Path(__file__).with_name("licences.md")
INTRO = """# Licences of third parties

What the program needs to run, and what that needs in turn, as each package states it itself: written by
`docs/make_licences.py`, run it again after a change of dependencies. Nothing of it is part of this project's files; an
installer that carries them along has to carry their licence texts too, which lie in each package's metadata. Only
what is installed here is listed; versions may be any between the bounds in `pyproject.toml`."""


def page() -> str:
    """The page."""
    wanted = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["dependencies"]
    direct = {name_of(line): bounds(line) for line in wanted}
    rows = [row(found, direct) for found in needed(list(direct)).values()]
    head = ("| package | asked for | licence | project page |", "|---|---|---|---|")
    return "\n".join((INTRO, "", *head, *sorted(rows, key=str.lower))) + "\n"


def needed(names: list[str]) -> dict[str, Distribution]:
    """The packages of these names and those that they need, by name."""
    found: dict[str, Distribution] = {}
    while names:
        name = names.pop()
        if name in found:
            continue
        try:
            found[name] = distribution(name)
        except PackageNotFoundError:
            continue
        names += [name_of(line) for line in found[name].requires or () if "extra ==" not in line]
    return found


def row(package: Distribution, direct: dict[str, str]) -> str:
    """One package."""
    name = package.metadata["Name"]
    return f"| {name} | {direct.get(normal(name), 'by another')} | {licence(package)} | {home(package)} |"


def licence(package: Distribution) -> str:
    """What the package says of its licence."""
    stated = package.metadata.get("License-Expression") or package.metadata.get("License") or ""
    if 0 < len(stated) < 60:
        return stated
    classed = [
        line.rpartition(" :: ")[2]
        for line in package.metadata.get_all("Classifier") or ()
        if "License ::" in line
    ]
    return ", ".join(classed) or stated.strip().splitlines()[0]


def home(package: Distribution) -> str:
    """The page that the package names."""
    links = [line.partition(", ")[2] for line in package.metadata.get_all("Project-URL") or ()]
    return package.metadata.get("Home-page") or next(iter(links), "")


def name_of(requirement: str) -> str:
    """The package's name in a line of requirements."""
    return normal(re.split(r"[\s\[<>=!~;(]", requirement.strip(), maxsplit=1)[0])


def bounds(requirement: str) -> str:
    """The versions that a line of requirements allows."""
    return requirement.strip()[len(re.split(r"[<>=!~]", requirement, maxsplit=1)[0]) :]


def normal(name: str) -> str:
    """A package's name as it is compared."""
    return re.sub(r"[-_.]+", "-", name).lower()


def main() -> None:
    """Writes the page."""
    PAGE.write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
