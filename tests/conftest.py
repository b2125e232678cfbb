"""What the outside checks share: where the things they check were built, and what more than one of them looks at.

They are started by `cargo xtask test outside`, which says so in the environment.
"""

import json
import os
import pathlib
import subprocess

import pytest

ROOT = pathlib.Path(__file__).resolve().parent.parent


@pytest.fixture(scope="session")
def root():
    """The top of the project."""
    return ROOT


@pytest.fixture(scope="session")
def dist():
    """The page as a static host gets it."""
    return pathlib.Path(os.environ.get("PANELWRIGHT_DIST", ROOT / "dist"))


@pytest.fixture(scope="session")
def panelwright():
    """The command line: `panelwright("check", path, code=1)` gives what it printed."""
    program = os.environ.get("PANELWRIGHT_BIN")
    assert program, "PANELWRIGHT_BIN names no program: start these checks by `cargo xtask test outside`"

    def run(*arguments, given=None, code=0):
        done = subprocess.run(
            [program, *map(str, arguments)], input=given, capture_output=True, text=True, check=False
        )
        assert done.returncode == code, f"{arguments}: exit {done.returncode}\n{done.stdout}{done.stderr}"
        return done.stdout

    return run


@pytest.fixture(scope="session")
def packs(root, panelwright, tmp_path_factory):
    """The pack of every example: its folder and its build.json."""
    made = []
    for design in sorted((root / "examples").glob("*.json")):
        folder = tmp_path_factory.mktemp(design.stem)
        panelwright("make", design, "--out", folder, "--force")
        made.append((folder, json.loads((folder / "build.json").read_text())))
    assert len(made) >= 5
    return made


@pytest.fixture(scope="session")
def written(root, tmp_path_factory):
    """`written("cutting")`: a folder with what `crates/panelwright/examples/cutting.rs` writes."""

    def write(example):
        folder = tmp_path_factory.mktemp(example)
        subprocess.run(
            ["cargo", "run", "--quiet", "--package", "panelwright", "--example", example, "--", folder],
            cwd=root,
            check=True,
        )
        return folder

    return write
