using Dripwright.Engine.Findings;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Tests.Rigs;

namespace Dripwright.Engine.Tests.Planning;

public sealed class FindingTests
{
    [Fact]
    public void A_sensible_rig_has_nothing_to_stop_or_mend()
    {
        var plan = Plans.From(
            """
            { "rows": [ { "pots": 10, "standHeight": "30 in" } ],
              "feed": { "bypass": "5 %", "siphonBreak": true, "strainer": "strainer-200-mesh" },
              "reservoir": { "tank": "tank-box-50-gal", "lowestLevel": "4 1/2 in", "fill": "70 %" } }
            """
        );
        Assert.All(plan.Findings, f => Assert.True(f.Level == FindingLevel.Note, $"{f.Rule}: {f.What} {f.Value}"));
    }

    [Theory]
    [InlineData("""{ "rows": [ { "pots": 10 } ] }""")]
    [InlineData("""{ "rows": [ { "pots": 20 } ], "feed": { "entry": "middle" } }""")]
    public void A_sensible_small_rig_is_not_called_weak_or_throttled_for_being_small(string rig)
    {
        var plan = Plans.From(rig, 2000);
        Assert.Null(plan.Said("weak-pot-likely"));
        Assert.Null(plan.Said("pump-near-shut-off"));
    }

