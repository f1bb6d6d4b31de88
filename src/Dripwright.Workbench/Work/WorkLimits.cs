namespace Dripwright.Workbench.Work;

/// <summary>One kind of work that takes long.</summary>
/// <param name="Name">What it is, for whoever reads the log.</param>
/// <param name="AtOnce">How many of it are done at once.</param>
/// <param name="Waiting">How many of it may wait in each garden's line; who comes then is told to come again.</param>
/// <param name="Longest">What takes longer, waiting included, is given up.</param>
internal sealed record WorkLane(string Name, int AtOnce, int Waiting, TimeSpan Longest);

/// <summary>How much work there may be: all numbers of it stand here.</summary>
/// <remarks>
/// Pages and requests have lanes of their own, so that neither stands behind the other. Within the pages, what somebody
/// waits for while typing never stands behind what may come later; within the requests, a large rig never holds up small ones.
/// </remarks>
internal sealed record WorkLimits
{
    /// <summary>Rigs from so many pots are planned in the lane of large ones.</summary>
    public const int LargeFromPots = 600;

    private static readonly int s_cores = Math.Max(2, Environment.ProcessorCount);

    /// <summary>What somebody waits for while typing: reading and drawing a rig. Five thousand pots take a few seconds.</summary>
    public WorkLane Typing { get; init; } = new("typing", s_cores, 500, TimeSpan.FromSeconds(60));

    /// <summary>What a page shows a little later: the stand, the draws, sheets, printed parts.</summary>
    public WorkLane Pages { get; init; } = new("pages", s_cores, 500, TimeSpan.FromSeconds(60));

    /// <summary>Searches for rigs from a page. One at a time, so that none slows everyone's typing down.</summary>
    public WorkLane PageSearches { get; init; } = new("searches of pages", 1, 50, TimeSpan.FromMinutes(30));

    /// <summary>Rigs planned over HTTP.</summary>
    public WorkLane Requests { get; init; } = new("requests", s_cores, 200, TimeSpan.FromSeconds(30));

    /// <summary>Large rigs planned over HTTP.</summary>
    public WorkLane LargeRequests { get; init; } = new("large requests", 1, 8, TimeSpan.FromSeconds(60));

    /// <summary>Searches for rigs over HTTP, which may take longest.</summary>
    public WorkLane Searches { get; init; } = new("searches", 1, 4, TimeSpan.FromSeconds(90));

    /// <summary>When to come again where the line is full.</summary>
    public TimeSpan RetryAfter { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>All lanes.</summary>
    public IEnumerable<WorkLane> Lanes => [Typing, Pages, PageSearches, Requests, LargeRequests, Searches];
}
