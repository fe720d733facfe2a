"""A program that saves is killed with -9 again and again, at any moment and before and after each file operation.

    PYTHONPATH=. nice python tests/reliability/kill_during_save.py [kills]

A child saves one version after another and reports each that `save` came back from. After each kill the file has to
hold the last one reported or the one after it, whole, with its comment; the file beside it, `name~`, a whole earlier
one. Only kills that hit the child between its first and its last save count.
"""

import os
import random
import signal
import sys
import time
from collections import Counter
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from fitcalc.documents import atomic
from fitcalc.documents.atomic import previous_version
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_setup, save

COMMENT = "# two holes forward, both bolts new"
LONGEST_S = 0.03
VERSIONS = 400


def version(number):
    return Setup(name="kill", seat_travel=float(number))


def number_in(path):
    return int(load_setup(path).seat_travel)


def child(path, pipe, first):
    """Saves version after version, telling of each that is safe."""
    for number in range(first, VERSIONS):
        save(version(number), path)
        os.write(pipe, number.to_bytes(4, "big"))
    os._exit(0)


def forked(work):
    """Runs something in a child; its process number and the end of the pipe that it reports through."""
    reading, writing = os.pipe()
    process = os.fork()
    if not process:
        try:
            os.close(reading)
            work(writing)
        finally:
            os._exit(1)
    os.close(writing)
    return process, reading


def reported(reading):
    """The last version that the child said was saved; None where it said nothing."""
    told = b""
    while piece := os.read(reading, 65_536):
        told += piece
    os.close(reading)
    return int.from_bytes(told[-4:], "big") if told else None


def verdict(path, before, told):
    """What a kill left: "old", "new", or what was lost."""
    last = before if told is None else told
    try:
        found = number_in(path)
        kept = number_in(previous_version(path)) if previous_version(path).exists() else found
    except Exception as error:
        return f"LOST: {error}"
    if found not in (last, last + 1) or kept > found or COMMENT not in path.read_text("utf-8"):
        return f"LOST: {found} with {kept} beside it, after {last} was reported"
    return "old" if found == last else "new"


def fresh_file(path):
    for old in path.parent.iterdir():
        old.unlink()
    path.write_text(f'name = "kill"\nseat_travel = 0  {COMMENT}\n', "utf-8")


def killed_at_random(path, chance):
    """One kill at any moment; None where the child had ended before it."""
    before = number_in(path)
    if before > VERSIONS // 2:
        fresh_file(path)
        before = 0
    process, reading = forked(lambda pipe: child(path, pipe, before + 1))
    time.sleep(chance.uniform(0.001, LONGEST_S))
    os.kill(process, signal.SIGKILL)
    told = reported(reading)
    _, status = os.waitpid(process, 0)
    return verdict(path, before, told) if os.WIFSIGNALED(status) else None


def trap(step, when):
    """In a child: the program is killed just before or just after its `step`th file operation."""
    seen = count(1)

    def trapped(real):
        def call(*given, **named):
            here = next(seen) == step
            if here and when == "before":
                os.kill(os.getpid(), signal.SIGKILL)
            back = real(*given, **named)
            if here:
                os.kill(os.getpid(), signal.SIGKILL)
            return back

        return call

    for name in ("fsync", "link", "replace", "open", "close", "unlink", "chmod", "stat", "access"):
        setattr(os, name, trapped(getattr(os, name)))
    for name in ("open", "chmod", "unlink", "exists", "stat", "glob"):
        setattr(Path, name, trapped(getattr(Path, name)))


def killed_at_step(path, step, when):
    """One kill at one file operation; None where a save has no such operation."""
    fresh_file(path)
    save(version(1), path)

    def work(pipe):
        trap(step, when)
        save(version(2), path)
        os._exit(0)

    process, reading = forked(work)
    told = reported(reading)
    _, status = os.waitpid(process, 0)
    return verdict(path, 1, told) if os.WIFSIGNALED(status) else None


def every_step(path):
    """Kills before and after each file operation of one save."""
    for step in count(1):
        each = [killed_at_step(path, step, when) for when in ("before", "after")]
        if each == [None, None]:
            return
        yield from filter(None, each)


def parts_left(path):
    return len(list(path.parent.glob(atomic.PART)))


def run(wanted):
    """Kills so many saves; 1 where anything was lost."""
    chance, start, at_random, parts = random.Random(9), time.perf_counter(), Counter(), 0
    with TemporaryDirectory() as folder:
        path = Path(folder, "rework.toml")
        at_steps = Counter(every_step(path))
        fresh_file(path)
        while at_random.total() < wanted:
            left = parts_left(path)
            found = killed_at_random(path, chance)
            at_random.update([found] if found else [])
            parts += parts_left(path) > left
    print(f"{at_steps.total()} kills at each file operation: {dict(at_steps)}")
    print(
        f"{at_random.total()} kills at random: {dict(at_random)}, {parts} of them within the writing of the file"
    )
    print(f"{time.perf_counter() - start:.0f} s")
    return 1 if {*at_steps, *at_random} - {"old", "new"} else 0


if __name__ == "__main__":
    sys.exit(run(int(sys.argv[1]) if sys.argv[1:] else 2_000))