    /// <summary>For every rule, a rig that breaks it. A rule that no rig can break would be dead.</summary>
    [Theory]
    [InlineData("no-water", """{ "pump": { "shutOffHead": "1 ft", "openFlow": "100 gph" } }""")]
    [InlineData(
        "uniformity-poor",
        """{ "rows": [ { "pots": 6 }, { "pots": 6, "floorLevel": "5 ft" } ], "pump": { "model": "pump-800gph" } }"""
    )]
    [InlineData(
        "uniformity-fair",
        """{ "rows": [ { "pots": 6 }, { "pots": 6, "floorLevel": "24 in" } ], "pump": { "model": "pump-800gph" } }"""
    )]
    [InlineData("valves-missing", """{ "feed": { "valveOpen": "50 %" } }""")]
    [InlineData(
        "reservoir-runs-out",
        """{ "drain": { "into": "catch-tank" }, "reservoir": { "base": "6 ft" }, "pump": { "model": "none" }, "timer": { "mode": "continuous" } }"""
    )]
    [InlineData("water-cold", """{ "reservoir": { "waterTemperature": "48 F" } }""")]
    [InlineData("lowest-over-mark", """{ "reservoir": { "fill": "20 %", "lowestLevel": "5 in" } }""")]
    [InlineData("lines-fill-long", """{ "timer": { "on": "10 s", "off": "2 min" } }""")]
    [InlineData("plants-starve", """{ "timer": { "on": "1 min", "off": "4 h" } }""")]
    [InlineData("plants-thirst", """{ "timer": { "on": "2 min", "off": "45 min" } }""")]
    [InlineData("drain-share-low", """{ "timer": { "on": "3 min", "off": "45 min" } }""")]
    [InlineData(
        "valves-shut",
        """{ "feed": { "inlineValves": true }, "rows": [ { "pots": 4, "planting": [ { "pots": "1-3", "crop": "tomato" }, { "pots": "4", "crop": "tomato", "valveOpen": "0 %" } ] } ] }"""
    )]
    [InlineData(
        "pot-dry",
        """{ "site": { "roomHeight": "20 ft" }, "rows": [ { "pots": 4 }, { "pots": 4, "floorLevel": "9 ft" } ] }"""
    )]
    [InlineData("emitter-under-range", """{ "feed": { "emitter": "drip-pc-1gph" } }""")]
    [InlineData("emitter-over-range", """{ "pump": { "shutOffHead": "250 ft", "openFlow": "500 gph" } }""")]
    [InlineData(
        "pump-near-open-flow",
        """{ "feed": { "bypass": "40 %", "header": { "pipe": "pvc40-1" }, "lineHeight": "-8 in" }, "reservoir": { "fill": "95 %" } }"""
    )]
    [InlineData(
        "pump-off-curve",
        """{ "feed": { "bypass": "100 %", "header": { "pipe": "pvc40-2" }, "lineHeight": "-2 ft" }, "reservoir": { "fill": "95 %" } }"""
    )]
    [InlineData("pump-near-shut-off", """{ "pump": { "model": "pump-1200gph" }, "rows": [ { "pots": 1 } ] }""")]
    [InlineData(
        "velocity-high",
        """{ "rows": [ { "pots": 100, "spacing": "11 in" } ], "feed": { "emitter": "drip-turbulent-2gph" }, "pump": { "model": "pump-booster-15psi" } }"""
    )]
    [InlineData(
        "flush-slow",
        """{ "rows": [ { "pots": 100, "spacing": "11 in" } ], "pump": { "model": "pump-150gph" } }"""
    )]
    [InlineData("weak-pot-likely", """{ "feed": { "emitter": "drip-adjustable-10gph", "emittersPerPot": 1 } }""")]
    [InlineData("emitters-unlike", """{ "feed": { "emitter": "drip-adjustable-10gph" } }""")]
    [InlineData("strainer-coarse", """{ "feed": { "strainer": "mesh-bag-400-um" } }""")]
    [InlineData("strainer-missing", """{ "feed": { "strainer": "none" } }""")]
    [InlineData("one-emitter", """{ "feed": { "emittersPerPot": 1 } }""")]
    [InlineData("empty-pots", """{ "rows": [ { "pots": 6, "planting": [ { "pots": "1-3" } ] } ] }""")]
    [InlineData("tank-siphons", """{ "feed": { "outletHeight": "-3 ft" } }""")]
    [InlineData(
        "low-row-runs-off",
        """{ "feed": { "checkValve": true, "outletHeight": "-6 in" }, "rows": [ { "pots": 30 } ] }"""
    )]
    [InlineData("water-warm", """{ "reservoir": { "waterTemperature": "80 F" } }""")]
    [InlineData(
        "drain-full",
        """{ "rows": [ { "pots": 120 } ], "drain": { "pipe": "pvc40-1/2", "slope": "0 %" }, "feed": { "emitter": "drip-turbulent-2gph" }, "pump": { "model": "pump-booster-15psi" } }"""
    )]
    [InlineData(
        "drain-half-full",
        """{ "rows": [ { "pots": 30 } ], "drain": { "pipe": "pvc40-1/2", "slope": "1 %" }, "feed": { "emitter": "drip-turbulent-1gph" } }"""
    )]
    [InlineData("drain-level", """{ "drain": { "slope": "0.3 %" } }""")]
    [InlineData("drain-steep", """{ "drain": { "slope": "6 %" } }""")]
    [InlineData("drain-under-rim", """{ "rows": [ { "standHeight": "14 in" } ] }""")]
    [InlineData("drain-drowned", """{ "rows": [ { "standHeight": "10 in" } ] }""")]
    [InlineData(
        "pots-pond",
        """{ "rows": [ { "standHeight": "10 in" } ], "drain": { "belowPots": "-2 in", "slope": "0.2 %", "pipe": "pvc40-1/2" }, "reservoir": { "fill": "100 %" } }"""
    )]
    [InlineData(
        "pot-drain-small",
        """{ "feed": { "emitter": "drip-adjustable-10gph", "emittersPerPot": 8 }, "drain": { "outlet": "outlet-1/2" }, "pump": { "shutOffHead": "200 ft", "openFlow": "9000 gph" }, "rows": [ { "pots": 1, "planting": [ { "emitters": 8 } ] } ] }"""
    )]
    [InlineData("drain-unvented", """{ "drain": { "vent": false } }""")]
    [InlineData("drain-narrow", """{ "drain": { "pipe": "pvc40-1" } }""")]
    [InlineData("drain-blocked", "{ }")]
    [InlineData("drain-under-floor", """{ "rows": [ { "standHeight": "2 in" } ] }""")]
    [InlineData("overflow-on-stop", """{ "reservoir": { "fill": "100 %" } }""")]
    [InlineData("freeboard-thin", """{ "reservoir": { "fill": "99 %" } }""")]
    [InlineData("inlet-bare", """{ "reservoir": { "fill": "7 %", "lowestLevel": "0 in" } }""")]
    [InlineData("inlet-cover-thin", """{ "reservoir": { "lowestLevel": "1 in" } }""")]
    [InlineData("days-short", """{ "reservoir": { "daysWanted": "30 d" } }""")]
    [InlineData("runs-dry", "{ }")]
    [InlineData("floor-load", "{ }")]
    [InlineData("floor-load-aloft", """{ "site": { "floor": "balcony" } }""")]
    [InlineData("metal-in-loop", """{ "reservoir": { "material": "galvanised" } }""")]
    [InlineData("metal-in-loop", """{ "feed": { "metal": "brass" } }""")]
    [InlineData("tank-past", """{ "reservoir": { "material": "used" } }""")]
    [InlineData("tank-past", """{ "reservoir": { "material": "other-plastic" } }""")]
    [InlineData("freezes", """{ "site": { "coldest": "20 F" } }""")]
    [InlineData("medium-never-drains", """{ "timer": { "mode": "continuous" } }""")]
    [InlineData("medium-dries", """{ "rows": [ { "medium": "clay" } ], "timer": { "on": "30 min", "off": "6 h" } }""")]
    [InlineData("break-hole-over-rim", """{ "feed": { "siphonBreak": true }, "reservoir": { "fill": "95 %" } }""")]
    [InlineData("break-hole-takes", """{ "feed": { "siphonBreak": true }, "pump": { "model": "pump-250gph" } }""")]
    [InlineData("pressure-over-rating", """{ "pump": { "shutOffHead": "120 ft", "openFlow": "500 gph" } }""")]
    [InlineData("pump-worn", """{ "pump": { "shutOffHead": "4 ft 6 in", "openFlow": "200 gph" } }""")]
    [InlineData(
        "strainer-dirty",
        """{ "feed": { "header": { "pipe": "hose-1/2" }, "emitter": "drip-adjustable-10gph", "emittersPerPot": 3 }, "pump": { "shutOffHead": "6 ft", "openFlow": "800 gph" } }"""
    )]
    [InlineData(
        "pump-past-leaflet",
        """{ "pump": { "curve": [ { "flow": "0 gph", "head": "8 ft" }, { "flow": "5 gph", "head": "7.9 ft" } ] } }"""
    )]
    [InlineData(
        "drain-backs-up",
        """{ "rows": [ { "count": 4, "pots": 20 } ], "drain": { "pipe": "pvc40-1/2", "slope": "0.2 %" }, "reservoir": { "fill": "10 %" }, "feed": { "emitter": "drip-turbulent-2gph" }, "pump": { "model": "pump-1200gph" } }"""
    )]
    [InlineData("lid-missing", """{ "reservoir": { "lid": false } }""")]
    [InlineData("tank-volume", """{ "reservoir": { "volume": "20 gal" } }""")]
    [InlineData("hole-on-joint", """{ "rows": [ { "pots": 10, "moduleLength": "29 1/2 in" } ] }""")]
    [InlineData("aisle-narrow", """{ "rows": [ { "aisle": "12 in" } ] }""")]
    [InlineData("room-short", """{ "site": { "roomLength": "8 ft" } }""")]
    [InlineData("room-narrow", """{ "site": { "roomWidth": "3 ft" } }""")]
    [InlineData("room-low", """{ "site": { "roomHeight": "3 ft" }, "rows": [ { "standHeight": "30 in" } ] }""")]
    [InlineData("pots-collide", """{ "rows": [ { "spacing": "6 in" } ] }""")]
    [InlineData("row-short", """{ "rows": [ { "modules": 1 } ] }""")]
    [InlineData("tank-in-stand", """{ "reservoir": { "gap": "-4 ft", "tank": "tank-drum-55-gal" } }""")]
    [InlineData(
        "fittings-crowd",
        """{ "rows": [ { "pots": 1, "moduleLength": "10 in" } ], "feed": { "entry": "middle", "line": "pvc40-1" }, "drain": { "exit": "middle", "pipe": "pvc40-3" } }"""
    )]
    [InlineData("stand-narrow", """{ "rows": [ { "arrangement": "staggered" } ], "stand": { "depth": "10 in" } }""")]
    [InlineData(
        "line-unprimed",
        """{ "feed": { "lineHeight": "5 ft", "outletHeight": "-5 ft" }, "pump": { "shutOffHead": "6 ft", "openFlow": "300 gph" } }"""
    )]
    [InlineData(
        "wire-overloaded",
        """{ "cropWire": { "wire": "wire-12.5ga-soft", "supports": "10 ft", "tightened": "200 lbf" } }"""
    )]
    [InlineData("hook-pulls-out", """{ "cropWire": { "wire": "rope-1/8in", "hookThread": "1/2 in" } }""")]
    [InlineData("hook-pulls-out", """{ "cropWire": { "wire": "rope-1/8in", "ends": "hook" } }""")]
    [InlineData("wire-over-room", """{ "cropWire": { "wire": "rope-1/8in", "height": "9 ft" } }""")]
    [InlineData("wire-under-pots", """{ "cropWire": { "wire": "rope-1/8in", "height": "2 1/2 ft" } }""")]
    [InlineData(
        "wire-sags",
        """{ "cropWire": { "wire": "rope-1/8in", "supports": "10 ft", "tightened": "1 lbf", "plantMass": "100 lb" } }"""
    )]
    [InlineData("lamps-close", """{ "cropWire": { "wire": "rope-1/8in", "lamps": "7 1/2 ft" } }""")]
    [InlineData("wire-low", """{ "cropWire": { "wire": "rope-1/8in", "height": "6 ft" } }""")]
    [InlineData("wire-pull", """{ "cropWire": { "wire": "rope-1/8in" } }""")]
    [InlineData("water-unknown", """{ "nutrients": { "crop": "tomato", "stage": "young" } }""")]
    [InlineData(
        "water-gap",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "2 meq/L", "calcium": "2 meq/L", "magnesium": "0 mg/L", "sodium": "1.0 meq/L", "chloride": "0.2 meq/L", "sulfate": "0 mg/L as SO4", "potassium": "0 mg/L", "nitrate": "0 mg/L as N" } } }"""
    )]
    [InlineData(
        "water-gap-large",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "2 meq/L", "calcium": "2 meq/L", "magnesium": "0 mg/L", "sodium": "2.5 meq/L", "chloride": "0 meq/L", "sulfate": "0 mg/L as SO4", "potassium": "0 mg/L", "nitrate": "0 mg/L as N" } } }"""
    )]
    [InlineData(
        "water-hardness-split",
        """{ "nutrients": { "crop": "tomato", "water": { "hardness": "200 mg/L as CaCO3", "alkalinity": "3 meq/L" } } }"""
    )]
    [InlineData(
        "water-ec-off",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "2 meq/L", "calcium": "2 meq/L", "magnesium": "0 mg/L", "sodium": "1 meq/L", "chloride": "1 meq/L", "sulfate": "0 mg/L as SO4", "potassium": "0 mg/L", "nitrate": "0 mg/L as N", "conductivity": "0.6 dS/m" } } }"""
    )]
    [InlineData("water-sodium", """{ "nutrients": { "crop": "tomato", "water": { "sodium": "80 mg/L" } } }""")]
    [InlineData("water-chloride", """{ "nutrients": { "crop": "tomato", "water": { "chloride": "180 mg/L" } } }""")]
    [InlineData("water-calcium", """{ "nutrients": { "crop": "tomato", "water": { "calcium": "180 mg/L" } } }""")]
    [InlineData(
        "water-sulfate",
        """{ "nutrients": { "crop": "tomato", "water": { "sulfate": "150 mg/L as SO4" } } }"""
    )]
    [InlineData("water-boron", """{ "nutrients": { "crop": "tomato", "water": { "boron": "0.8 mg/L" } } }""")]
    [InlineData("water-iron", """{ "nutrients": { "crop": "tomato", "water": { "iron": "0.6 mg/L" } } }""")]
    [InlineData("water-manganese", """{ "nutrients": { "crop": "tomato", "water": { "manganese": "0.4 mg/L" } } }""")]
    [InlineData("water-copper", """{ "nutrients": { "crop": "tomato", "water": { "copper": "0.4 mg/L" } } }""")]
    [InlineData(
        "recipe-off",
        """{ "nutrients": { "crop": "tomato", "bags": [ { "n": "4 %", "p2o5": "18 %", "k2o": "38 %" }, { "n": "15.5 %", "ca": "19 %" } ] } }"""
    )]
    [InlineData(
        "recipe-water-off",
        """{ "nutrients": { "crop": "tomato", "water": { "calcium": "160 mg/L", "alkalinity": "5 meq/L" } } }"""
    )]
    [InlineData(
        "recipe-iron-bare",
        """{ "nutrients": { "crop": "tomato", "salts": [ { "salt": "potassium-nitrate" }, { "salt": "iron-sulfate-7h2o" } ] } }"""
    )]
    [InlineData(
        "bag-urea",
        """{ "nutrients": { "crop": "tomato", "bags": [ { "n": "20 %", "ureaN": "10 %", "p2o5": "20 %", "k2o": "20 %" } ] } }"""
    )]
    [InlineData("loop-run-to-waste", """{ "nutrients": { "crop": "tomato", "target": "tomato-drain" } }""")]
    [InlineData("water-zinc", """{ "nutrients": { "crop": "tomato", "water": { "zinc": "0.8 mg/L" } } }""")]
    [InlineData(
        "water-alkalinity",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "4 meq/L", "calcium": "4 meq/L" } } }"""
    )]
    [InlineData("water-ec", """{ "nutrients": { "crop": "tomato", "water": { "conductivity": "0.6 dS/m" } } }""")]
    [InlineData(
        "water-buffer-none",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "0.1 meq/L" } } }"""
    )]
    [InlineData(
        "recipe-unreached",
        """{ "nutrients": { "crop": "tomato", "salts": [ { "salt": "potassium-nitrate" } ] } }"""
    )]
    [InlineData(
        "recipe-trace-unreached",
        """{ "nutrients": { "crop": "tomato", "salts": [ { "salt": "potassium-nitrate" } ] } }"""
    )]
    [InlineData(
        "recipe-water-over",
        """{ "nutrients": { "crop": "tomato", "water": { "calcium": "300 mg/L", "alkalinity": "5 meq/L" } } }"""
    )]
    [InlineData(
        "recipe-ammonium-share",
        """{ "nutrients": { "crop": "tomato", "water": { "ammonium": "120 mg/L as N" } } }"""
    )]
    [InlineData(
        "recipe-sodium",
        """{ "nutrients": { "crop": "tomato", "water": { "sodium": "12 mmol/L", "chloride": "12 mmol/L" } } }"""
    )]
    [InlineData(
        "recipe-no-acid",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "4 meq/L", "calcium": "4 meq/L" } } }"""
    )]
    [InlineData(
        "recipe-acid-overfeeds",
        """{ "nutrients": { "crop": "tomato", "acid": "phosphoric-acid-85", "water": { "alkalinity": "5 meq/L", "calcium": "5 meq/L" } } }"""
    )]
    [InlineData(
        "recipe-chelate-ph",
        """{ "nutrients": { "crop": "tomato", "ph": 6.8, "salts": [ { "salt": "fe-edta-13" }, { "salt": "potassium-nitrate" } ] } }"""
    )]
    [InlineData("coir-raw", """{ "nutrients": { "crop": "tomato", "rawCoir": true } }""")]
    [InlineData("element-poisons", """{ "nutrients": { "crop": "tomato", "wanted": { "copper": "2 mg/L" } } }""")]
    [InlineData(
        "water-salt",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "2.3 meq/L", "sodium": "10760 mg/L", "calcium": "412 mg/L", "magnesium": "1290 mg/L", "potassium": "399 mg/L", "chloride": "19350 mg/L", "sulfate": "2710 mg/L as SO4" } } }"""
    )]
    [InlineData("scale-too-coarse", """{ "nutrients": { "crop": "tomato", "scaleStep": "5 g" } }""")]
    [InlineData("scale-coarse", """{ "nutrients": { "crop": "tomato", "scaleStep": "5 g" } }""")]
    [InlineData("stock-saturated", """{ "nutrients": { "crop": "tomato", "mixing": "cans", "partsOfFeed": 1000 } }""")]
    [InlineData(
        "stock-precipitates",
        """{ "nutrients": { "crop": "tomato", "mixing": "cans", "salts": [ { "salt": "gypsum" }, { "salt": "monopotassium-phosphate" }, { "salt": "magnesium-sulfate-7h2o" }, { "salt": "potassium-nitrate" } ] } }"""
    )]
    [InlineData(
        "stock-neither",
        """{ "nutrients": { "crop": "tomato", "mixing": "cans", "salts": [ { "salt": "gypsum" }, { "salt": "monopotassium-phosphate" }, { "salt": "magnesium-sulfate-7h2o" }, { "salt": "potassium-nitrate" } ] } }"""
    )]
    [InlineData(
        "solubility-guess",
        """{ "nutrients": { "crop": "tomato", "mixing": "cans", "partsOfFeed": 500, "storeTemperature": "100 F" } }"""
    )]
    [InlineData(
        "recipe-ec-unreached",
        """{ "nutrients": { "crop": "tomato", "strength": "0.3 dS/m", "water": { "sodium": "3 mmol/L", "chloride": "3 mmol/L" } } }"""
    )]
    [InlineData(
        "recipe-ph-off",
        """{ "nutrients": { "crop": "tomato", "water": { "alkalinity": "4 meq/L", "calcium": "4 meq/L" } } }"""
    )]
    [InlineData(
        "loop-sodium",
        """{ "rows": [ { "pots": 10 } ], "nutrients": { "crop": "tomato", "water": { "sodium": "3 mmol/L", "chloride": "3 mmol/L" } } }"""
    )]
    [InlineData("stand-falls", """{ "stand": { "bracing": "none", "extraFrames": 0 } }""")]
    [InlineData("stand-weak", """{ "stand": { "extraFrames": 0 } }""")]
    [InlineData("stand-joint-slips", """{ "stand": { "jointSlip": "2 N" } }""")]
    [InlineData("stand-sags", """{ "stand": { "extraFrames": 0 } }""")]
    [InlineData("drain-pools", """{ "stand": { "extraFrames": 0 }, "drain": { "slope": "0.5 %" } }""")]
    [InlineData("stand-tips", """{ "rows": [ { "standHeight": "5 ft" } ] }""")]
    [InlineData("foot-lifts", """{ "rows": [ { "pots": 1 } ] }""")]
    [InlineData(
        "stand-walks",
        """{ "rows": [ { "pots": 1, "standHeight": "36 in" } ], "stand": { "floor": "wet-tile" } }"""
    )]
    [InlineData("feet-slip", """{ "rows": [ { "pots": 1, "standHeight": "18 in" } ] }""")]
    [InlineData("stand-too-low", """{ "rows": [ { "standHeight": "1.5 in" } ] }""")]
    [InlineData("cord-short", """{ "site": { "outletDistance": "40 ft" } }""")]
    [InlineData("outlet-low", """{ "site": { "outletHeight": "6 in" } }""")]
    [InlineData("circuit-load", """{ "site": { "otherLoads": "1500 W" } }""")]
    [InlineData("rise-differs", """{ "feed": { "header": { "rise": "9 ft" } } }""")]
    [InlineData("kerf-trap", """{ "rows": [ { "pots": 10, "moduleLength": "25.5 in", "count": 4 } ] }""")]
    [InlineData("parts-short", "{ }")]
    public void Every_rule_speaks_for_a_rig_that_breaks_it(string rule, string rig)
    {
        var plan = Plans.From(rig, rule == "weak-pot-likely" ? 2000 : 0);
        var said = plan.Said(rule);
        Assert.True(said is not null, $"silent; spoke: {string.Join(", ", plan.Findings.Select(f => f.Rule))}");
        var told = said.Told();
        Assert.All(
            (string[])[told.Place, told.What, told.Value, told.Remedy, told.Source],
            text => Assert.False(string.IsNullOrWhiteSpace(text))
        );
        Assert.Equal(s_onlyTold.Contains(rule), told.Limit.Length == 0);
    }

    /// <summary>Rules that tell what will happen: there is nothing to hold it against.</summary>
    private static readonly string[] s_onlyTold = ["drain-blocked", "pot-dry", "runs-dry", "valves-shut", "wire-pull"];

    /// <summary>Rules that need what no rig file can ask for: a solver at its end, a catalogue of the user's own.</summary>
    private static readonly string[] s_outOfReach =
    [
        "feed-unsolved",
        "barb-unclamped",
        "cut-impossible",
        // A chloride limit and one can for all are asked for in code only.
        "recipe-chloride",
        "stock-chelate-acid",
    ];

    [Fact]
    public void No_rule_of_the_book_is_without_a_rig_that_breaks_it()
    {
        string[] shown = [.. BrokenRigs.All.Select(broken => broken.Rule)];
        Assert.Empty(RuleBook.Rules.Keys.Except(shown).Except(s_outOfReach));
        Assert.Empty(shown.Except(RuleBook.Rules.Keys));
    }

    [Fact]
    public void Every_rule_names_its_source()
    {
        Assert.All(RuleBook.Rules.Values, r => Assert.False(string.IsNullOrWhiteSpace(r.Source)));
    }

    [Fact]
    public void Every_finding_points_to_a_field_of_the_rig_file()
    {
        RigGen.Rigs.Holds(
            rig =>
            {
                foreach (var finding in Plans.Of(rig).Findings)
                {
                    var field = finding.Field.Split('.')[^1].Split('[')[0];
                    var known = typeof(Rig)
                        .Assembly.GetTypes()
                        .Where(t => t.Namespace == "Dripwright.Engine.Rigs")
                        .SelectMany(t => t.GetProperties())
                        .Any(p => p.Name.Equals(field, StringComparison.OrdinalIgnoreCase));
                    Assert.True(known, $"{finding.Rule} points to {finding.Field}");
                }
            },
            iter: 20
        );
    }
}
