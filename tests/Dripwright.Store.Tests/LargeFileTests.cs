using Dripwright.Store.Ground;

namespace Dripwright.Store.Tests;

public sealed class LargeFileTests
{
    [Fact]
    public async Task A_file_that_never_ends_is_refused()
    {
        var wrong = await Assert.ThrowsAsync<GardenException>(() =>
            GardenFile.Read(new Endless(), "endless", 5L << 20, TestContext.Current.CancellationToken)
        );
        Assert.Equal("endless: is too large: a garden file has at most 5 MiB.", wrong.Message);
    }

    /// <summary>Spaces for ever.</summary>
    private sealed class Endless : MemoryStream
    {
        public override int Read(Span<byte> buffer)
        {
            buffer.Fill((byte)' ');
            return buffer.Length;
        }

        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            ValueTask.FromResult(Read(buffer.Span));
    }
}
