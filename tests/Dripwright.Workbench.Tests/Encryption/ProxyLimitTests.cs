using System.Net;
using System.Net.Sockets;
using Dripwright.Workbench.Hosting;
using Dripwright.Workbench.Tests.Browser;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>Behind a trusted proxy each address has its own share of what may be open at once.</summary>
public sealed class ProxyLimitTests
{
    [Fact]
    public async Task Of_one_address_behind_a_proxy_only_so_many_requests_are_open_and_others_are_answered()
    {
        var limit = new AddressLimit([IPNetwork.Parse("10.0.0.1/32")]);
        var end = new TaskCompletionSource();
        var held = Enumerable
            .Range(0, AddressLimit.Most)
            .Select(_ => limit.Pass(From("192.168.1.7"), _ => end.Task))
            .ToList();
        Assert.All(held, one => Assert.False(one.IsCompleted));

        Assert.Equal(StatusCodes.Status429TooManyRequests, await Status("192.168.1.7"));
        // Refused ones do not stay counted.
        Assert.Equal(StatusCodes.Status429TooManyRequests, await Status("192.168.1.7"));
        Assert.Equal(StatusCodes.Status204NoContent, await Status("192.168.1.8"));

        end.SetResult();
        await Task.WhenAll(held);
        Assert.Equal(StatusCodes.Status204NoContent, await Status("192.168.1.7"));

        async Task<int> Status(string address)
        {
            var context = From(address);
            await limit.Pass(
                context,
                answered =>
                {
                    answered.Response.StatusCode = StatusCodes.Status204NoContent;
                    return Task.CompletedTask;
                }
            );
            return context.Response.StatusCode;
        }
    }

    [Fact]
    public async Task A_proxy_holds_more_connections_than_an_address_may()
    {
        await using var bench = await Bench.Open(
            network: true,
            withDemo: false,
            with: options => options with { TrustedProxies = [IPNetwork.Parse("127.0.0.1/32")] }
        );
        var place = new Uri(bench.Url);
        List<TcpClient> open = [];
        try
        {
            for (var i = 0; i < AddressLimit.Most; i++)
            {
                var one = new TcpClient();
                open.Add(one);
                await one.ConnectAsync(place.Host, place.Port, TestContext.Current.CancellationToken);
            }

            using var client = new HttpClient();
            using var answer = await client.GetAsync(new Uri(place, "/health"), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        }
        finally
        {
            open.ForEach(one => one.Dispose());
        }
    }

    private static DefaultHttpContext From(string address)
    {
        var context = new DefaultHttpContext();
        context.Connection.RemoteIpAddress = IPAddress.Parse(address);
        return context;
    }
}
