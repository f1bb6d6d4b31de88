using Dripwright.Engine.Layout;
using Dripwright.Engine.Printed;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Parts;

/// <summary>Counts printed joints and hangers, their filament, screws, clamps and ties of the stand.</summary>
internal static class StandParts
{
    /// <summary>What the keys of filament begin with.</summary>
    public const string Filament = "filament-";

    /// <summary>Catalogue key of what holds a drain where no hanger can be printed.</summary>
    public const string Strap = "pipe-strap";

    /// <summary>[kg] Filament on a spool.</summary>
    private const double Spool = 1;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout, PrintedParts printed)
    {
        foreach (var joints in printed.Places.GroupBy(p => (Key: p.Joints[0].Part, Use: UseOf(p, printed))))
        {
            // "4 × J1, over the legs of the end frames": as the part itself is numbered.
            string numbers = string.Join(" and ", joints.Select(p => $"{Labels.Of(p.Joints.Count)} × {p.Number}"));
            int count = joints.Sum(p => p.Joints.Count);
            (string key, string? use) = joints.Key;
            if (use is null && key == StandLayout.Hanger)
            {
                tally.Add(
                    Strap,
                    count,
                    $"drain, in place of {numbers}",
                    note: "the printed hanger has no room or is too weak: see the printed parts"
                );
                continue;
            }

            tally.Add(
                key,
                count,
                use is null ? numbers : $"{numbers}, {use}",
                note: use is null ? "cannot be printed as the rig asks: see the printed parts"
                    : key == StandLayout.Hanger ? "print it to fit your tube and pipe"
                    : "print it to fit your tube"
            );
        }

        tally.Add(
            StandLayout.Clamp,
            layout.Stand.Joints.Count(j => j.Part == StandLayout.Clamp),
            $"{StandLayout.ClampNumber}, braces of the stand",
            note: "to fit your tube"
        );

        // A screw at each end of each tube keeps a stand together that is carried about. Common practice.
        // A brace is held by its clamps.
        int pieces = layout.Stand.Members.Count(m => m.Role != MemberRole.Brace);
        tally.Add("joint-screw", 2 * pieces, "one at each end of each stand tube");
        CountSmall(tally, layout, printed);
        int strapped = tally.Of(Strap);
        tally.Add("cable-tie", 2 * (layout.Stand.Hangers.Count - strapped), "drain, two at each frame");
        tally.Add(
            "joint-screw",
            layout.Stand.Hangers.Count(h => h.Mount == HangerMount.Leg),
            strapped > 0 ? "one for each hanger or strap of the drain" : "one for each hanger of the drain"
        );
        tally.Add("cable-tie", 2 * layout.Stand.Joints.Count(j => j.Part == StandPlacement.Clip), "two for each clip");
        AddFilament(tally, rig, printed);
    }

    private static string? UseOf(PrintedJoint place, PrintedParts printed) =>
        printed.Parts.FirstOrDefault(part => part.Place == place)?.Use;

    /// <summary>Small parts, and what holds the feed line: a tie at each line rest, else at each module joint.</summary>
    private static void CountSmall(PartsTally tally, RigLayout layout, PrintedParts printed)
    {
        foreach (PrintedPart part in printed.Parts.Where(part => part is { Place: null, Key: not null }))
        {
            tally.Add(part.Key!, part.Count, $"{part.Number}, {part.Use}", note: "print it");
            if (part.Design.Kind == PrintedKind.ClampBlock)
            {
                // Two screws hold the halves; nut and washers take about 6 mm.
                double least = (2 * part.Design.Box.Size.Z) + 0.006;
                tally.Add(
                    "clamp-screw",
                    2 * part.Count,
                    part.Number,
                    note: $"{Labels.Of((int)Math.Ceiling(1000 * least))} mm long, and as much more as the lid or board is thick"
                );
            }
        }

        ILookup<int, PrintedSpot> rests = printed
            .Parts.Where(part => part.Design.Kind == PrintedKind.LineRest)
            .SelectMany(part => part.Spots)
            .ToLookup(spot => spot.Row);
        foreach (RowLayout row in layout.Rows)
        {
            int rested = rests[row.Number].Count();
            tally.Add("cable-tie", rested, "feed line, one at each line rest");
            tally.Add(
                "cable-tie",
                rested > 0 ? 0 : (row.Modules + 1) * Math.Min(2, row.Feed.Count),
                "feed line, one at each module joint"
            );
        }
    }

    /// <summary>Whole spools for what is not on hand, printed solid.</summary>
    private static void AddFilament(PartsTally tally, Rig rig, PrintedParts printed)
    {
        if (printed.Made is not { } made)
        {
            return;
        }

        var have = rig.OnHand.GroupBy(h => h.Part).ToDictionary(g => g.Key, g => g.Sum(h => h.Count));
        double volume = 0;
        int pieces = 0;
        foreach (PrintedPart part in printed.Parts)
        {
            string? key = part.Key;
            int held = key is null ? 0 : Math.Min(part.Count, have.GetValueOrDefault(key));
            if (held > 0)
            {
                have[key!] -= held;
            }

            volume += (part.Count - held) * part.Design.MostVolume;
            pieces += key is null ? 0 : part.Count - held;
        }

        if (pieces == 0)
        {
            return;
        }

        double mass = (1 + PrintedParts.Waste) * PrintEstimate.Of(volume, made.Plastic, made.Printer).Mass;
        tally.Add(
            $"{Filament}{made.Plastic.Name.ToLowerInvariant()}",
            (int)Math.Ceiling((mass / Spool) - 1e-9),
            "printed parts and the test coupon",
            note: $"{QuantityText.Format(Dimension.Mass, mass, rig.Units)} at most, printed solid, with {Labels.Of((int)(100 * PrintedParts.Waste))} % for skirts and failed prints"
        );
    }
}
