using System.Net;
using System.Net.Sockets;

namespace Dripwright.Store.Tests.Places;

/// <summary>A line to a server that can be cut and mended.</summary>
internal sealed class Wire : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly List<TcpClient> _ends = [];
    private readonly Lock _turn = new();
    private readonly int _to;
    private readonly Task _taking;
    private bool _isCut;

    public Wire(int to)
    {
        _to = to;
        _listener.Start();
        _taking = Take();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    /// <summary>Cuts every connection, and lets no new one through.</summary>
    public void Cut()
    {
        lock (_turn)
        {
            _isCut = true;
            _ends.ForEach(end => end.Dispose());
            _ends.Clear();
        }
    }

    public void Mend()
    {
        lock (_turn)
        {
            _isCut = false;
        }
    }

    public async ValueTask DisposeAsync()
    {
        Cut();
        _listener.Stop();
        await _taking;
        _listener.Dispose();
    }

    private async Task Take()
    {
        try
        {
            while (true)
            {
                var near = await _listener.AcceptTcpClientAsync();
                var far = new TcpClient();
                await far.ConnectAsync(IPAddress.Loopback, _to);
                lock (_turn)
                {
                    if (_isCut)
                    {
                        near.Dispose();
                        far.Dispose();
                        continue;
                    }

                    _ends.AddRange([near, far]);
                }

                _ = Pass(near, far);
                _ = Pass(far, near);
            }
        }
        catch (Exception wrong) when (wrong is SocketException or ObjectDisposedException)
        {
            // The tests are over.
        }
    }

    private static async Task Pass(TcpClient from, TcpClient to)
    {
        try
        {
            await from.GetStream().CopyToAsync(to.GetStream());
        }
        catch (Exception wrong) when (wrong is IOException or ObjectDisposedException or InvalidOperationException)
        {
            // It was cut.
        }
        finally
        {
            to.Dispose();
        }
    }
}
