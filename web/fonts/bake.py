#!/usr/bin/python3
"""Makes the two small font files of the app from the full Inter family (package fonts-inter).

Dear ImGui maps one character to one glyph and knows no OpenType features, so the features we
want are baked into the character map here:
  tnum   figures of one width, so that a column of volts lines up
  zero   slashed zero, unlike O
  cv05   small l with a tail, cv08 capital I with serifs: I, l and 1 differ on a dirty screen
Layout tables and hinting go; what is left is what a page of field figures needs.

Usage: web/fonts/bake.py [FOLDER OF Inter-*.otf]
The made files are committed; run this only to change the set of signs.
"""
import sys
from pathlib import Path

from fontTools import subset
from fontTools.ttLib import TTFont

SOURCE = Path(sys.argv[1] if len(sys.argv) > 1 else "/usr/share/fonts/opentype/inter")
HERE = Path(__file__).resolve().parent
FEATURES = ["tnum", "zero", "cv05", "cv08"]
SIGNS = "ΩΔπµ→←↑↓↔↕↩↪↺↻≤≥≠≈±×÷−–—…′″‘’“”‚„†•√∞∅✓✗⚠▲▼△▽▶◀●○◯◆◇■□☀☼⌫⌦⏎⇧€№™½¼¾⅛⅜⅝⅞"
WANTED = (list(range(0x20, 0x7F)) + list(range(0xA0, 0x149)) + list(range(0x14A, 0x180))
          + [ord(c) for c in SIGNS])
WEIGHTS = {"Medium": "text.otf", "SemiBold": "semibold.otf"}


def bake_features(font):
    """Points the character map at the glyphs that the features would have chosen."""
    gsub = font["GSUB"].table
    for tag in FEATURES:
        record = next(r for r in gsub.FeatureList.FeatureRecord if r.FeatureTag == tag)
        mapping = {}
        for index in record.Feature.LookupListIndex:
            for table in gsub.LookupList.Lookup[index].SubTable:
                table = getattr(table, "ExtSubTable", table)
                mapping.update(getattr(table, "mapping", None) or {})
        for table in font["cmap"].tables:
            for code, glyph in table.cmap.items():
                table.cmap[code] = mapping.get(glyph, glyph)


def level_digits(font):
    """The slashed zero of the family is a hair narrower than its tabular sisters."""
    glyphs = [font.getBestCmap()[ord(c)] for c in "0123456789"]
    width = max(font["hmtx"][g][0] for g in glyphs)
    for glyph in glyphs:
        font["hmtx"][glyph] = (width, font["hmtx"][glyph][1])


def rename(font, weight):
    """A modified font carries a name of its own (the licence's reserved-name rule)."""
    names = {1: f"Branchlight Text {weight}", 2: "Regular", 3: f"Branchlight Text {weight} 1",
             4: f"Branchlight Text {weight}", 6: f"BranchlightText-{weight}"}
    for record in font["name"].names:
        if record.nameID in names:
            record.string = names[record.nameID]
    if "CFF " in font:
        cff = font["CFF "].cff
        cff.fontNames = [names[6]]
        top = cff.topDictIndex[0]
        top.FullName, top.FamilyName = names[4], names[1]


def bake(weight, target):
    font = TTFont(SOURCE / f"Inter-{weight}.otf")
    bake_features(font)
    options = subset.Options()
    options.layout_features = []
    options.hinting = False
    options.desubroutinize = True
    options.notdef_outline = True
    options.name_IDs = [0, 1, 2, 3, 4, 5, 6, 13, 14]
    options.drop_tables += ["GSUB", "GPOS", "GDEF", "BASE", "STAT", "MATH", "DSIG"]
    cutter = subset.Subsetter(options)
    cutter.populate(unicodes=WANTED)
    cutter.subset(font)
    level_digits(font)
    rename(font, weight)
    font["post"].formatType = 3.0
    font["head"].modified = font["head"].created   # same input, same bytes
    font.recalcTimestamp = False
    font.save(HERE / target)

    made = TTFont(HERE / target)
    have = made.getBestCmap()
    missing = "".join(chr(c) for c in WANTED if c not in have)
    widths = {made["hmtx"][have[ord(c)]][0] for c in "0123456789"}
    assert len(widths) == 1, f"digits of {weight} differ in width: {widths}"
    print(f"{target}: {(HERE / target).stat().st_size} bytes, {len(have)} characters, "
          f"not in the family: {missing or 'none'}")


for weight, target in WEIGHTS.items():
    bake(weight, target)
