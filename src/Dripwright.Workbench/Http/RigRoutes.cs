using Dripwright.Store.Ground;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Work;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Http;

/// <summary>Addresses of what is computed from a rig. Each is said once and stands twice: for the file that comes with the request, and for a rig of the garden.</summary>
internal sealed class RigRoutes(RouteGroupBuilder api)
{
    /// <summary>Heading of what is computed from a file that comes with the request.</summary>
    public const string GivenTag = "A rig file in, the answer out";

    /// <summary>Heading of what is computed from a rig of the garden.</summary>
    public const string KeptTag = "Computed from a rig of the garden";

    private readonly RouteGroupBuilder _given = api.MapGroup("").WithTags(GivenTag);
    private readonly RouteGroupBuilder _kept = api.MapGroup("/rigs/{id:int}").WithTags(KeptTag);

    /// <summary>Something that is asked without saying more.</summary>
    /// <param name="path">The address, after that of the rig.</param>
    /// <param name="name">Its name in the description; "OfRig" is added for a rig of the garden.</param>
    /// <param name="summary">What it gives.</param>
    /// <param name="answer">Gives it.</param>
    /// <param name="told">What else the description tells of it.</param>
    public void Add(
        string path,
        string name,
        string summary,
        Func<RigQuestion, Task<IResult>> answer,
        Action<RouteHandlerBuilder> told
    ) =>
        Tell(
            _given.MapPost(path, (HttpContext c, RequestWork w, GardenOfRequest h) => answer(new RigQuestion(c, w, h))),
            _kept.MapGet(
                path,
                (HttpContext c, RequestWork w, GardenOfRequest h, int id, int? revision) =>
                    answer(new RigQuestion(c, w, h, id, revision))
            ),
            name,
            summary,
            told
        );

    /// <summary>Something that is asked with more in the address.</summary>
    /// <typeparam name="TMore">What the address says more.</typeparam>
    /// <param name="path">The address, after that of the rig.</param>
    /// <param name="name">Its name in the description; "OfRig" is added for a rig of the garden.</param>
    /// <param name="summary">What it gives.</param>
    /// <param name="answer">Gives it.</param>
    /// <param name="told">What else the description tells of it.</param>
    public void Add<TMore>(
        string path,
        string name,
        string summary,
        Func<RigQuestion, TMore, Task<IResult>> answer,
        Action<RouteHandlerBuilder> told
    )
        where TMore : struct =>
        Tell(
            _given.MapPost(
                path,
                (HttpContext c, RequestWork w, GardenOfRequest h, [AsParameters] TMore more) =>
                    answer(new RigQuestion(c, w, h), more)
            ),
            _kept.MapGet(
                path,
                (HttpContext c, RequestWork w, GardenOfRequest h, int id, int? revision, [AsParameters] TMore more) =>
                    answer(new RigQuestion(c, w, h, id, revision), more)
            ),
            name,
            summary,
            told
        );

    /// <summary>What every address has that takes a file.</summary>
    public static RouteHandlerBuilder Given(RouteHandlerBuilder route, string name) =>
        route.Takes("application/json", Limits.TextBytes).WithName(name).ProducesProblem(422).ProducesProblem(503);

    /// <summary>What every address has that is computed from a rig of the garden.</summary>
    public static RouteHandlerBuilder Kept(RouteHandlerBuilder route, string name) =>
        route.WithName(name).ProducesProblem(404).ProducesProblem(422).ProducesProblem(503);

    private static void Tell(
        RouteHandlerBuilder given,
        RouteHandlerBuilder kept,
        string name,
        string summary,
        Action<RouteHandlerBuilder> told
    )
    {
        told(Given(given, name).WithSummary(summary));
        told(Kept(kept, name + "OfRig").WithSummary(summary));
    }
}
