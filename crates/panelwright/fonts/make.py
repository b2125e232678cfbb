"""Makes the small fonts of the project from IBM Plex Sans (npm package @ibm/plex-sans 1.1.0, SIL OFL 1.1).

Usage: python make.py FOLDER_WITH_WOFF2 WEB_FONTS_FOLDER      (needs: pip install fonttools brotli)
       python make.py WEB_FONTS_FOLDER      cuts only the page's fonts, from those already made

Kept: Latin letters of western and central Europe, figures (all 600 units wide), the signs drawings use. Hinting,
kerning and glyph names are dropped, so that the page, the PDF and our own measure of a text agree. The diameter
sign, which the source lacks, is added. The name is changed because "Plex" is a reserved font name.
"""

import sys
from pathlib import Path

from fontTools.misc.roundTools import otRound
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

FAMILY = "Panelwright Sans"
WEIGHTS = {"Regular": ("regular", 400, 72), "SemiBold": ("semibold", 600, 112)}
SIGNS = "–—‘’‚“”„•…→←↑↓≤≥≈−×⌀²³½¼¾·°±µΩ√€✓"
LETTERS = [*range(0x20, 0x7F), *range(0xA0, 0x180)]
# What the page itself writes, and what a maker most likely types besides. Letters with accents and the other signs are
# loaded only when a text has one; `unicode-range` in the style sheet says the same.
PLAIN = [*range(0x20, 0x7F), *map(ord, "\u00a0£°±²³×–—‘’“”…€→−⌀")]


def ring(pen, centre, radius, clockwise):
    """A circle as eight quadratic arcs, TrueType's own curve (off by at most 0.002 of the radius)."""
    from math import cos, pi, sin

    turn = -1 if clockwise else 1
    points = []
    for step in range(8):
        angle = turn * (step * pi / 4 + pi / 8)
        reach = radius / cos(pi / 8)
        points.append((centre[0] + reach * cos(angle), centre[1] + reach * sin(angle)))
    # No on-curve point: TrueType puts one midway between each pair.
    pen.qCurveTo(*[(otRound(x), otRound(y)) for x, y in points], None)
    pen.closePath()


def diameter_sign(stroke):
    """A circle of diameter with a line through it at 60 degrees (ISO 129-1 shows it so)."""
    from math import cos, pi, sin

    pen = TTGlyphPen(None)
    centre, radius, reach = (330, 349), 270, 385
    ring(pen, centre, radius, clockwise=True)
    ring(pen, centre, radius - stroke, clockwise=False)
    along = (cos(pi / 3), sin(pi / 3))
    across = (-along[1] * stroke / 2, along[0] * stroke / 2)
    corners = [(-1, 1), (1, 1), (1, -1), (-1, -1)]
    for index, (end, side) in enumerate(corners):
        point = tuple(otRound(centre[axis] + end * reach * along[axis] + side * across[axis]) for axis in (0, 1))
        (pen.moveTo if index == 0 else pen.lineTo)(point)
    pen.closePath()
    return pen.glyph()


def make(folder, web, style):
    name, weight, stroke = WEIGHTS[style]
    font = TTFont(Path(folder) / f"IBMPlexSans-{style}.woff2")
    options = Options()
    options.hinting = False
    options.layout_features = []
    options.glyph_names = False
    options.notdef_outline = True
    options.name_IDs = [0, 1, 2, 4, 6, 13, 14]
    options.drop_tables += ["GPOS", "GSUB", "GDEF", "gasp"]
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=LETTERS + [ord(sign) for sign in SIGNS])
    subsetter.subset(font)

    order = [*font.getGlyphOrder(), "diameter"]
    font.setGlyphOrder(order)
    glyph = diameter_sign(stroke)
    font["glyf"]["diameter"] = glyph
    glyph.recalcBounds(font["glyf"])
    font["hmtx"]["diameter"] = (660, glyph.xMin)
    for table in font["cmap"].tables:
        table.cmap[0x2300] = "diameter"
    font["post"].formatType = 3.0

    full = f"{FAMILY} {'SemiBold' if weight == 600 else 'Regular'}"
    names = {1: FAMILY if weight == 400 else full, 2: "Regular", 4: full, 6: f"{FAMILY}-{full.split()[-1]}".replace(" ", "")}
    for record in list(font["name"].names):
        if record.nameID in names:
            record.string = names[record.nameID]
    # Nothing in the file may depend on when it was made.
    font["head"].created = font["head"].modified = 3_600_000_000
    font.recalcTimestamp = False
    plain = Path(__file__).parent / f"panelwright-sans-{name}.ttf"
    font.flavor = None
    font.save(plain)
    cut_for_page(web, style)


def cut_for_page(web, style):
    name = WEIGHTS[style][0]
    others = [letter for letter in [*LETTERS, *map(ord, SIGNS)] if letter not in PLAIN]
    for part, letters in {name: PLAIN, f"{name}-accented": others}.items():
        font = TTFont(Path(__file__).parent / f"panelwright-sans-{name}.ttf", recalcTimestamp=False)
        options = Options()
        options.notdef_outline = True
        options.name_IDs = [0, 1, 2, 4, 6, 13, 14]
        subsetter = Subsetter(options)
        subsetter.populate(unicodes=letters)
        subsetter.subset(font)
        font.flavor = "woff2"
        font.save(Path(web) / f"panelwright-sans-{part}.woff2")


if __name__ == "__main__":
    for style in WEIGHTS:
        if len(sys.argv) == 2:
            cut_for_page(sys.argv[1], style)
        else:
            make(sys.argv[1], sys.argv[2], style)
