#!/usr/bin/env python3
"""Makes the two font files of this folder. Needs fonttools; run only to change the set of characters.

usage: make-fonts.py SourceSans3-Regular.ttf SourceSans3-Bold.ttf
"""
import sys
from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

FAMILY = "Dripwright Sans"
TEXT = (
    "".join(map(chr, [*range(0x20, 0x7F), *range(0xA0, 0x180)]))
    + "\u2009\u202f\u2010\u2011–—‘’‚“”„†•…‰′″⁄⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉⅓⅔⅛⅜⅝⅞−≈≠≤≥√∞→←↑↓µμΔπηρΣΩ✓☐☑"
)
SUPERIORS = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹", "zero one two three four five six seven eight nine".split()))
INFERIORS = dict(zip("₀₁₂₃₄₅₆₇₈₉", "zero one two three four five six seven eight nine".split()))

for source, style in zip(sys.argv[1:3], ["Regular", "Bold"]):
    font = TTFont(source, recalcTimestamp=False)
    for table in font["cmap"].tables:
        if not table.isUnicode():
            continue
        # Sixteenths are written as superior + fraction slash + inferior; the numerator and denominator shapes fit
        # the slash and the ready-made fractions, the exponent shapes would stand too high and too low.
        table.cmap.update({ord(c): name + ".n" for c, name in SUPERIORS.items()})
        table.cmap.update({ord(c): name + ".d" for c, name in INFERIORS.items()})
        table.cmap[0x2300] = "Oslash"  # the diameter sign
        if 0x202F not in table.cmap:
            table.cmap[0x202F] = table.cmap[0x2009]
        if 0x2011 not in table.cmap:
            table.cmap[0x2011] = table.cmap[0x2D]
    options = Options()
    # No kerning and no substitutions: then the width of a text is the sum of its characters' widths everywhere.
    options.layout_features = []
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "BASE", "DSIG", "STAT"]
    options.hinting = False
    options.glyph_names = False
    options.notdef_outline = True
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    subsetter = Subsetter(options)
    subsetter.populate(text=TEXT + "\u2300")
    subsetter.subset(font)
    names = {1: FAMILY, 2: style, 3: f"{FAMILY} {style} 1", 4: f"{FAMILY} {style}", 6: f"DripwrightSans-{style}"}
    for record in font["name"].names:
        if record.nameID in names:
            record.string = names[record.nameID]
    font.save(f"DripwrightSans-{style}.ttf")
