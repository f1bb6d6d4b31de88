using System.Security.Cryptography;
using System.Text;
using CsCheck;
using Xunit.Sdk;

namespace Dripwright.Tests;

/// <summary>How one test draws its cases.</summary>
internal sealed class LawRun
{
    private const string SkipMark = "$XunitDynamicSkip$";

    /// <summary>The test, "Class.Method": its cases follow from it, and pinned seeds are kept under it.</summary>
    public required string Test { get; init; }

    /// <summary>Seeds that once failed.</summary>
    public required PinnedSeeds Pinned { get; init; }

    /// <summary>Whether the seed is a new one instead of the one made of the test's name; a case that fails is then pinned.</summary>
    public bool IsFresh { get; init; }

    /// <summary>How many times the cases of an ordinary run.</summary>
    public int Factor { get; init; } = 1;

    /// <summary>The run of the test that is running now.</summary>
    public static LawRun OfThisTest()
    {
        var method =
            TestContext.Current.TestMethod
            ?? throw new InvalidOperationException("A law is asserted by a running test.");
        // Without the namespace: a class that moves to another folder draws what it drew.
        var type = method.TestClass.TestClassName.Split('.', '+')[^1];
        return new LawRun
        {
            Test = $"{type}.{method.MethodName}",
            Pinned = PinnedSeeds.Ours,
            IsFresh = Trials.AreFresh,
            Factor = Trials.AreLong ? Trials.Factor : 1,
        };
    }

    /// <summary>Asserts a law for the pinned cases and for so many drawn ones.</summary>
    public void Run<T>(Gen<T> gen, Action<T> law, int iter) =>
        RunAsync(
                gen,
                drawn =>
                {
                    law(drawn);
                    return Task.CompletedTask;
                },
                iter
            )
            .GetAwaiter()
            .GetResult();

    /// <summary>The same for a law that is awaited.</summary>
    public async Task RunAsync<T>(Gen<T> gen, Func<T, Task> law, int iter)
    {
        var cases = checked(iter * Factor);
        foreach (var pinned in Pinned.Of(Test))
        {
            await TryAsync(PCG.Parse(pinned), 1);
        }
        await TryAsync(Start(), cases);
        CaseCount.Add(Test, cases);

        async Task TryAsync(PCG draws, int count)
        {
            for (var n = 0; n < count; n++)
            {
                var before = draws.State;
                var drawn = gen.Generate(draws, null, out var size);
                if (await FaultAsync(law, drawn) is { } fault)
                {
                    var found = new Found<T>(draws.ToString(before), drawn, size, fault);
                    throw Told(await SmallerAsync(gen, law, draws, found, iter), n, count);
                }
            }
        }
    }

    /// <summary>Where the drawing starts.</summary>
    private PCG Start()
    {
        // The first bytes of a hash: the same on every machine, and no two names are near each other.
        var bytes = IsFresh ? RandomNumberGenerator.GetBytes(12) : SHA256.HashData(Encoding.UTF8.GetBytes(Test));
        return new PCG(BitConverter.ToUInt32(bytes, 8) >> 1, BitConverter.ToUInt64(bytes, 0));
    }

    /// <summary>Draws on for a while for a case that fails too and is smaller.</summary>
    private static async Task<Found<T>> SmallerAsync<T>(
        Gen<T> gen,
        Func<T, Task> law,
        PCG draws,
        Found<T> found,
        int tries
    )
    {
        for (var n = 0; n < tries; n++)
        {
            var before = draws.State;
            var drawn = gen.Generate(draws, found.Size, out var size);
            if (Size.IsLessThan(size, found.Size) && await FaultAsync(law, drawn) is { } fault)
            {
                found = new Found<T>(draws.ToString(before), drawn, size, fault);
            }
        }
        return found;
    }

    private static async Task<Exception?> FaultAsync<T>(Func<T, Task> law, T drawn)
    {
        try
        {
            await law(drawn);
            return null;
        }
        catch (Exception fault) when (!fault.Message.StartsWith(SkipMark, StringComparison.Ordinal))
        {
            return fault;
        }
    }

    private XunitException Told<T>(Found<T> found, int n, int count)
    {
#pragma warning disable RS0030 // Its printer only; it draws nothing.
        var text = Check.Print(found.Case);
#pragma warning restore RS0030
        text = text.Length > 2000 ? text[..2000] + " ..." : text;
        var pinned = "";
        if (IsFresh)
        {
            Pinned.Add(Test, found.Seed);
            pinned = $" The seed is pinned now: commit {PinnedSeeds.Path}.";
        }
        return new XunitException(
            FormattableString.Invariant(
                $"{Test} fails at case {n + 1} of {count}, smallest found with seed {found.Seed}.{pinned}\n{found.Fault.Message}\nCase: {text}"
            ),
            found.Fault
        );
    }

    private sealed record Found<T>(string Seed, T Case, Size Size, Exception Fault);
}
