"""Our DXF writer against ezdxf: the same contours, written in the same run on one machine.

`bench_dxf.py PROGRAM`: PROGRAM is the built `panelwright-bench`. Prints JSON lines as `cargo xtask bench` reads them;
the budget of ours is a twentieth of what ezdxf takes to write a document it already holds (making the document takes
it longer still, and is told beside).
"""

import io
import json
import pathlib
import subprocess
import sys
import tempfile
import time

import ezdxf

RUNS = 7


def held(path):
    """What a file draws, as plain numbers, and its layers."""
    document = ezdxf.readfile(path)
    entities = []
    for entity in document.modelspace():
        kind, layer = entity.dxftype(), entity.dxf.layer
        if kind == "CIRCLE":
            data = (tuple(entity.dxf.center)[:2], entity.dxf.radius)
        elif kind == "LINE":
            data = (tuple(entity.dxf.start)[:2], tuple(entity.dxf.end)[:2])
        else:
            data = ([tuple(point) for point in entity.get_points("xyb")], entity.closed)
        entities.append((kind, layer, data))
    return entities, [layer.dxf.name for layer in document.layers]


def made(entities, layers):
    """The same as a new document."""
    document = ezdxf.new("R2000")
    for name in layers:
        if name not in document.layers:
            document.layers.add(name)
    space = document.modelspace()
    for kind, layer, data in entities:
        attributes = {"layer": layer}
        if kind == "CIRCLE":
            space.add_circle(*data, dxfattribs=attributes)
        elif kind == "LINE":
            space.add_line(*data, dxfattribs=attributes)
        else:
            space.add_lwpolyline(data[0], format="xyb", close=data[1], dxfattribs=attributes)
    return document


def timed(work):
    """Milliseconds, one for each run."""
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1e3)
    return sorted(times)


def say(name, p50, p95, **more):
    print(json.dumps({"bench": name, "p50_ms": p50, "p95_ms": p95, **more}))


def main():
    with tempfile.TemporaryDirectory() as folder:
        path = pathlib.Path(folder) / "sheet.dxf"
        told = subprocess.run([sys.argv[1], "dxf", str(path)], check=True, capture_output=True, text=True).stdout
        ours = json.loads(told.strip().splitlines()[-1])
        entities, layers = held(path)
        document = made(entities, layers)
        writing = timed(lambda: document.write(io.StringIO()))
        both = timed(lambda: made(entities, layers).write(io.StringIO()))
    middle = RUNS // 2
    count = len(entities)
    say(f"DXF of {count} things", ours["p50_ms"], ours["p95_ms"], budget_ms=writing[middle] / 20)
    say(f"DXF of {count} things, ezdxf writing", writing[middle], writing[-1])
    say(f"DXF of {count} things, ezdxf in all", both[middle], both[-1])
    print(f"ours is {writing[middle] / ours['p50_ms']:.0f} times as fast as ezdxf writing, {both[middle] / ours['p50_ms']:.0f} times as ezdxf in all")


if __name__ == "__main__":
    main()
