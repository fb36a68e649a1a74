"""The program's own files, parsed once a run for all tests that read them."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path


@cache
def tree_of(file: Path) -> ast.Module:
    return ast.parse(file.read_text(encoding="utf-8"))


@cache
def nodes_of(node: ast.AST) -> tuple[ast.AST, ...]:
    """Return all that `ast.walk` yields of a module or a function."""
    return tuple(ast.walk(node))
