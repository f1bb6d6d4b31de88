using Dripwright.Workbench.Hosting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Dripwright.Workbench.Files;

/// <summary>Files that a page of a garden makes for its reader to fetch.</summary>
internal sealed class Downloads(WaitingFiles waiting, GardenOfRequest here)
{
    /// <summary>Takes a file in and gives the address at which it can be fetched.</summary>
    public string Add(string name, string type, byte[] bytes) =>
        $"/downloads/{waiting.Add(here.Id, name, type, bytes)}/{Uri.EscapeDataString(name)}";

    /// <summary>Where they are fetched.</summary>
    public static void Map(IEndpointRouteBuilder routes) =>
        routes.MapGet(
            "/downloads/{key}/{name}",
            (string key, WaitingFiles waiting, GardenOfRequest here) =>
                waiting.Find(here.Id, key) is { } file
                    ? Results.File(file.Bytes, file.Type, file.Name)
                    : Results.NotFound()
        );
}
