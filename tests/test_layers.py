"""The house keeps its layers: cli -> acts, asks -> core, store; facts -> core; core -> nothing."""

from __future__ import annotations

import ast
import re
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from graphlib import TopologicalSorter
from itertools import pairwise
from pathlib import Path

import pytest

from tests.sources import nodes_of, tree_of

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "finishlog"
MODULES = sorted(PACKAGE.rglob("*.py"))

LONGEST_MODULE = 400
LONGEST_FUNCTION = 60

# What each layer may import of ours. `TYPE_CHECKING` alone loads nothing and is judged apart.
MAY_IMPORT = {
    "core": {"core"},
    "facts": {"core", "facts"},
    "store": {"core", "store", "errors", "__version__"},
    "picking": {"core", "errors"},
    "clock": {"core", "errors"},
    "errors": set(),
    "paths": {"errors"},
    "context": {"core", "store", "clock"},
    "asks": {"asks", "core", "store", "picking", "context", "clock", "errors"},
    "acts": {"acts", "asks", "core", "store", "picking", "context", "clock", "errors"},
    "cli": {"cli", "acts", "asks", "core", "clock", "paths", "errors", "__version__"},
    "__main__": {"cli"},
    "__init__": set(),
}
# Only for annotations: what `cli` is handed by the acts and asks.
MAY_NAME = {"cli": {"context", "store"}}
# What a command has at hand opens the database and the facts, inside the functions that need them.
OPENS = {"cli/answering/run.py": {"context", "facts", "store"}}

# The libraries of others, and the layers that may load them.
MAY_LOAD = {
    "core": {"msgspec"},
    "facts": {"msgspec"},
    "store": {"msgspec", "sqlalchemy", "alembic"},
    "asks": {"msgspec"},
    "context": {"msgspec"},
    "acts": {"msgspec"},
    "cli": {"msgspec", "typer", "rich", "dateutil"},
    "clock": {"msgspec"},
    "errors": {"msgspec"},
    "picking": {"msgspec"},
    "paths": {"platformdirs"},
}
# Standard modules that reach outside a program: the core takes values and gives values.
REACHES_OUT = {
    "asyncio", "ctypes", "curses", "fcntl", "fileinput", "getpass", "glob", "http", "importlib",
    "io", "locale", "logging", "mmap", "multiprocessing", "os", "pathlib", "platform", "pty",
    "random", "secrets", "select", "shelve", "shutil", "signal", "socket", "sqlite3", "ssl",
    "subprocess", "sys", "tempfile", "termios", "threading", "time", "tomllib", "tty", "urllib",
}  # fmt: skip
READS_THE_CLOCK = {"now", "utcnow", "today", "time", "time_ns", "monotonic", "localtime", "gmtime"}


@dataclass(frozen=True)
class Import:
    """One imported module, where, and whether it is for annotations only or in a function."""

    layer: str
    file: str
    line: int
    module: str
    annotates: bool
    in_function: bool

    @property
    def of_ours(self) -> str:
        """Name our layer that is imported; empty when it is not ours."""
        first, _, rest = self.module.partition(".")
        return rest.split(".")[0] if first == "finishlog" else ""

    @property
    def library(self) -> str:
        """Name the library of others; empty when it is standard or ours."""
        first = self.module.split(".")[0]
        known = first in sys.stdlib_module_names or first == "finishlog"
        return "" if known else first

    def __str__(self) -> str:
        return f"{self.file}:{self.line} imports {self.module}"


def _layer(file: Path) -> str:
    inside = file.relative_to(PACKAGE)
    return inside.parts[0] if len(inside.parts) > 1 else inside.stem


@cache
def _imports() -> tuple[Import, ...]:
    return tuple(
        each
        for file in MODULES
        for each in _walk(tree_of(file), file, annotates=False, in_function=False)
    )


def _walk(node: ast.AST, file: Path, *, annotates: bool, in_function: bool) -> Iterator[Import]:
    for child in ast.iter_child_nodes(node):
        for module in _modules(child, file):
            yield Import(
                _layer(file),
                str(file.relative_to(PACKAGE)),
                child.lineno,
                module,
                annotates,
                in_function,
            )
        yield from _walk(
            child,
            file,
            annotates=annotates or _is_type_checking(child),
            in_function=in_function or isinstance(child, ast.FunctionDef | ast.AsyncFunctionDef),
        )


