"""What the outside checks share: where the things they check were built.

They are started by `cargo xtask test outside`, which says so in the environment.
"""

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
