using Dripwright.Engine.Layout;
using Dripwright.Engine.Stands.Checks;

namespace Dripwright.Engine.Scenes;

/// <summary>How far each tube of the stands is used up, in the combination that uses it most.</summary>
/// <remarks>
/// Rows alike are computed once, and of a long row its first modules alone: a tube beyond them is told the figure of the tube in the
/// same place of the last module computed.
/// </remarks>
internal sealed class TubeLoads
{
    private readonly Dictionary<int, Computed> _rows = [];
    private readonly IReadOnlyList<RowLayout> _all;

    public TubeLoads(Plan plan)
    {
        _all = plan.Layout.Rows;
        foreach (var stand in plan.Stand?.Rows ?? [])
        {
            var row = stand.Frame.Row;
            _rows[row.SpecIndex] = new(row.Length, row.Spec.ModuleLength, Worst(stand));
        }
    }

    /// <summary>[-] Of a tube; null where it was not computed or its stand does not stand.</summary>
    public double? Of(StandMember tube)
    {
        var row = _all[tube.Row - 1];
        if (!_rows.TryGetValue(row.SpecIndex, out var known))
        {
            return null;
        }

        var back = new Vector3(-row.OriginX, -row.CentreY, -row.Floor);
        var (start, end) = (tube.From + back, tube.To + back);
        var beyond = Math.Max(start.X, end.X) - known.Length;
        var modules = Math.Max(0, Math.Ceiling((beyond / known.Module) - 1e-6));
        var shift = new Vector3(-modules * known.Module, 0, 0);
        return known.Worst.TryGetValue(Key(start + shift, end + shift), out var used) ? used : null;
    }

    private static Dictionary<(Whole, Whole), double> Worst(RowStand stand)
    {
        var row = stand.Frame.Row;
        var back = new Vector3(-row.OriginX, -row.CentreY, -row.Floor);
        Dictionary<(Whole, Whole), double> worst = [];
        foreach (var use in stand.Cases.SelectMany(c => c.Uses))
        {
            var tube = stand.Frame.Tubes[use.Tube].Member;
            var key = Key(tube.From + back, tube.To + back);
            worst[key] = Math.Max(worst.GetValueOrDefault(key), use.Utilisation);
        }

        return worst;
    }

    private static (Whole From, Whole To) Key(Vector3 from, Vector3 to) => (Whole.Of(from), Whole.Of(to));

    // A place in whole millimetres.
    private readonly record struct Whole(long X, long Y, long Z)
    {
        public static Whole Of(Vector3 at) => new(Millimetres(at.X), Millimetres(at.Y), Millimetres(at.Z));

        private static long Millimetres(double value) => (long)Math.Round(value * 1000);
    }

    private sealed record Computed(double Length, double Module, Dictionary<(Whole, Whole), double> Worst);
}