def _modules(node: ast.AST, file: Path) -> list[str]:
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    if not isinstance(node, ast.ImportFrom):
        return []
    assert node.level == 0, f"{file}:{node.lineno}: a relative import"
    # `from finishlog import clock`, `from finishlog.cli import shop`: modules, not names.
    return [f"{node.module}.{alias.name}" for alias in node.names]


def _is_type_checking(node: ast.AST) -> bool:
    return isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING"


# The rooms of each floor, from the bottom up: a room imports only what stands above it in its list.
ROOMS = {
    "core": (
        "measure", "air", "finish", "findings", "log", "logger", "published", "clock", "mixing",
        "shop", "film", "zone", "safety", "rules", "verdict", "trouble", "pace", "bench", "plan",
    ),
    "store": ("schema", "log", "things"),
    "asks": ("look", "bench", "past", "things"),
    "acts": ("meant", "answers", "mixing", "air", "film", "pieces", "things", "correct"),
    "cli": ("terminal", "typed", "words", "answering", "pages", "completion", "commands"),
}  # fmt: skip
MOST_FILES_IN_A_ROOM = 16


def test_every_module_belongs_to_a_layer():
    assert {_layer(file) for file in MODULES} == set(MAY_IMPORT)


def test_a_layer_imports_only_the_layers_below_it():
    wrong = [
        str(each)
        for each in _imports()
        if each.of_ours and each.of_ours not in _allowed(each) | MAY_IMPORT[each.layer]
    ]
    assert wrong == []


def _room(module: str) -> tuple[str, str]:
    """Return floor and room of a module of ours: `core`, `clock`."""
    _, floor, *rest = (*module.split("."), "", "")
    return floor, rest[0]


def _rooms_of(each: Import) -> tuple[tuple[str, str], tuple[str, str]]:
    importer = "finishlog." + each.file.removesuffix(".py").replace("/", ".")
    return _room(importer), _room(each.module)


@pytest.mark.parametrize("floor", ROOMS)
def test_a_room_imports_only_the_rooms_before_it(floor: str):
    """Imports for annotations and within functions count like any other."""
    order = ROOMS[floor]
    wrong = [
        str(each)
        for each in _imports()
        for (of, room), (its, other) in [_rooms_of(each)]
        if of == its == floor and room in order and other in order
        if order.index(other) > order.index(room)
    ]
    assert wrong == []


def test_every_file_of_a_floor_stands_in_a_room():
    """What stands on the floor itself: the database file, and what is too small for a room."""
    loose = {
        str(file.relative_to(PACKAGE))
        for file in MODULES
        if _layer(file) in ROOMS and file.name != "__init__.py"
        if file.relative_to(PACKAGE).parts[1] not in ROOMS[_layer(file)]
        and len(file.relative_to(PACKAGE).parts) == 2
    }
    assert loose == {
        "cli/app.py", "core/commands.py", "core/findings.py", "store/backup_sqlite.py",
        "store/damage_sqlite.py", "store/database.py", "store/engine_sqlite.py",
        "store/names_sqlite.py", "store/remade_sqlite.py", "store/revision_sqlite.py",
        "store/upgrade.py",
    }  # fmt: skip


def test_a_room_can_be_seen_whole():
    counts = Counter(file.parent for file in MODULES if file.name != "__init__.py")
    assert {
        str(f.relative_to(PACKAGE)): n for f, n in counts.items() if n > MOST_FILES_IN_A_ROOM
    } == {}


def test_nothing_imports_in_a_circle():
    """No module reaches itself by imports, those for annotations and within functions counted."""
    names = {
        ".".join(("finishlog", *f.relative_to(PACKAGE).with_suffix("").parts)) for f in MODULES
    }
    after: dict[str, set[str]] = {}
    for each in _imports():
        importer = "finishlog." + each.file.removesuffix(".py").replace("/", ".")
        whole = each.module if each.module in names else each.module.rpartition(".")[0]
        if whole in names:
            after.setdefault(importer, set()).add(whole)
    circles = TopologicalSorter(after)
    circles.prepare()  # CycleError names the modules of a circle.


