using Dripwright.Store;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;

namespace Dripwright.Workbench.Household;

/// <summary>Who may do what: the one table. Doors, pages, the garden's hands and the handbook's page of roles follow from it.</summary>
/// <remarks>An address that does not stand here is closed to everybody who must sign in.</remarks>
internal static class Access
{
    private const string Api = "/api/v1";

    /// <summary>What each right lets do, and which roles have it.</summary>
    private static readonly Dictionary<Right, Role[]> s_roles = new()
    {
        [Right.Open] = [Role.Visitor, Role.Helper, Role.Grower, Role.Owner],
        [Right.Self] = [Role.Visitor, Role.Helper, Role.Grower, Role.Owner],
        [Right.Look] = [Role.Visitor, Role.Helper, Role.Grower, Role.Owner],
        [Right.Help] = [Role.Helper, Role.Grower, Role.Owner],
        [Right.Edit] = [Role.Grower, Role.Owner],
        [Right.Rule] = [Role.Owner],
    };

    /// <summary>Every address with the right that it takes: the method, and the address as it is mapped.</summary>
    public static IReadOnlyDictionary<string, Right> Addresses { get; } =
        All()
            .SelectMany(group => group.Addresses.Select(address => (address, group.Right)))
            .ToDictionary(pair => pair.address, pair => pair.Right, StringComparer.OrdinalIgnoreCase);

    // What the page for signing in itself needs: scripts, styles and pictures, nothing of the garden.
    private static readonly string[] s_open = ["/styles", "/_content", "/_framework"];

    /// <summary>Whether a role has a right.</summary>
    public static bool Has(Role role, Right right) => s_roles[right].Contains(role);

    /// <summary>The right that an act on the garden takes.</summary>
    public static Right Of(GardenAct act) =>
        act switch
        {
            GardenAct.Count or GardenAct.Suggest => Right.Help,
            GardenAct.Edit or GardenAct.TakeAway => Right.Edit,
            _ => Right.Rule,
        };

    /// <summary>The right that a request takes; null where its address stands nowhere.</summary>
    public static Right? Of(HttpContext context)
    {
        return IsOpen(context.Request.Path) ? Right.Open
            : context.GetEndpoint() is RouteEndpoint endpoint ? Of(endpoint, context.Request.Method)
            : null;
    }

    /// <summary>The right that a mapped address takes; null where it stands nowhere. Scripts, styles and pictures hold nothing of the garden.</summary>
    public static Right? Of(RouteEndpoint endpoint, string method) =>
        endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is not null ? Right.Open
        : endpoint.RoutePattern.RawText is { } pattern ? Of(MethodOf(endpoint, method), pattern)
        : null;

    /// <summary>The right that an address takes; null where it stands nowhere.</summary>
    /// <param name="method">The method.</param>
    /// <param name="pattern">The address as it is mapped.</param>
    public static Right? Of(string method, string pattern)
    {
        var address = "/" + pattern.Trim('/');
        return IsOpen(address) ? Right.Open
            : Addresses.TryGetValue($"{(method == "HEAD" ? "GET" : method)} {address}", out var right) ? right
            : null;
    }

    // A page takes what is sent to it as a form too, and does no more with it.
    private static string MethodOf(Endpoint endpoint, string method) =>
        endpoint.Metadata.GetMetadata<Microsoft.AspNetCore.Components.Endpoints.ComponentTypeMetadata>() is null
            ? method
            : HttpMethods.Get;

