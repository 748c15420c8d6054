"""A door's names stay those of what the modules hold, in whatever order modules are imported."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.conftest import ROOT


@pytest.mark.parametrize("name", ["relatedness", "distinctiveness"])
@pytest.mark.parametrize("first", ["module", "door"])
def test_a_module_does_not_take_the_place_of_what_it_holds(name: str, first: str) -> None:
    module, door = f"import namescreen.goods.{name}", f"from namescreen.goods import {name}"
    lines = [module, door] if first == "module" else [door, module]
    program = "\n".join((*lines, f"from namescreen.goods import {name} as again", "assert callable(again)"))
    done = subprocess.run([sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_result_from_another_process_leaves_the_door_as_it_is() -> None:
    program = """
import pickle, subprocess, sys
from namescreen.goods import Relatedness, relatedness
sent = pickle.dumps(relatedness("mugs", "cups"))
code = f"import pickle; pickle.loads({sent!r}); from namescreen.goods import relatedness; relatedness('pots', 'pans')"
subprocess.run([sys.executable, "-c", code], check=True)
"""
    done = subprocess.run([sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
