using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Dripwright.Workbench.Tests.Browser;

/// <summary>Someone at a page, and what the page's console complained about.</summary>
internal sealed class Visit : IAsyncDisposable
{
    private readonly IBrowserContext _context;

    public Visit(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                Complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => Complaints.Add(error);
    }

    public IPage Page { get; }

    public List<string> Complaints { get; } = [];

    public ILocator Drawing => Page.Locator("#paper svg");

    /// <summary>Another page of the same browser.</summary>
    public async Task<Visit> Beside() => new(_context, await _context.NewPageAsync());

    /// <summary>Opens the first rig of the list in a room.</summary>
    public async Task Rig(string room, int id = 0)
    {
        if (id == 0)
        {
            await Page.GotoAsync("/");
            var address = await Page.Locator("a.rig").Last.GetAttributeAsync("href");
            id = int.Parse(address!.Split('/')[2], System.Globalization.CultureInfo.InvariantCulture);
        }

        await Page.GotoAsync(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"/rigs/{id}/{room}"));
        await Page.Locator(".titleblock").WaitForAsync();
    }

    /// <summary>Ways in which the page shuts people out.</summary>
    public async Task<IReadOnlyList<string>> Axe()
    {
        var found = await Page.RunAxe();
        return
        [
            .. found.Violations.Select(violation =>
                $"{violation.Id} at {string.Join(", ", violation.Nodes.Take(3).Select(node => node.Html))}"
            ),
        ];
    }

    public async ValueTask DisposeAsync() => await _context.CloseAsync();
}
