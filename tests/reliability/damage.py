"""What the damage scripts share: valid files, and one damaged file loaded under a clock."""

import random
import signal
import sys
import time
import traceback
from collections import Counter
from pathlib import Path
from tempfile import TemporaryDirectory

from fitcalc.documents.samples import sample_cars, sample_drivers
from fitcalc.documents.schema import KINDS
from fitcalc.documents.store import load
from fitcalc.errors import InputError

LIMIT_S = 2.0
SETUP = b"""\
format = 1
name = "tried on Sunday"
seat_travel = 40  # two holes forward
recline = 2.5

[brake]
stand_off = 30
longer_arm = 0
"""


def valid_files():
    """Kind and bytes of files that load; light ones come oftener than the long cars."""
    cars = [("car", path.read_bytes()) for path in sample_cars().values()]
    drivers = [("driver", path.read_bytes()) for path in sample_drivers().values()]
    return cars + 3 * drivers + 8 * [("setup", SETUP)]


def hung(*_):
    raise TimeoutError(f"not done in {LIMIT_S:g} s")


def outcome(kind, path):
    """What loading comes to: "loaded", "refused", or a fault in words."""
    signal.setitimer(signal.ITIMER_REAL, LIMIT_S)
    try:
        load(KINDS[kind], path)
    except InputError as error:
        return "refused" if "\n" not in str(error) else f"FAULT more than one line: {error}"
    except BaseException as error:
        return f"FAULT {kind}: " + "".join(traceback.format_exception(error)[-2:])
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0.0)
    return "loaded"


def run(damage, wanted):
    """Loads so many damaged files; 1 where one of them is a fault."""
    signal.signal(signal.SIGALRM, hung)
    chance, files, came_to, slowest, start = (
        random.Random(9),
        valid_files(),
        Counter(),
        0.0,
        time.perf_counter(),
    )
    with TemporaryDirectory() as folder:
        path = Path(folder, "file.toml")
        for _ in range(wanted):
            kind, content = chance.choice(files)
            path.write_bytes(damage(chance, content))
            began = time.perf_counter()
            came_to[outcome(kind, path)] += 1
            slowest = max(slowest, time.perf_counter() - began)
    print(f"{wanted} files in {time.perf_counter() - start:.0f} s, the slowest took {slowest:.3f} s")
    for words, count in came_to.most_common():
        print(count, words)
    return 1 if came_to.keys() - {"loaded", "refused"} else 0


def main(damage, usual):
    """Runs as many as the command line asks for."""
    sys.exit(run(damage, int(sys.argv[1]) if sys.argv[1:] else usual))