    private static bool IsOpen(PathString path) =>
        s_open.Any(open => path.StartsWithSegments(open, StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<(Right Right, string[] Addresses)> All()
    {
        yield return (
            Right.Open,
            [
                "GET /sign-in",
                "POST /sign-in/enter",
                "POST /sign-in/join",
                "POST /sign-in/token",
                "GET /not-there",
                "GET /health",
                // The public part of the certificate, for phones that do not trust it yet.
                "GET /certificate",
                "GET /certificate/authority.crt",
            ]
        );
        yield return (
            Right.Self,
            [
                "GET /not-allowed",
                "GET /people",
                "POST /people/leave",
                "POST /people/passphrase",
                "POST /people/sessions/end",
                $"GET {Api}/me",
                $"PUT {Api}/me/passphrase",
                $"GET {Api}/me/sessions",
                $"DELETE {Api}/me/sessions",
                $"DELETE {Api}/me/sessions/{{id}}",
            ]
        );
        yield return (
            Right.Look,
            [
                "GET /",
                "GET /rigs/{Id:int}",
                "GET /rigs/{Id:int}/{Room}",
                "GET /methods",
                "GET /methods/{Name}",
                "GET /downloads/{key}/{name}",
                // Where a file is asked for that is not there.
                "GET /{**path:file}",
                .. Page("/_blazor"),
                "GET /api/{documentName}/openapi.json",
                .. Computed("GET", "/rigs/{id:int}"),
                $"GET {Api}/rigs/{{id:int}}/compare",
                $"GET {Api}/rigs",
                $"GET {Api}/rigs/{{id:int}}",
                $"GET {Api}/rigs/{{id:int}}/steps",
                $"GET {Api}/rigs/{{id:int}}/revisions",
                $"GET {Api}/rigs/{{id:int}}/revisions/{{number:int}}",
                $"GET {Api}/bin",
                $"GET {Api}/catalogue",
                $"GET {Api}/catalogue/all",
                $"GET {Api}/catalogue/revisions",
                $"GET {Api}/on-hand",
                $"GET {Api}/on-hand/revisions",
                $"GET {Api}/schema/rig",
                $"GET {Api}/schema/catalogue",
                $"GET {Api}/schema/brief",
                $"GET {Api}/garden",
            ]
        );
        yield return (
            Right.Help,
            [
                "GET /propose",
                "GET /garden",
                .. Computed("POST", ""),
                $"POST {Api}/suggest",
                $"GET {Api}/start",
                $"PUT {Api}/on-hand",
                $"POST {Api}/on-hand/revisions",
            ]
        );
        yield return (
            Right.Edit,
            [
                $"POST {Api}/rigs",
                $"PUT {Api}/rigs/{{id:int}}",
                $"PATCH {Api}/rigs/{{id:int}}",
                $"DELETE {Api}/rigs/{{id:int}}",
                $"POST {Api}/rigs/{{id:int}}/undo",
                $"POST {Api}/rigs/{{id:int}}/redo",
                $"POST {Api}/rigs/{{id:int}}/steps/{{number:int}}",
                $"POST {Api}/rigs/{{id:int}}/revisions",
                $"POST {Api}/bin/{{id:int}}/restore",
                $"PUT {Api}/catalogue",
                $"POST {Api}/catalogue/revisions",
                $"PATCH {Api}/garden",
                $"GET {Api}/garden/disk",
                $"GET {Api}/garden/export",
                $"POST {Api}/garden/import",
                $"GET {Api}/garden/backup",
                $"GET {Api}/garden/backups",
                $"POST {Api}/garden/backups",
                $"GET {Api}/garden/backups/{{name}}",
            ]
        );
        yield return (
            Right.Rule,
            [
                "POST /people/invite",
                "POST /people/add",
                "POST /people/role",
                "POST /people/passphrase/set",
                "POST /people/remove",
                "POST /people/keys",
                "POST /people/keys/drop",
                $"GET {Api}/people",
                $"POST {Api}/people",
                $"POST {Api}/people/codes",
                $"PATCH {Api}/people/{{id}}",
                $"PUT {Api}/people/{{id}}/passphrase",
                $"DELETE {Api}/people/{{id}}",
                $"DELETE {Api}/people/{{id}}/sessions",
                $"GET {Api}/sessions",
                $"DELETE {Api}/sessions",
                $"DELETE {Api}/sessions/{{id}}",
                $"GET {Api}/keys",
                $"POST {Api}/keys",
                $"DELETE {Api}/keys/{{id}}",
                $"GET {Api}/sign-ins",
                $"DELETE {Api}/bin",
                $"POST {Api}/garden/restore",
            ]
        );
    }

    // What is computed from a rig stands twice: by GET for a rig of the garden, by POST for a file that comes along.
    private static IEnumerable<string> Computed(string method, string rig) =>
        new[]
        {
            "check",
            "plan",
            "summary",
            "plots",
            "plots/{key}.{kind:regex(^(svg|png|csv)$)}",
            "sheets",
            "sheets/{number:int}",
            "pack.pdf",
            "pack.zip",
            "print-parts.zip",
            "mix",
            "adjust-tank",
            "uptake",
            "weeks-ahead",
            "cures",
            "cures/try",
            "make-it-work",
        }.Select(path => $"{method} {Api}{rig}/{path}");

    // The channel of an open page. What passes through it is held to the same rights by the garden's hand.
    private static IEnumerable<string> Page(string channel) =>
        new[] { "", "/negotiate", "/initializers", "/disconnect" }.SelectMany(end =>
            new[] { "GET", "POST", "CONNECT", "DELETE", "OPTIONS" }.Select(method => $"{method} {channel}{end}")
        );
}