def test_what_is_replaced_in_a_struct_is_a_field_of_one():
    """No type checker knows `msgspec.structs.replace`: a misspelt field would fail when it runs."""
    fields = [
        {node.target.id for node in of.body if isinstance(node, ast.AnnAssign)}
        for file in MODULES
        for of in nodes_of(tree_of(file))
        if isinstance(of, ast.ClassDef)
        for node in of.body
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name)
    ]
    wrong = [
        f"{file.relative_to(PACKAGE)}:{node.lineno} {sorted(named)}"
        for file in MODULES
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id == "replace"
        for named in [{each.arg for each in node.keywords if each.arg}]
        if not any(named <= of for of in fields)
    ]
    assert wrong == []


def _allowed(each: Import) -> set[str]:
    if each.annotates:
        return MAY_NAME.get(each.layer, set())
    return OPENS.get(each.file, set()) if each.in_function else set()


# What a command is given in one value, and the look that has it.
IN_THE_CONTEXT = {"Context", "Look", "Database", "Facts", "Clock", "Units", "Temperature"}


def test_no_function_takes_parts_of_the_context_beside_each_other():
    wrong = [
        f"{file.relative_to(PACKAGE)}:{node.lineno} {node.name} takes {', '.join(sorted(parts))}"
        for file in MODULES
        if _layer(file) in {"acts", "asks", "cli"}
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.FunctionDef) and len(parts := _of_the_context(node, file)) > 1
    ]
    assert wrong == []


def _of_the_context(function: ast.FunctionDef, file: Path) -> set[str]:
    """Name the parts of the context that a function takes; what is typed in `cli` are its words."""
    found = set()
    for argument in (*function.args.args, *function.args.kwonlyargs):
        type_ = ast.unparse(argument.annotation) if argument.annotation else ""
        found |= {type_.removesuffix(" | None")} & IN_THE_CONTEXT
        if _layer(file) != "cli":
            found |= {f"{argument.arg}: {type_}"} & {"now: datetime", "words: str"}
            found |= {argument.arg} & {"zone"}
    return found


def test_libraries_of_others_are_loaded_by_the_layers_they_are_for():
    wrong = [
        str(each)
        for each in _imports()
        if each.library
        and not each.annotates
        and each.library not in MAY_LOAD.get(each.layer, set())
    ]
    assert wrong == []


def test_the_core_reaches_nothing_outside_itself():
    core = [each for each in _imports() if each.layer == "core"]
    assert core
    wrong = [
        str(each)
        for each in core
        if each.library not in {"", "msgspec"} or each.module.split(".")[0] in REACHES_OUT
    ]
    assert wrong == []


def test_the_core_opens_and_prints_nothing():
    wrong = [
        f"{file.relative_to(PACKAGE)}:{node.lineno} calls {node.func.id}"
        for file in MODULES
        if _layer(file) == "core"
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in {"open", "print", "input", "exec", "eval", "__import__"}
    ]
    assert wrong == []


def test_only_the_command_line_prints():
    wrong = [
        f"{file.relative_to(PACKAGE)}:{node.lineno}"
        for file in MODULES
        if _layer(file) not in {"cli"}
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.Call) and _prints(node.func)
    ]
    assert wrong == []


def _prints(called: ast.expr) -> bool:
    if isinstance(called, ast.Attribute):
        return called.attr == "write" and ast.unparse(called.value) == "sys.stdout"
    return isinstance(called, ast.Name) and called.id == "print"


def test_only_one_module_reads_the_clock():
    wrong = [
        f"{file.relative_to(PACKAGE)}:{node.lineno} {ast.unparse(node.func)}"
        for file in MODULES
        if file.name != "clock.py" or _layer(file) != "clock"
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.Call) and _reads_the_clock(node.func)
    ]
    assert wrong == []


def _reads_the_clock(called: ast.expr) -> bool:
    if not isinstance(called, ast.Attribute) or called.attr not in READS_THE_CLOCK - {"time"}:
        return False
    return ast.unparse(called.value).split(".")[-1] in {"datetime", "date", "time"}


