"""Small faults put into the core's formulas one at a time: which of them does no test notice?

    PYTHONPATH=. nice python tests/reliability/mutants.py learn
    PYTHONPATH=. nice python tests/reliability/mutants.py run 40 geometry body/links.py ...
    PYTHONPATH=. nice python tests/reliability/mutants.py again
    PYTHONPATH=. nice python tests/reliability/mutants.py afresh
    PYTHONPATH=. nice python tests/reliability/mutants.py table

`learn` runs the core's tests once, or those named behind it, and notes which functions each of them calls. `run`
draws that many faults of each module (seeded; 0 = all) and runs, for each, the tests that call the function it stands
in: those that call least first, until one fails. `again` tries the survivors once more, `afresh` with everything
imported anew, `table` counts. Findings are kept in `mutants.jsonl` in the folder for temporary files.

All tests are collected once; each fault is put into a fork of that process, by giving the function the code of the
changed module. What a test file works out while it is imported is therefore made without the fault, and a fault is
called noticed less often than it would be, never more often.
"""

import ast
import contextlib
import copy
import gc
import json
import os
import random
import re
import resource
import signal
import sys
import tempfile
import time
import types
from collections import Counter, defaultdict
from importlib import import_module
from importlib.machinery import SourceFileLoader
from pathlib import Path

os.environ |= {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1", "QT_QPA_PLATFORM": "offscreen"}

import pytest

ROOT = Path(__file__).resolve().parents[2]
KEPT = Path(tempfile.gettempdir())
LEARNT, FOUND = KEPT / "mutants-learnt.json", KEPT / "mutants.jsonl"
ROOMS = ("geometry", "body", "documents", "posture", "making", "checks", "fit", "present", "published")
SEED = 2611
BUDGET_S = 2.5
"""So many seconds of tests for one fault; a fault that outlives them has survived."""
LIMIT_S = 90
"""A fault that makes the tests take so much computing time is noticed: they would never end."""

SURVIVED, NOTICED, BROKEN = 10, 11, 12
ENDS = {SURVIVED: "survived", NOTICED: "noticed"}

SWAPS = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult, ast.Mod: ast.Mult,
    ast.Pow: ast.Mult, ast.FloorDiv: ast.Mult, ast.BitAnd: ast.BitOr, ast.BitOr: ast.BitAnd,
    ast.And: ast.Or, ast.Or: ast.And,
}  # fmt: skip
COMPARED = {
    ast.Lt: (ast.LtE, ast.GtE), ast.LtE: (ast.Lt, ast.Gt), ast.Gt: (ast.GtE, ast.LtE), ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,), ast.NotEq: (ast.Eq,), ast.Is: (ast.IsNot,), ast.IsNot: (ast.Is,), ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}  # fmt: skip
PAIRS = [
    ("sin", "cos"), ("sind", "cosd"), ("minimum", "maximum"), ("min", "max"), ("argmin", "argmax"), ("any", "all"),
    ("floor", "ceil"), ("radians", "degrees"), ("zeros", "ones"), ("zeros_like", "ones_like"), ("asind", "acosd"),
    ("arcsin", "arccos"), ("repeat", "tile"),
]  # fmt: skip
CALLED = {a: b for pair in PAIRS for a, b in (pair, pair[::-1])}


def variants(node):
    """Faults of one place, each with its words: the node as it would stand instead."""
    if isinstance(node, ast.BinOp | ast.AugAssign | ast.BoolOp) and type(node.op) in SWAPS:
        other = SWAPS[type(node.op)]
        yield f"{type(node.op).__name__} -> {other.__name__}", changed(node, op=other())
    elif isinstance(node, ast.Compare) and len(node.ops) == 1:
        for other in COMPARED.get(type(node.ops[0]), ()):
            yield f"{type(node.ops[0]).__name__} -> {other.__name__}", changed(node, ops=[other()])
    elif isinstance(node, ast.UnaryOp) and not isinstance(node.op, ast.UAdd):
        yield f"{type(node.op).__name__} left out", node.operand
    elif isinstance(node, ast.Constant) and isinstance(node.value, bool):
        yield f"{node.value} -> {not node.value}", changed(node, value=not node.value)
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        yield f"{node.value} -> {node.value + 1}", changed(node, value=node.value + 1)
    elif isinstance(node, ast.IfExp):
        yield "either way round", changed(node, body=node.orelse, orelse=node.body)
    elif isinstance(node, ast.If | ast.While):
        yield "condition turned", changed(node, test=ast.UnaryOp(ast.Not(), node.test))
    elif isinstance(node, ast.comprehension) and node.ifs:
        yield "filter left out", changed(node, ifs=[])
    elif isinstance(node, ast.Call):
        yield from call_variants(node)


