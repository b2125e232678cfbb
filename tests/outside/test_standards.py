"""Where the holes and openings of a made case lie, against the figures of the standards.

The numbers are written down here again from the documents named beside them, in their own units; nothing is read from
the program's tables. Positions are turned from the panels' frames to the case and from there to the document's frame.
"""

import json
import math

import pytest
from shapely.geometry import box

import flat

INCH = 25.4

# ATX specification 2.2, figure 3: holes from hole A, inches across and forward. B: 3.100, C: 4.900, F: 11.100/0.900 ...
ATX_HOLES = {
    "A": (0.0, 0.0), "B": (3.1, 0.0), "C": (4.9, 0.0), "F": (11.1, 0.9), "G": (0.0, 6.1), "H": (4.9, 6.1),
    "J": (11.1, 6.1), "K": (0.0, 8.95), "L": (4.9, 8.95), "M": (11.1, 8.95),
    # microATX 1.2, section 2.2 and CEM 3.0 figure 9-20: R 0.8 left of B, S under B, on the row of H.
    "R": (2.3, 6.1), "S": (3.1, 6.1),
}
# ATX 2.2 figure 2; microATX 1.2 figure 2; Mini-ITX Addendum 1.1 page 5 (the four holes it shares).
HOLES_OF = {"mini-itx": "CFHJ", "microatx": "BCFHJLMRS", "atx": "ACFGHJKLM"}


def made(panelwright, tmp_path, **choices):
    design = {key.replace("__", "."): value for key, value in choices.items()}
    out = tmp_path / "pack"
    panelwright("make", "-", "--out", out, "--force", given=json.dumps(design))
    return json.loads((out / "build.json").read_text())


def panel(build, name):
    return next(one for one in build["panels"] if one["id"] == name)


def feature(build, wall, name):
    return next(one for one in panel(build, wall)["features"] if one["id"] == name)


def in_case(build, wall, name):
    return flat.to_case(panel(build, wall), *feature(build, wall, name)["centre_mm"])


def bounds_in_case(build, wall, name):
    """Corners of a feature's bounding box in the case frame."""
    one = panel(build, wall)
    x0, y0, x1, y1 = flat.polygon(feature(build, wall, name)["path"]).bounds
    a, b = flat.to_case(one, x0, y0), flat.to_case(one, x1, y1)
    return [min(p, q) for p, q in zip(a, b)], [max(p, q) for p, q in zip(a, b)]


@pytest.mark.parametrize("form", sorted(HOLES_OF))
def test_standoffs_stand_under_the_boards_holes(panelwright, tmp_path, form):
    build = made(panelwright, tmp_path, board__form=form, size__rule="smallest")
    found = {
        one["id"].removeprefix("board-standoff-")
        for one in panel(build, "floor")["features"]
        if one["id"].startswith("board-standoff-")
    }
    assert found == set(HOLES_OF[form]), "only the holes of this board, and all of them"
    origin = in_case(build, "floor", "board-standoff-C")
    for letter in HOLES_OF[form]:
        across, forward = (
            (ATX_HOLES[letter][axis] - ATX_HOLES["C"][axis]) * INCH for axis in range(2)
        )
        at = in_case(build, "floor", f"board-standoff-{letter}")
        # Seen from above with the connectors at the back, the document's x runs to the right and its y to the front.
        assert at[0] - origin[0] == pytest.approx(across, abs=0.01), letter
        assert origin[1] - at[1] == pytest.approx(forward, abs=0.01), letter


@pytest.mark.parametrize("thickness", [3.2, 6.0, 9.0])
def test_the_rear_opening_lies_where_figure_4_puts_it(panelwright, tmp_path, thickness):
    """ATX 2.2 figure 4: 6.250 x 1.750, near edge 5.196 from hole A, 0.088 below the board's underside; wall 0.483."""
    build = made(panelwright, tmp_path, sheet__measured=thickness, size__rule="smallest", board__standoff=20)
    c = in_case(build, "floor", "board-standoff-C")
    low, high = bounds_in_case(build, "back", "io-aperture")
    assert low[0] - c[0] == pytest.approx((5.196 - 4.9) * INCH, abs=0.01)
    assert high[0] - low[0] == pytest.approx(6.25 * INCH, abs=0.01)
    underside = thickness + 20
    assert low[2] == pytest.approx(underside - 0.088 * INCH, abs=0.01)
    assert high[2] - low[2] == pytest.approx(1.75 * INCH, abs=0.01)
    inside_of_back = build["case"]["outside_mm"][1] - thickness
    assert inside_of_back - c[1] == pytest.approx(0.483 * INCH, abs=0.01)