def test_only_two_modules_read_the_environment():
    wrong = {
        str(file.relative_to(PACKAGE))
        for file in MODULES
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.Attribute)
        and node.attr in {"environ", "getenv"}
        and ast.unparse(node.value) == "os"
    }
    # The demo sets the clock and the database of the commands that it walks through.
    assert wrong <= {"clock.py", "paths.py", "cli/commands/shop/demo.py"}


def test_modules_and_functions_are_short():
    lines = {file: len(file.read_text(encoding="utf-8").splitlines()) for file in MODULES}
    assert [str(file) for file, so_many in lines.items() if so_many > LONGEST_MODULE] == []
    long = [
        f"{file.name}, {node.name}: {node.end_lineno - node.lineno + 1} lines"
        for file in MODULES
        for node in nodes_of(tree_of(file))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
        and node.end_lineno is not None
        and node.end_lineno - node.lineno + 1 > LONGEST_FUNCTION
    ]
    assert long == []


# The units themselves, the one place that words a quantity, and what reads a logger's own header.
SPEAKS_OF_UNITS = {"core/measure/units.py", "core/measure/quantities.py", "core/logger/table.py"}
A_UNIT = r"°[CFcf]|Δ°C|m²|ft²|µm|g/L|m²/L|(?:kg|g|ml|L|mm|cm|m|oz|qt)\b"
# An amount that is typed says its own unit: `base:500ml`.
AS_TYPED = re.compile(r"\w:\d+(?:ml|L|g)\b")
WITH_A_NUMBER, AFTER_A_VALUE = re.compile(rf"\d ?(?:{A_UNIT})"), re.compile(rf"\s?(?:{A_UNIT})")


def test_below_the_edge_no_sentence_says_a_unit():
    """A quantity is carried in SI (`core/measure/quantities`): each shop reads its own units."""
    wrong = [
        f"{file.relative_to(PACKAGE)}:{line}"
        for file in MODULES
        if _layer(file) in {"core", "acts", "asks"}
        and str(file.relative_to(PACKAGE)) not in SPEAKS_OF_UNITS
        for line in _says_a_unit(tree_of(file))
    ]
    assert wrong == []


@pytest.mark.parametrize(
    "line", ['f"{t:.1f} °C is cold"', '"about 21 °C"', 'f"{laid:.0f} µm wet"', 'f"{a:.3g} ml, {b}"']
)
def test_a_unit_in_a_sentence_is_seen(line):
    assert list(_says_a_unit(ast.parse(f"said = {line}"))) == [1]


@pytest.mark.parametrize("line", ['f"{celsius(t)} is cold"', 'f"{n} members"'])
def test_a_quantity_that_is_carried_is_none(line):
    assert list(_says_a_unit(ast.parse(f"said = {line}"))) == []


def _says_a_unit(tree: ast.Module) -> Iterator[int]:
    """Yield the lines where a string has a unit behind a number, or behind a value in it."""
    silent = {
        id(each)
        for node in nodes_of(tree)
        for each in ast.walk(_unprinted(node) or ast.Constant(""))
    }
    for node in nodes_of(tree):
        if isinstance(node, ast.JoinedStr) and id(node) not in silent:
            pairs = [(a, b) for a, b in pairwise(node.values) if isinstance(a, ast.FormattedValue)]
            words = (b.value for _, b in pairs if isinstance(b, ast.Constant))
            yield from (node.lineno for word in words if AFTER_A_VALUE.match(str(word)))
        said = str(node.value) if isinstance(node, ast.Constant) and id(node) not in silent else ""
        if WITH_A_NUMBER.search(AS_TYPED.sub("", said)):
            yield node.lineno


def _unprinted(node: ast.AST) -> ast.AST | None:
    """Return a docstring, a word of a command, or a value's format: `.3g` is no three grams."""
    if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
        return node.value
    if isinstance(node, ast.Call) and ast.unparse(node.func).startswith("Do."):
        return node
    return node.format_spec if isinstance(node, ast.FormattedValue) else None
