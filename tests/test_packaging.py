"""What is shipped: one version, both folders, the facts. `.ci/run` builds and tries the wheel."""

from __future__ import annotations

import importlib.metadata
import tomllib
from pathlib import Path
from typing import Any

import pytest

import finishlog

ROOT = Path(__file__).parents[1]
PROJECT: dict[str, Any] = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def test_the_version_stands_in_one_place():
    assert PROJECT["project"]["dynamic"] == ["version"]
    assert PROJECT["tool"]["hatch"]["version"]["path"] == "finishlog/__init__.py"
    assert importlib.metadata.version("finishlog") == finishlog.__version__


def test_both_names_of_the_program_start_it():
    assert PROJECT["project"]["scripts"] == {
        "finishlog": "finishlog.__main__:main",
        "fl": "finishlog.__main__:main",
    }


def test_the_wheel_takes_both_folders_along():
    hook = PROJECT["tool"]["hatch"]["build"]["targets"]["wheel"]["hooks"]["custom"]["path"]
    text = (ROOT / hook).read_text(encoding="utf-8")
    for folder, inside in (("migrations", "_migrations"), ("sample_data", "_sample_data")):
        assert f'["{folder}"] = "finishlog/{inside}"' in text
        assert any((ROOT / folder).iterdir())


@pytest.mark.parametrize(
    "file",
    [
        "finishlog/py.typed",
        "migrations/env.py",
        "sample_data/shop.toml",
        "finishlog/facts/data/version.toml",
        "finishlog/facts/compiled.msgpack",
    ],
)
def test_what_the_wheel_must_hold_is_there(file: str):
    assert (ROOT / file).is_file()


def test_the_source_archive_holds_what_the_wheel_is_built_from():
    shipped = PROJECT["tool"]["hatch"]["build"]["targets"]["sdist"]["include"]
    needed = {"/finishlog", "/migrations", "/sample_data", "/tests", "/.build", "/README.md"}
    assert needed <= set(shipped)
    # A folder that is named but not there would be left out in silence.
    assert all((ROOT / name.lstrip("/")).exists() for name in shipped)


def test_every_bound_of_a_dependency_has_an_upper_end():
    open_ended = [
        each
        for each in PROJECT["project"]["dependencies"]
        if "<" not in each and not each.startswith("tzdata")
    ]
    assert open_ended == []


def test_the_parser_is_one_that_starts_quickly():
    import typer

    major, minor = (int(x) for x in typer.__version__.split(".")[:2])
    assert (0, 24) <= (major, minor) < (0, 29)


def test_the_slow_references_run_only_when_asked_for():
    options = PROJECT["tool"]["pytest"]["ini_options"]
    assert "not reference" in " ".join(options["addopts"])
    assert any(marker.startswith("reference:") for marker in options["markers"])