@pytest.mark.parametrize(("slot", "slots"), [(1, 1), (1, 2), (2, 3)])
def test_the_card_window_frees_plug_and_tab(panelwright, tmp_path, slot, slots):
    """CEM 3.0: slot centre 47.29 right of hole B for the first (fig. 9-20), pitch 20.32; least opening 13.25 x 100.71,
    bottom 0.67 below the fingers (fig. 9-22); beyond 4 mm of wall 20.00 wide (fig. 9-24); tab 11.43 out (fig. 9-5)."""
    build = made(
        panelwright, tmp_path,
        board__form="microatx", card__slot=slot, card__slots=slots, size__rule="smallest",
    )
    hole_b = in_case(build, "floor", "board-standoff-B")
    sheet = flat.material(panel(build, "back"))
    board = 6 + 25  # sheet and standoffs: the underside of the board
    fingers = board + 1.57 + 3.40
    for index in range(slots):
        centre = hole_b[0] + 47.29 - 20.32 * (slot - 1 + index)
        face = centre - 1.57 / 2  # component face of the card's board
        middle = face + 0.25 - 13.25 / 2
        window = [
            flat.to_panel(panel(build, "back"), [x, 0, z])[:2]
            for x, z in ((middle - 10.0, fingers - 0.66), (middle + 10.0, fingers - 0.67 + 100.7))
        ]
        (u0, v0), (u1, v1) = window
        free = box(min(u0, u1) + 0.02, v0 + 0.02, max(u0, u1) - 0.02, v1)
        assert sheet.intersection(free).area == pytest.approx(0, abs=0.02), f"slot {slot + index}"
    bracket = next(part for part in build["parts"] if part["id"] == "card-bracket")
    low = min(body[2] for body in bracket["bodies_mm"])
    assert low == pytest.approx(board - 10.19, abs=0.011), "tongue tip"
    outward = max(body[4] for body in bracket["bodies_mm"]) - (build["case"]["outside_mm"][1] - 6)
    assert outward == pytest.approx(59.05 + 11.43 - 46.94 - 12.27, abs=0.02), "tab"


def test_drive_holes_are_those_of_their_standards(panelwright, tmp_path):
    """SFF-8201: 61.72 apart, 14.00 and 90.60 from the connector end. SFF-8301: 95.25 apart, 41.28 and +44.45/+76.20."""
    build = made(
        panelwright, tmp_path,
        size__rule="smallest", drive1__kind="2.5", drive2__kind="3.5", drive2__place="floor",
    )
    for number, across, rows in ((1, 61.72, {76.60}), (2, 95.25, {44.45, 76.20})):
        holes = [
            in_case(build, "floor", one["id"])[:2]
            for one in panel(build, "floor")["features"]
            if one["id"].startswith(f"drive-{number}-hole-")
        ]
        assert len(holes) >= 4
        gaps = {round(math.dist(a, b), 2) for a in holes for b in holes if a != b}
        assert across in {round(gap, 2) for gap in gaps}
        assert rows <= {round(gap, 2) for gap in gaps}, gaps


def test_a_full_size_supply_has_its_four_holes(panelwright, tmp_path):
    """Three public models of the ATX supply agree: (6, 80), (144, 80), (6, 16), (120, 6) on the 150 x 86 face."""
    build = made(panelwright, tmp_path, size__rule="smallest", supply__pose="back-flat")
    holes = [feature(build, "back", f"supply-hole-{number}")["centre_mm"] for number in range(1, 5)]
    expected = [(6, 80), (144, 80), (6, 16), (120, 6)]
    # Seen from behind, lying flat and not turned, the face stands upright: the pattern is only moved.
    for hole, corner in zip(holes, expected):
        assert hole[0] - holes[0][0] == pytest.approx(corner[0] - expected[0][0], abs=0.01)
        assert hole[1] - holes[0][1] == pytest.approx(corner[1] - expected[0][1], abs=0.01)


def test_fans_have_their_published_squares(panelwright, tmp_path):
    """Published fan drawings: 105 for a 120 mm frame, 71.5 for 80 mm."""
    build = made(
        panelwright, tmp_path, size__rule="smallest", fan1__size="120", fan2__size="80", fan2__wall="right",
    )
    for number, wall, spacing in ((1, "back", 105.0), (2, "right", 71.5)):
        holes = [feature(build, wall, f"fan-{number}-hole-{corner}")["centre_mm"] for corner in range(1, 5)]
        sides = sorted(math.dist(a, b) for index, a in enumerate(holes) for b in holes[index + 1 :])
        assert sides[0] == pytest.approx(spacing, abs=0.01) and sides[3] == pytest.approx(spacing, abs=0.01)


def test_clearance_holes_are_of_the_medium_row_of_iso_273(panelwright, tmp_path):
    """ISO 273: M3 fine 3.2, medium 3.4, coarse 3.6; M4 4.3, 4.5, 4.8."""
    rows = {("m3", "fine"): 3.2, ("m3", "medium"): 3.4, ("m3", "coarse"): 3.6, ("m4", "medium"): 4.5}
    for (thread, fit), diameter in rows.items():
        build = made(panelwright, tmp_path, hardware__thread=thread, hardware__fit=fit, size__rule="smallest")
        holes = [
            one for wall in build["panels"] for one in wall["features"]
            if one["purpose"] == "bracket-screw" and one["through"]
        ]
        assert holes and all(hole["diameter_mm"] == diameter for hole in holes), (thread, fit)


def test_unknown_patterns_are_not_drilled(panelwright, tmp_path):
    """No published pattern for SFX supplies (of those retrieved) or 200 mm fans: a note, and no hole."""
    build = made(
        panelwright, tmp_path, size__rule="smallest", supply__kind="sfx", fan1__size="200", fan1__wall="right",
    )
    drilled = [one["id"] for wall in build["panels"] for one in wall["features"]]
    assert not [name for name in drilled if name.startswith(("supply-hole", "fan-1-hole"))]
    notes = [finding["about"] for finding in build["findings"] if finding["severity"] == "note"]
    assert any("supply" in about for about in notes) and any("fan-1" in about for about in notes)