def call_variants(node):
    name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
    if name in CALLED and isinstance(node.func, ast.Attribute):
        yield f"{name} -> {CALLED[name]}", changed(node, func=changed(node.func, attr=CALLED[name]))
    elif name in CALLED and name in ("min", "max", "any", "all"):
        yield f"{name} -> {CALLED[name]}", changed(node, func=changed(node.func, id=CALLED[name]))
    elif name == "where" and len(node.args) == 3:
        yield "either way round", changed(node, args=[node.args[0], node.args[2], node.args[1]])
    elif name in ("abs", "sqrt", "round") and node.args:
        yield f"{name} left out", node.args[0]


def changed(node, **fields):
    new = copy.copy(node)
    for name, value in fields.items():
        setattr(new, name, value)
    return new


class Changer(ast.NodeTransformer):
    """Goes through a module; counts its places, or makes one of its faults."""

    def __init__(self, wanted=None):
        self.wanted, self.all, self.inside = wanted, [], []

    def visit(self, node):
        if isinstance(node, ast.keyword) and node.arg in ("axis", "strict"):
            return node
        if isinstance(node, ast.AnnAssign):
            node.value = node.value and self.visit(node.value)
            return node
        if isinstance(node, ast.ClassDef):
            node.body = [
                self.within(each) if isinstance(each, ast.FunctionDef) else each for each in node.body
            ]
            return node
        if isinstance(node, ast.FunctionDef):
            return self.within(node)
        for words, other in variants(node):
            line = getattr(node, "lineno", 0) or node.target.lineno
            self.all.append((self.inside[0] if self.inside else node, words, line))
            if len(self.all) - 1 == self.wanted:
                return ast.copy_location(other, node)
        return self.generic_visit(node)

    def within(self, function):
        self.inside.append(function)
        function.body = [self.visit(each) for each in function.body]
        self.inside.pop()
        return function


def faults(path):
    """Every fault of a module, in order: the function that it stands in, its words, its line."""
    changer = Changer()
    changer.visit(ast.parse(path.read_text(encoding="utf-8")))
    lines = path.read_text(encoding="utf-8").splitlines()
    for at, (inside, words, line) in enumerate(changer.all):
        name = inside.name if isinstance(inside, ast.FunctionDef) else ""
        first = inside.lineno if name else 0
        text = lines[(line or first) - 1].strip()
        remembers = any("cache" in ast.dump(each) for each in getattr(inside, "decorator_list", ()))
        yield {"module": path.relative_to(ROOT).as_posix(), "at": at, "function": name, "first": first, "fault": words,
               "line": line or first, "text": text, "remembers": remembers}  # fmt: skip


def codes(code):
    """The code of every function of a module, by name and line."""
    for each in code.co_consts:
        if isinstance(each, types.CodeType):
            yield (each.co_qualname, each.co_firstlineno), each
            yield from codes(each)


def put_in(fault, functions):
    """Give the running program's function or figure what the changed module gives it."""
    path = ROOT / fault["module"]
    tree = Changer(fault["at"]).visit(ast.parse(path.read_text(encoding="utf-8")))
    name = ".".join(path.with_suffix("").relative_to(ROOT).parts)
    code = compile(ast.fix_missing_locations(tree), str(path), "exec")
    if fault["function"]:
        new = list(codes(code))
        for function in functions[name]:
            same = [other for place, other in new if place == place_of(function)]
            if len(same) == 1:
                function.__code__ = same[0]
    else:
        put_in_names(name, code)


def place_of(function):
    return function.__code__.co_qualname, function.__code__.co_firstlineno


def put_in_names(name, code):
    """The figures of the changed module, wherever they were imported."""
    old, fresh = dict(vars(sys.modules[name])), types.ModuleType(name)
    exec(code, vars(fresh))
    for key, value in vars(fresh).items():
        if key in old and not key.startswith("__") and not callable(value) and repr(value) != repr(old[key]):
            put_in_everywhere(key, old[key], value)


def put_in_everywhere(key, was, value):
    for module in list(sys.modules.values()):
        names = getattr(module, "__dict__", {})
        ours = str(getattr(module, "__file__", "") or "").startswith(str(ROOT))
        if ours and key in names and names[key] is was:
            names[key] = value


def functions_and_caches():
    """Every function of the program by its module, and everything that remembers its answers."""
    functions, caches = defaultdict(list), []
    for each in gc.get_objects():
        if isinstance(each, types.FunctionType):
            functions[each.__module__].append(each)
        elif type(each).__name__ == "_lru_cache_wrapper":
            caches.append(each)
    return functions, caches


