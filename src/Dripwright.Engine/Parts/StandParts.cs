using Dripwright.Engine.Fittings;
using Dripwright.Engine.Layout;
using Dripwright.Engine.Rigs;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Parts;

/// <summary>Counts printed joints and hangers, their filament, screws, clamps and ties of the stand.</summary>
internal static class StandParts
{
    /// <summary>What the keys of filament begin with.</summary>
    public const string Filament = "filament-";

    /// <summary>[kg] Filament on a spool.</summary>
    private const double Spool = 1;

    public static void Count(PartsTally tally, Rig rig, RigLayout layout, PrintedParts printed)
    {
        foreach (var joints in printed.Places.GroupBy(p => p.Joints[0].Part))
        {
            // "4 × W1, over the legs of the end frames": as the part itself is numbered.
            string numbers = string.Join(" and ", joints.Select(p => $"{Text.Of(p.Joints.Count)} × {p.Number}"));
            string? use = printed.Parts.FirstOrDefault(p => p.Place == joints.First())?.Use;
            tally.Add(
                joints.Key,
                joints.Sum(p => p.Joints.Count),
                use is null ? numbers : $"{numbers}, {use}",
                note: use is null ? "cannot be printed as the rig asks: see the printed parts"
                    : joints.Key == StandLayout.Hanger ? "print it to fit your tube and pipe"
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
        foreach (RowLayout row in layout.Rows)
        {
            tally.Add(
                "cable-tie",
                (row.Modules + 1) * Math.Min(2, row.Feed.Count),
                "feed line, one at each module joint"
            );
        }

        tally.Add("cable-tie", 2 * layout.Stand.Hangers.Count, "drain, two at each frame");
        tally.Add(
            "joint-screw",
            layout.Stand.Hangers.Count(h => h.Mount == HangerMount.Leg),
            "one for each hanger of the drain"
        );
        tally.Add("cable-tie", 2 * layout.Stand.Joints.Count(j => j.Part == StandPlacement.Clip), "two for each clip");
        AddFilament(tally, rig, printed);
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
            string? key = part.Place?.Joints[0].Part;
            int held = key is null ? 0 : Math.Min(part.Count, have.GetValueOrDefault(key));
            if (held > 0)
            {
                have[key!] -= held;
            }

            volume += (part.Count - held) * part.Fitting.MostVolume;
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
            "printed joints, hangers and the test coupon",
            note: $"{QuantityText.Format(Dimension.Mass, mass, rig.Units)} at most, printed solid, with {Text.Of((int)(100 * PrintedParts.Waste))} % for skirts and failed prints"
        );
    }
}
