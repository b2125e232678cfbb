"""What the program calls fitting is tried again from build.json alone, by other code.

For a thousand random designs in which nothing blocks: no two solids share space, no part crosses a panel outside its
openings, and the sleeve slides straight off. Plane geometry by shapely; solids are boxes and are compared as such.
"""

import json
import os
import subprocess

import numpy as np
import pytest
from shapely.geometry import box

import flat

# Designs in which nothing blocks that are tried.
WANTED = 1000
# Seeds looked at most, so that a program that blocks everything fails instead of running for ever.
MOST_SEEDS = 6000
# Solids that share less than this only touch: build.json is written to 1e-4 mm, so two roundings may add up.
TOUCH_MM = 5e-4
# The sleeve is pulled this far, mm: beyond any case.
FAR_MM = 2000.0


def shared(a, b):
    """How deep the boxes of two lists go into each other, each with each; negative when they do not."""
    a, b = np.asarray(a, float)[:, None, :], np.asarray(b, float)[None, :, :]
    return (np.minimum(a[..., 3:], b[..., 3:]) - np.maximum(a[..., :3], b[..., :3])).min(axis=-1)


class Sheets:
    """The panels of a build; what is left of one is worked out when something comes near it."""

    def __init__(self, build):
        self.panels = {panel["id"]: panel for panel in build["panels"]}
        self.slabs = {name: sum(map(list, flat.slab(panel)), []) for name, panel in self.panels.items()}
        self.left = {}

    def cut(self, wall, bodies):
        """Which of the boxes cut through sheet."""
        if not len(bodies):
            return []
        near = np.nonzero(shared(bodies, [self.slabs[wall]])[:, 0] > TOUCH_MM)[0]
        return [index for index in near if self.area(wall, bodies[index]) > 0.01]

    def area(self, wall, body):
        """Area of sheet that a box cuts through, mm2."""
        panel = self.panels[wall]
        if wall not in self.left:
            self.left[wall] = flat.material(panel)
        corners = [flat.to_panel(panel, body[:3]), flat.to_panel(panel, body[3:])]
        u, v = zip(*((corner[0], corner[1]) for corner in corners))
        rectangle = box(min(u) + TOUCH_MM, min(v) + TOUCH_MM, max(u) - TOUCH_MM, max(v) - TOUCH_MM)
        return self.left[wall].intersection(rectangle).area


def swept(bodies, direction):
    """Boxes and the way they take when they are pulled off."""
    out = np.array(bodies, float).reshape(-1, 6)
    if direction == "up":
        out[:, 5] += FAR_MM
    else:
        out[:, 1] -= FAR_MM
    return out


def faults(build, direction):
    """Everything wrong with a build, in words."""
    found = []
    solids = [(part["id"], part["carrier"], body) for part in build["parts"] for body in part["bodies_mm"]]
    names = [name for name, _, _ in solids]
    bodies = np.array([body for _, _, body in solids], float)
    depth = shared(bodies, bodies)
    for first, second in zip(*np.nonzero(depth > TOUCH_MM)):
        if first < second and names[first] != names[second]:
            found.append(f"{names[first]} and {names[second]} share {depth[first, second]:.3f} mm")
    sheets = Sheets(build)
    for wall in sheets.panels:
        found += [f"{names[index]} crosses {wall}" for index in sheets.cut(wall, bodies)]
    on_sleeve = [index for index, (_, carrier, _) in enumerate(solids) if carrier == "sleeve"]
    on_chassis = [index for index, (_, carrier, _) in enumerate(solids) if carrier == "chassis"]
    if on_sleeve:
        ways = swept(bodies[on_sleeve], direction)
        for first, second in zip(*np.nonzero(shared(ways, bodies[on_chassis]) > TOUCH_MM)):
            found.append(f"pulled off, {names[on_sleeve[first]]} hits {names[on_chassis[second]]}")
        for wall in ("floor", "back"):
            found += [f"pulled off, {names[on_sleeve[index]]} hits the {wall}" for index in sheets.cut(wall, ways)]
    for wall in ("left", "right", "front", "top"):
        way = swept([sheets.slabs[wall]], direction)
        for index in np.nonzero(shared(way, bodies[on_chassis])[0] > TOUCH_MM)[0]:
            found.append(f"pulled off, the {wall} panel hits {names[on_chassis[index]]}")
        for chassis in ("floor", "back"):
            if shared(way, [sheets.slabs[chassis]])[0, 0] > TOUCH_MM:
                found.append(f"pulled off, the {wall} panel hits the {chassis}")
    return found


def blocked(build):
    return any(finding["severity"] == "blocks" for finding in build["findings"])


def samples(count):
    """Random designs with their builds, read while the program writes them."""
    program = os.environ.get("PANELWRIGHT_BIN")
    assert program, "PANELWRIGHT_BIN names no program: start these checks by `cargo xtask test outside`"
    with subprocess.Popen([program, "samples", "--count", str(count)], stdout=subprocess.PIPE, text=True) as running:
        for line in running.stdout:
            yield json.loads(line)
        running.stdout.close()


def test_a_thousand_random_designs_with_nothing_blocking_really_fit_and_come_apart():
    tried = 0
    wrong = []
    with_sleeve_parts = 0
    seeds = samples(MOST_SEEDS)
    for sample in seeds:
        if blocked(sample["build"]):
            continue
        tried += 1
        with_sleeve_parts += any(part["carrier"] == "sleeve" for part in sample["build"]["parts"])
        direction = sample["design"].get("sleeve.slide", "up")
        for fault in faults(sample["build"], direction)[:3]:
            wrong.append(f"seed {sample['seed']}: {fault}")
        if tried == WANTED:
            break
    seeds.close()
    assert tried == WANTED, f"only {tried} of {MOST_SEEDS} random designs had nothing blocking"
    assert with_sleeve_parts > WANTED / 2
    assert not wrong, "\n".join(wrong[:40])


@pytest.mark.parametrize("change", ["overlap", "cross", "sleeve"])
def test_this_check_sees_what_it_is_for(panelwright, tmp_path, change):
    """A build that is made wrong by hand is caught, so that the check above can fail."""
    panelwright("make", "-", "--out", tmp_path / "pack", given="{}")
    build = json.loads((tmp_path / "pack" / "build.json").read_text())
    assert faults(build, "up") == []
    part = next(part for part in build["parts"] if part["kind"] == "cooler")
    if change == "overlap":
        part["bodies_mm"][0][2] -= 60
    elif change == "cross":
        part["bodies_mm"][0][5] += 20
    else:
        part["bodies_mm"].append([8, 8, 190, 30, 30, 200])
    assert faults(build, "up")