class Learning:
    """Notes which functions of the core each test calls, and how long it takes."""

    def __init__(self):
        self.known, self.failed, self.base = {}, set(), str(ROOT / "fitcalc")

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item):
        called = set()

        def note(frame, event, arg):
            if frame.f_code.co_filename.startswith(self.base):
                called.add(frame.f_code)

        start = time.process_time()
        sys.settrace(note)
        try:
            return (yield)
        finally:
            sys.settrace(None)
            where = sorted(
                {f"{Path(c.co_filename).relative_to(ROOT).as_posix()}:{c.co_qualname}" for c in called}
            )
            self.known[item.nodeid] = {"seconds": round(time.process_time() - start, 4), "calls": where}

    def pytest_runtest_logreport(self, report):
        if report.failed:
            self.failed.add(report.nodeid)


class Trying:
    """In place of running the tests: forks for each fault and runs the tests that may notice it."""

    def __init__(self, wanted):
        self.wanted, self.learnt = wanted, json.loads(LEARNT.read_text())

    def pytest_runtestloop(self, session):
        self.functions, self.caches = functions_and_caches()
        gc.freeze()
        items = {item.nodeid: item for item in session.items}
        for fault in self.wanted:
            tests = [test for test in chosen(self.learnt, fault, BUDGET_S) if test in items]
            keep(
                fault,
                tests,
                lambda tests=tests, fault=fault: self.put_into(session, map(items.get, tests), fault),
            )
        return True

    def put_into(self, session, items, fault):
        quick_hypothesis()
        for held in self.caches:
            held.cache_clear()
        put_in(fault, self.functions)
        return any_fails(session, list(items))


def keep(fault, tests, noticed):
    """Find out in a fork what becomes of a fault, and keep it."""
    start = time.monotonic()
    end = in_a_fork(noticed) if tests else "no test"
    fault = fault | {"tests": len(tests), "end": end, "s": round(time.monotonic() - start, 2)}
    with FOUND.open("a") as kept:
        kept.write(json.dumps(fault) + "\n")
    print(*(fault[name] for name in ("end", "module", "line", "fault", "text", "tests", "s")), flush=True)


def in_a_fork(noticed):
    """What became of the fault: noticed, survived, or so slow that it never ends."""
    child = os.fork()
    if not child:
        status = BROKEN
        with contextlib.suppress(BaseException):
            silence = os.open(os.devnull, os.O_WRONLY)
            os.dup2(silence, 1), os.dup2(silence, 2)
            resource.setrlimit(resource.RLIMIT_CPU, (LIMIT_S, LIMIT_S))
            status = NOTICED if noticed() else SURVIVED
        os._exit(status)
    _, ended = os.waitpid(child, 0)
    if os.WIFSIGNALED(ended):
        return "no end" if os.WTERMSIG(ended) in (signal.SIGKILL, signal.SIGXCPU) else "noticed"
    return ENDS.get(os.WEXITSTATUS(ended), "broken")


def chosen(learnt, fault, budget):
    """Tests that call the function, those that call little first; then the rest of their files."""
    wanted = [f"{fault['module']}:{fault['function']}", *(f"{each}:" for each in users(fault))]
    if fault["function"] and not fault["remembers"]:
        wanted = wanted[:1]
    hits = tests_of(learnt, wanted) or tests_of(learnt, [f"{fault['module']}:"])
    files = {test.partition("::")[0] for test in hits}
    kept, spent = {}, 0.0
    for test in [
        *that_name(learnt, fault),
        *hits,
        *(test for test in learnt if test.partition("::")[0] in files),
    ]:
        if test not in kept and spent + learnt[test]["seconds"] <= budget:
            kept[test] = None
            spent += learnt[test]["seconds"]
    return list(kept)


def that_name(learnt, fault):
    """Tests whose own name speaks of the figure that the fault is in, as those that restate it do."""
    return [test for test in learnt if any(f"-{name}-" in test for name in named(fault))]


def named(fault):
    """Names of the figures that the fault's line gives a value to."""
    names = re.match(r"([A-Z_]+(?:, [A-Z_]+)*)(?:: .*?)? = ", fault["text"])
    return names[1].split(", ") if names else []


def users(fault):
    """The module, and those that speak of the figure that the fault is in."""
    names = set(named(fault))
    for path in sorted((ROOT / "fitcalc").rglob("*.py")) if names else ():
        if names & set(re.findall(r"\w+", path.read_text(encoding="utf-8"))):
            yield path.relative_to(ROOT).as_posix()
    yield fault["module"]


def tests_of(learnt, wanted):
    """Tests that call any of these functions, written `module:function`, or `module:` for all it has."""
    pairs = [each.partition(":")[::2] for each in wanted]
    hits = [
        test
        for test, known in learnt.items()
        if any(touches(call, *pair) for call in known["calls"] for pair in pairs)
    ]
    return sorted(hits, key=lambda test: (len(learnt[test]["calls"]), learnt[test]["seconds"]))


