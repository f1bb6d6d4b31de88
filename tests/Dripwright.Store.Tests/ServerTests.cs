using Dripwright.Store.Ground;

namespace Dripwright.Store.Tests;

public sealed class ServerTests
{
    [Fact]
    public async Task A_server_that_cannot_be_reached_is_told_without_the_password()
    {
        var place = GardenPlace.Server("Host=127.0.0.1;Port=1;Database=yard;Username=jo;Password=secret;Timeout=3");
        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            Garden.OpenAsync(place, stop: TestContext.Current.CancellationToken)
        );
        Assert.Equal(TroubleKind.NoServer, wrong.Kind);
        Assert.Contains("database \"yard\" on 127.0.0.1:1", wrong.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", wrong.Message + place, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_is_copied_with_its_own_tools()
    {
        var place = GardenPlace.Of("host=127.0.0.1;Database=yard");
        Assert.Null(place.Path);
        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            Garden.RestoreAsync(place, "copy", stop: TestContext.Current.CancellationToken)
        );
        Assert.Contains("pg_dump", wrong.Message, StringComparison.Ordinal);
    }
}
