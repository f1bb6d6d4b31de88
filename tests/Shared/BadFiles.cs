namespace Dripwright.Tests;

/// <summary>What a file with faults is.</summary>
internal enum BadFileKind
{
    Rig,
    Brief,
    Catalogue,
}

/// <summary>Files with faults: together they are told nearly every text that a fault can have.</summary>
internal static class BadFiles
{
    /// <summary>Files that are no JSON, or not what they should be.</summary>
    private static readonly string[] s_broken =
    [
        "",
        "// nothing but a remark",
        "[1]",
        "{ \"name\": \"x\"\n  \"notes\": \"y\" }",
        "{ } x",
        "{ \"name\" 3 }",
        "{ \"name\": }",
        "{ 3: 4 }",
        "{ \"rows\": [ } ] }",
        "{ \"rows\": " + new string('[', 40),
        "{ \"name\": \"\\ud800\" }",
        "{ \"$schema\": 3 }",
        "{ \"name\": \"a\", \"name\": \"b\", \"unknown\": 1 }",
        Unknown(1001),
        Unknown(1002),
    ];

    private static readonly string[] s_rigs =
    [
        """{ "format": 9 }""",
        """{ "name": "a\u0007b", "notes": "a\u0000\nb", "nutrition": {} }""",
        """{ "name": 7, "units": "Metric", "rows": {}, "pump": [], "feed": null }""",
        """{ "rows": [] }""",
        """{ "rows": [7, { "pots": 0, "spacing": "1 in" }, { "pots": 2.5, "spacing": 6 }] }""",
        """{ "rows": [{ "pots": 3000, "count": 2 }] }""",
        """{ "rows": [{ "pots": 5000, "spacing": "10 ft", "moduleLength": "1 ft" }] }""",
        """{ "rows": [{ "planting": [{ "pots": "9-12" }, { "pots": "x" }, { "pots": "1, 1" }] }] }""",
        """{ "rows": [{ "planting": [{ "pots": "1-4" }, { "pots": "4-6" }] }] }""",
        """{ "rows": [{ "spacing": "1,000 cm" }, { "spacing": "1,0,0 cm" }, { "spacing": "3 in 2 ft" }] }""",
        """{ "rows": [{ "spacing": "12" }, { "spacing": "79228162514264337593543950335 ft 1 in" }, { "spacing": "1 foots" }] }""",
        "{ \"rows\": [{ \"spacing\": \"" + new string('1', 101) + " in\" }, { \"spacing\": null }] }",
        """{ "rows": [{ "medium": "x" }] }""",
        """{ "feed": { "microtubeLength": "1e-90 m", "line": "hose-9", "strainer": "x", "emitter": "y" } }""",
        """{ "drain": { "slope": "steep", "vent": "true", "outlet": "x", "pipe": "y" } }""",
        """{ "site": { "voltage": "a", "frequency": "b", "roomLength": "c" } }""",
        """{ "reservoir": { "tank": "x", "volume": "much", "usePerPlant": "a little" } }""",
        """{ "reservoir": { "lowestLevel": "15 ft" } }""",
        """{ "reservoir": { "shape": "upright", "length": "2 ft", "width": "3 ft" } }""",
        """{ "reservoir": { "shape": "upright" } }""",
        """{ "reservoir": { "shape": "lying", "height": "2 ft", "width": "3 ft" } }""",
        """{ "reservoir": { "shape": "lying" } }""",
        """{ "pump": { "model": "x", "shutOffHead": "9 ft" } }""",
        """{ "pump": { "shutOffHead": "9 ft" } }""",
        """{ "pump": { "curve": [] } }""",
        """{ "pump": { "curve": [{ "flow": "0 gph", "head": "9 ft" }] } }""",
        """{ "pump": { "curve": [{ "flow": "1 gph", "head": "9 ft" }, { "flow": "1 gph", "head": "9 ft" }] } }""",
        """{ "pump": { "curve": [{ "flow": "fast", "head": "9 ft" }, {}] } }""",
        """{ "pump": { "shutOffHead": "9 ft", "openFlow": "99 gph", "curve": [{}] } }""",
        """{ "pump": { "model": "none", "shutOffHead": "9 ft", "openFlow": "99 gph" } }""",
        """{ "timer": { "on": "soon" }, "cropWire": { "wire": "x", "plantMass": "heavy" } }""",
        """{ "stand": { "tube": "x" }, "rows": [{ "pot": "pot-squar-3-gal" }] }""",
        """{ "onHand": [{ "part": "pvc40-1-1/2" }] }""",
        """{ "onHand": [{ "count": 2 }, { "part": "x" }] }""",
        """{ "nutrients": { "crop": "eggplant" } }""",
        """{ "nutrients": { "crop": "tomato", "bags": [{ "name": "a", "n": "5 %", "nitrateN": "6 %" }, { "name": "b", "ca": "9 %", "cao": "9 %" }] } }""",
        """{ "nutrients": { "crop": "tomato", "bags": [{ "name": "c", "k2o": "70 %", "p2o5": "60 %" }, { "name": "d" }] } }""",
        """{ "nutrients": { "crop": "x", "target": "y", "acid": "z", "ph": 12, "strength": "1200 ppm" } }""",
        """{ "nutrients": { "crop": "tomato", "salts": [{ "salt": "x" }, { "salt": "potassium-nitrate", "pricePerKg": "2 $" }] } }""",
        """{ "nutrients": { "crop": "tomato", "salts": [{ "salt": "potassium-nitrate", "pricePerKg": -2 }] } }""",
        """{ "nutrients": { "crop": "tomato", "wanted": { "calcium": "9 mol/L", "potassium": "9000 mmol/L", "nitrate": "9" } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "x", "hardness": "y", "sulfate": "20 mg/L", "calcium": "1,000 mg/L" } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "calcium": "-2 mmol/L", "magnesium": "9000 mmol/L", "ph": 2.5 } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "3 meq/L", "ph": 3.5 } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "4 meq/L", "hardness": "0.2 mmol/L", "sodium": "0.3 mmol/L" } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "hardness": "1 mmol/L", "calcium": "3 mmol/L", "magnesium": "1 mmol/L" } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "4 meq/L", "calcium": "80 mg/L", "magnesium": "15 mg/L", "sodium": "12 mg/L", "potassium": "3 mg/L", "chloride": "22 mg/L", "sulfate": "70 mg/L as SO4", "nitrate": "10 mg/L as NO3", "conductivity": "4 dS/m" } } }""",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "4 meq/L", "calcium": "80 mg/L", "magnesium": "15 mg/L", "sodium": "12 mg/L", "potassium": "3 mg/L", "chloride": "22 mg/L", "sulfate": "70 mg/L as SO4", "nitrate": "10 mg/L as NO3", "conductivity": "0.1 dS/m" } } }""",
    ];

    private static readonly string[] s_briefs =
    [
        "[]",
        """{ "crop": [] }""",
        """{ "crops": [{ "plants": 12000 }] }""",
        """{ "crops": [{ "plants": 0 }], "onHand": [{ "part": "hose-1/2" }] }""",
        """{ "onHand": [{ "part": "hose-1/2" }] }""",
        """{ "site": { "roomLength": "2000 ft" } }""",
    ];

    private const string Salt = """ "key": "a", "name": "a", "kind": "salt", "source": "s" """;

    private static readonly string[] s_catalogues =
    [
        "[]",
        """{ "format": 2, "currency": "euro" }""",
        """{ "currency": "eur" }""",
        """{ "pumps": [{ "key": "pump-400gph" }, { "key": "pump-400gph" }] }""",
        """{ "pumps": [{ "key": "pvc40-1", "basedOn": "pump-400gph" }, { "key": "b", "basedOn": "x" }, { "key": "new" }] }""",
        """{ "pumps": [{ "key": "a", "basedOn": "pump-400gph", "power": "much", "cord": "long" }] }""",
        """{ "pumps": [{ "key": "pump-400gph", "curve": [{ "flow": "0 gph", "head": "3 ft" }, { "flow": "9 gph", "head": "4 ft" }] }] }""",
        """{ "pipes": [{ "key": "Big Pipe", "basedOn": "pvc40-1" }, { "key": "b", "basedOn": "pvc40-1", "insideDiameter": "2 in" }] }""",
        """{ "tubes": [{ "key": "emt-1", "wall": "1 in" }, { "key": "b", "basedOn": "emt-1", "stockLengths": ["20 ft", "10 ft"] }] }""",
        """{ "fittings": [{ "key": "a", "basedOn": "pvc40-1/2-elbow-90", "clamps": 2 }, { "key": "b", "basedOn": "pvc40-1/2-elbow-90", "lossBranch": 2 }] }""",
        """{ "pots": [{ "key": "pot-square-3-gal", "volume": "9 gal" }, { "key": "c", "basedOn": "pot-square-3-gal", "mass": "x" }, { "key": "b", "basedOn": "pot-square-3-gal", "drainHeight": "20 in" }] }""",
        """{ "pots": [{ "key": "a", "basedOn": "pot-square-3-gal", "round": true, "length": "12 in" }] }""",
        """{ "tanks": [{ "key": "tank-drum-55-gal", "width": "20 in" }, { "key": "b", "basedOn": "tank-drum-55-gal", "shape": "lying", "height": "20 in", "width": "30 in" }] }""",
        """{ "emitters": [{ "key": "drip-pc-1gph", "pieces": ["barb-1"], "minPressure": "x" }, { "key": "b", "basedOn": "drip-pc-1gph", "minPressure": "60 psi" }] }""",
        """{ "emitters": [{ "key": "b", "basedOn": "drip-turbulent-1gph", "exponent": 0.1 }] }""",
        """{ "outlets": [{ "key": "outlet-3/4", "potHole": "0.1 in", "pipeHole": "0.1 in" }] }""",
        """{ "sundries": [{ "key": "clamp-1/2", "section": "attic", "price": "4.99 EUR" }] }""",
        """{ "crops": [{ "key": "tomato", "areaLoad": "0 Pa" }, { "key": "lettuce", "areaLoad": "9 Pa" }] }""",
        """{ "crops": [{ "key": "lettuce", "loopTarget": "x" }] }""",
        """{ "stages": [{ "crop": "x", "target": "y" }] }""",
        $$"""{ "salts": [{ {{Salt}} }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "Xy2" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "Ca(NO3" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "Ca\ud83d\ude00" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "SO4--" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "Ca99999" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "(Ca9999)9999" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "(((((((((Ca)))))))))" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "CO(NH2)2" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "H3PO3" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "Na2S" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "CaC2" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "HgCl2" }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "KNO3", "phFrom": 7 }, { "key": "b", "basedOn": "fe-dtpa-11", "phFrom": 7, "phTo": 3 }] }""",
        $$"""{ "salts": [{ {{Salt}}, "formula": "KNO3", "solubility": [{ "temperature": "20 C", "dissolves": "9 g" }, { "temperature": "10 C", "dissolves": "8 g" }] }] }""",
        $$"""{ "salts": [{ {{Salt}}, "label": { "k2o": 20 }, "solubility": [{ "temperature": "warm", "dissolves": "9 g" }] }] }""",
        $$"""{ "salts": [{ {{Salt}}, "label": { "k2o": 20 }, "solubility": [{ "temperature": "20 C", "dissolves": "9 g" }] }] }""",
        $$"""{ "salts": [{ {{Salt}}, "label": { "p": 5, "p2o5": 9 } }] }""",
        $$"""{ "salts": [{ {{Salt}}, "label": { "p": 60, "k": 60 } }] }""",
        $$"""{ "salts": [{ {{Salt}}, "label": 3, "purity": "all" }] }""",
        """{ "salts": [{ "key": "a", "name": "a", "kind": "acid", "source": "s", "formula": "KNO3" }] }""",
        """{ "targets": [{ "key": "a", "name": "a", "source": "s" }] }""",
        """{ "targets": [{ "key": "a", "name": "a", "source": "s", "milligramsPerLitre": { "n": 9, "nh4": 1 } }] }""",
        """{ "targets": [{ "key": "a", "name": "a", "source": "s", "milligramsPerLitre": { "ca": 9 }, "millimolesPerLitre": { "ca": 1, "mg": -1 } }] }""",
        """{ "targets": [{ "key": "a", "name": "a", "source": "s", "milligramsPerLitre": { "ca": 9 }, "millimolesPerLitre": { "ca": 1 } }] }""",
        """{ "wires": [{ "key": "a", "name": "" }] }""",
    ];

    /// <summary>All files of a kind.</summary>
    public static IEnumerable<string> Of(BadFileKind kind) =>
        s_broken.Concat(
            kind switch
            {
                BadFileKind.Rig => s_rigs,
                BadFileKind.Brief => s_briefs,
                _ => s_catalogues,
            }
        );

    private static string Unknown(int fields) =>
        "{ "
        + string.Join(", ", Enumerable.Range(0, fields).Select(i => FormattableString.Invariant($"\"r{i}\": 1")))
        + " }";
}
