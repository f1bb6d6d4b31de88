using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Hosting;

/// <summary>Chooses the garden of each request, before anything asks for it.</summary>
internal sealed class ChooseGarden(RequestDelegate next, IGardens gardens)
{
    public Task Invoke(HttpContext context, GardenOfRequest here)
    {
        if (gardens.Of(context) is { } garden)
        {
            here.Choose(garden);
            return next(context);
        }

        context.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    }
}