def tried_afresh(fault, tests):
    """Whether the tests notice the fault where all is imported anew, what test files work out at once included."""
    path, whole = ROOT / fault["module"], SourceFileLoader.get_code
    tree = Changer(fault["at"]).visit(ast.parse(path.read_text(encoding="utf-8")))
    code = compile(ast.fix_missing_locations(tree), str(path), "exec")
    SourceFileLoader.get_code = lambda self, name: code if Path(self.path) == path else whole(self, name)
    return pytest.main(["-q", "-x", "-p", "no:cacheprovider", "-n", "0", *tests]) not in (0, 4)


def survivors():
    """What no test noticed yet, as far as its place still reads as it did; the rest is kept as gone."""
    places = {}
    for path in {each["module"] for each in found().values()}:
        if (ROOT / path).exists():
            places |= {moving(fault): fault for fault in faults(ROOT / path)}
    for each in [each for each in found().values() if each["end"] not in ("noticed", "no end", "gone")]:
        if moving(each) in places:
            yield places[moving(each)] | {"known_at": each.get("known_at", each["at"])}
        else:
            with FOUND.open("a") as kept:
                kept.write(json.dumps(each | {"end": "gone"}) + "\n")


def afresh():
    """The survivors once more, each with everything imported anew."""
    for library in ("numpy", "scipy.optimize", "shapely", "pydantic", "sympy", "tomlkit"):
        import_module(library)
    learnt = json.loads(LEARNT.read_text())
    for each in survivors():
        tests = chosen(learnt, each, 8 * BUDGET_S)
        keep(each, tests, lambda each=each, tests=tests: tried_afresh(each, tests))


def moving(fault):
    """What a fault is known by where lines above it came or went."""
    return fault["module"], fault["function"], fault["text"], fault["fault"]


def touches(call, where, name):
    """Whether a call was of this function, or of any of the module where a figure of the module is meant."""
    module, _, qualified = call.partition(":")
    return module == where and (not name or name in qualified.split("."))


def quick_hypothesis():
    from hypothesis import HealthCheck, Phase, settings

    settings.register_profile("mutants", max_examples=50, deadline=None, database=None, derandomize=True,
                              phases=[Phase.explicit, Phase.generate], suppress_health_check=list(HealthCheck))  # fmt: skip
    settings.load_profile("mutants")


def any_fails(session, items):
    for item, following in zip(items, [*items[1:], None], strict=True):
        item.config.hook.pytest_runtest_protocol(item=item, nextitem=following)
        if session.testsfailed:
            return True
    return False


def pytest_with(plugin, where=()):
    where = where or [str(ROOT / "tests" / room) for room in ROOMS]
    return pytest.main(["-q", "-p", "no:cacheprovider", "-n", "0", *where], plugins=[plugin])


def modules(names):
    for name in names:
        path = ROOT / "fitcalc" / name
        yield from sorted(path.glob("*.py")) if path.is_dir() else [path]


def found():
    """The last finding of each fault."""
    if not FOUND.exists():
        return {}
    every = (json.loads(line) for line in FOUND.read_text().splitlines())
    return {key(each): each for each in every}


def drawn(count, names):
    """The first of each module's faults in an order of chance that is always the same; those not tried yet."""
    known = found()
    for path in modules(names):
        every = list(faults(path))
        random.Random(f"{SEED} {path.relative_to(ROOT).as_posix()}").shuffle(every)
        yield from (each for each in every[: count or None] if key(each) not in known)


def key(fault):
    return (
        fault["module"],
        fault["function"],
        fault["text"],
        fault["fault"],
        fault.get("known_at", fault["at"]),
    )


def table():
    rooms = defaultdict(Counter)
    for each in found().values():
        if each["end"] in ("gone", "broken", "no test"):
            continue
        for name in (Path(each["module"]).parent.name, each["module"], "all"):
            rooms[name][each["end"]] += 1
    for name, ends in sorted(rooms.items(), key=lambda row: (row[0].count("/"), row[0])):
        tried = sum(ends.values())
        print(
            f"| {name} | {tried} | {tried - ends['survived']} | {100 * (1 - ends['survived'] / tried):.1f} % |"
        )


def main(what, *rest):
    if what == "learn":
        learning, before = Learning(), json.loads(LEARNT.read_text()) if rest else {}
        pytest_with(learning, rest)
        passed = {test: known for test, known in learning.known.items() if test not in learning.failed}
        LEARNT.write_text(json.dumps(before | passed))
    elif what == "run":
        pytest_with(Trying(list(drawn(int(rest[0]), rest[1:]))))
    elif what == "again":
        pytest_with(Trying(list(survivors())))
    elif what == "afresh":
        afresh()
    else:
        table()


if __name__ == "__main__":
    main(*sys.argv[1:])
