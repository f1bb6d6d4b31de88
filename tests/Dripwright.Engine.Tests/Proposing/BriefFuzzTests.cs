using System.Text;
using CsCheck;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Files;
using Dripwright.Engine.Proposing;
using Dripwright.Language;

namespace Dripwright.Engine.Tests.Proposing;

public sealed class BriefFuzzTests
{
    private static readonly byte[] s_brief = Encoding.UTF8.GetBytes(
        BriefReader.Write(
            Briefs.From(
                """
                {
                  "name": "Back wall",
                  "crops": [{ "plants": 12 }, { "crop": "basil", "plants": 4, "spacing": "20 cm" }],
                  "budget": 400,
                  "tankShelf": "7 ft",
                  "onHand": [{ "part": "pvc40-1-1/2", "length": "10 ft" }]
                }
                """
            )
        )
    );

    // A reading is clean when it has a brief or a fault, never both, and each fault says where and what.
    private static bool IsClean(byte[] bytes)
    {
        var reading = BriefReader.Read(bytes, "fuzz", PartsCatalogue.Default);
        return reading.Brief is null == reading.Faults.Count > 0
            && reading
                .Faults.Told()
                .All(fault =>
                    fault is { Line: > 0, Column: > 0, Found.Length: > 0, Expected.Length: > 0 }
                    && fault.ToString().Length < 1000
                )
            && reading.Faults.Count <= FaultList.Most + 1;
    }

    [Fact]
    public void Any_bytes_give_a_clean_reading() => Gen.Byte.Array[0, 200].Holds(IsClean, iter: 10_000);

    [Fact]
    public void A_brief_with_bytes_changed_gives_a_clean_reading() =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Byte)
            .Array[1, 8]
            .Holds(
                changes =>
                {
                    var bytes = (byte[])s_brief.Clone();
                    foreach (var (at, value) in changes)
                    {
                        bytes[at % bytes.Length] = value;
                    }
                    return IsClean(bytes);
                },
                iter: 3_000
            );

    [Fact]
    public void A_brief_cut_off_anywhere_gives_a_clean_reading() =>
        Assert.All(Enumerable.Range(0, s_brief.Length), length => Assert.True(IsClean(s_brief[..length])));
}
