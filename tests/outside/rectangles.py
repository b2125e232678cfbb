"""Random jobs of rectangles, and how well a general packing library does them: shared by the check and the bench.

`rectpack` is that library, run in every combination of bin, packing and sorting it offers.
"""

import itertools
import json
import multiprocessing
import pathlib
import random
import subprocess

import rectpack

# Random jobs that are compared.
JOBS = 200

BINS = (rectpack.PackingBin.BNF, rectpack.PackingBin.BFF, rectpack.PackingBin.BBF, rectpack.PackingBin.Global)
SORTS = (
    rectpack.SORT_AREA,
    rectpack.SORT_PERI,
    rectpack.SORT_DIFF,
    rectpack.SORT_SSIDE,
    rectpack.SORT_LSIDE,
    rectpack.SORT_RATIO,
    rectpack.SORT_NONE,
)


def packings(guillotine):
    """Its packing algorithms: those that saw, or all."""
    names = [name for name in dir(rectpack) if name.startswith(("Guillotine", "MaxRects", "Skyline"))]
    return [getattr(rectpack, name) for name in names if name.startswith("Guillotine") or not guillotine]


def best(job):
    """The fewest sheets over all its modes; None when no mode places everything."""
    gap = job["rules"]["gap"]
    sheet = job["sheets"][0]
    pieces = [
        (piece["width"] + gap, piece["height"] + gap) for piece in job["pieces"] for _ in range(piece["count"])
    ]
    fewest = None
    modes = itertools.product(BINS, packings(job["rules"]["method"] == "guillotine"), SORTS)
    for bins, packing, sort in modes:
        packer = rectpack.newPacker(
            mode=rectpack.PackingMode.Offline,
            bin_algo=bins,
            pack_algo=packing,
            sort_algo=sort,
            rotation=job["pieces"][0]["turn"],
        )
        for width, height in pieces:
            packer.add_rect(width, height)
        packer.add_bin(sheet["width"] + gap, sheet["height"] + gap, count=len(pieces))
        packer.pack()
        if len(packer.rect_list()) == len(pieces) and (fewest is None or len(packer) < fewest):
            fewest = len(packer)
    return fewest


def random_job(seed):
    """A job of one kind of sheet; whole millimetres, so that both programs see the same numbers."""
    draw = random.Random(seed)
    width, height = draw.choice([(1220, 610), (600, 400), (1000, 600), (500, 500), (2440, 1220)])
    gap = draw.choice([0, 3, 3, 6])
    turn = draw.random() < 0.5
    # Small pieces, large ones, or both; many of few kinds as in kits, or each by itself.
    low, high = draw.choice([(0.1, 0.35), (0.15, 0.6), (0.3, 0.8), (0.1, 0.95)])
    pieces = []
    wanted = draw.randint(8, 45)
    copies = draw.choice([1, 1, 2, 4])
    while sum(piece["count"] for piece in pieces) < wanted:
        w, h = (draw.randint(int(low * side), int(high * side)) for side in (width, height))
        pieces.append({"width": w, "height": h, "count": draw.randint(1, copies), "turn": turn})
    method = draw.choice(["free", "guillotine"])
    return {
        "pieces": pieces,
        "sheets": [{"width": width, "height": height}],
        "rules": {"trim": 0, "gap": gap, "method": method},
    }


def plans(program, jobs):
    """The plans Panelwright makes of jobs."""
    given = "".join(json.dumps(job) + "\n" for job in jobs)
    done = subprocess.run([program, "lay"], input=given, capture_output=True, text=True, check=True)
    return [json.loads(line) for line in done.stdout.splitlines()]


def main():
    """Writes what rectpack needs for each of the jobs, beside this file."""
    with multiprocessing.Pool() as pool:
        results = pool.map(best, map(random_job, range(JOBS)), chunksize=1)
    pathlib.Path(__file__).with_name("rectpack.json").write_text(json.dumps(results) + "\n")


if __name__ == "__main__":
    main()
