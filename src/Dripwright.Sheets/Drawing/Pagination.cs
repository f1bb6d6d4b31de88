using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Drawing;

/// <summary>Deals blocks out to sheets.</summary>
internal static class Pagination
{
    public static IReadOnlyList<IReadOnlyList<Element>> Paginate(IReadOnlyList<Block> blocks, Box room)
    {
        var pages = new List<List<Element>> { new() };
        var y = room.Y;
        for (var i = 0; i < blocks.Count; i++)
        {
            var block = blocks[i];
            var repeats = block.Header is { } && i > 0 && ReferenceEquals(blocks[i - 1].Header, block.Header);
            var chain = ChainHeight(blocks, i);
            var most = room.Height - (repeats ? block.Header!.Height : 0);
            // A chain longer than a sheet cannot be kept; its pieces then break one by one.
            var needed = chain <= most ? chain : block.Height;
            var startsHere = i == 0 || !blocks[i - 1].KeepWithNext || chain > most;
            var full = startsHere || y + block.Height > room.Bottom + 1e-6;
            if (y > room.Y && (block.StartsSheet || (full && y + needed > room.Bottom + 1e-6)))
            {
                pages.Add([]);
                y = room.Y;
                if (repeats)
                {
                    pages[^1].AddRange(block.Header!.Draw(new(room.X, y)));
                    y += block.Header.Height;
                }
            }

            pages[^1].AddRange(block.Draw(new(room.X, y)));
            y += block.Height;
        }

        return pages;
    }

    private static double ChainHeight(IReadOnlyList<Block> blocks, int start)
    {
        var height = blocks[start].Height;
        for (var i = start; blocks[i].KeepWithNext && i + 1 < blocks.Count; i++)
        {
            height += blocks[i + 1].Height;
        }

        return height;
    }
}
