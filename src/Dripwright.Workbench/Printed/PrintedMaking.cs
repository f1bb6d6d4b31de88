using Dripwright.Engine;
using Dripwright.Engine.Printed;
using Dripwright.Solids;
using Dripwright.Workbench.Work;

namespace Dripwright.Workbench.Printed;

/// <summary>The printed parts of a rig as a page shows them, made one after the other: their solids take a moment.</summary>
/// <remarks>All members are called from the page's own thread; the making goes on in the background and comes back to it.</remarks>
public sealed class PrintedMaking : IDisposable
{
    private readonly PageWork _work;
    private readonly CancellationTokenSource _stop = new();
    private PrintedParts? _of;
    private string _first = "";

    /// <param name="work">Where the solids are made.</param>
    internal PrintedMaking(PageWork work) => _work = work;

    /// <summary>The parts made so far; those of the plan before it stay until there are more.</summary>
    public IReadOnlyList<ShownPart> Parts { get; private set; } = [];

    /// <summary>Small parts that are of no use for this rig.</summary>
    public IReadOnlyList<SmallPart> Useless { get; private set; } = [];

    /// <summary>Whether this machine has no library that computes solids.</summary>
    public bool CannotBeMade { get; private set; }

    /// <summary>How many there will be.</summary>
    public int Count { get; private set; }

    /// <summary>Makes the parts of a plan, where they are not those made last.</summary>
    /// <param name="plan">The plan, with the strength of its stands: walls are made for what the stand asks of them.</param>
    /// <param name="changed">Told of each part.</param>
    public async Task Make(Plan plan, Action changed)
    {
        if (ReferenceEquals(_of, plan.Printed))
        {
            return;
        }

        var mine = _of = plan.Printed;
        var wanted = Wanted(plan, out var useless);
        (Useless, Count) = (useless, wanted.Count);
        _first = (wanted.Find(one => one.Part.Place is not null).Part ?? wanted.FirstOrDefault().Part)?.Number ?? "";
        List<ShownPart> made = [];
        foreach (var (part, small) in wanted)
        {
            try
            {
                var now = await _work.Run(_ => ShownPart.Of(part, small), _stop.Token);
                // A finer plan of the same text has the same parts: what is being turned stays as it is.
                made.Add(Parts.FirstOrDefault(old => old.IsAs(now)) ?? now);
            }
            catch (OperationCanceledException)
            {
                return;
            }
            catch (SolidsMissingException)
            {
                (Parts, Count, CannotBeMade) = ([], 0, true);
                changed();
                return;
            }

            if (!ReferenceEquals(_of, mine))
            {
                return;
            }

            if (made.Count > Parts.Count)
            {
                Parts = [.. made];
                changed();
            }
        }

        Parts = made;
        changed();
    }

    /// <summary>The part to show: that of a number, or else the first with a place in the stand. Null while it is not made yet.</summary>
    /// <param name="number">Its number; null where none is asked for.</param>
    public ShownPart? Shown(string? number) =>
        Parts.FirstOrDefault(part => part.Number == number)
        ?? (number is null || Parts.Count >= Count ? Parts.FirstOrDefault(part => part.Number == _first) : null)
        ?? (Parts.Count >= Count && Parts.Count > 0 ? Parts[0] : null);

    /// <summary>Makes no more.</summary>
    public void Dispose()
    {
        _stop.Cancel();
        _stop.Dispose();
    }

    // The small parts stand behind those of the stand, also where the rig asks for them.
    private static List<(PrintedPart Part, SmallPart? Small)> Wanted(Plan plan, out IReadOnlyList<SmallPart> useless)
    {
        var small = PrintedParts.Small(plan.Rig, plan.Layout);
        useless = [.. small.Where(one => one.Parts.Count == 0 && !one.Wanted)];
        return
        [
            .. plan
                .Printed.Parts.Where(part => !small.Any(one => one.Kind == part.Design.Kind))
                .Select(part => (part, (SmallPart?)null)),
            .. small.SelectMany(one => one.Parts.Select(part => (part, (SmallPart?)one))),
        ];
    }
}
