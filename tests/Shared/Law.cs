using CsCheck;

namespace Dripwright.Tests;

/// <summary>
/// Laws that hold for every drawn case. Each test draws the same cases on every run and in every culture: from a seed made of its
/// name, after the cases of tests/seeds.json that once failed. Cases are drawn one after the other on one thread.
/// </summary>
internal static class Law
{
    /// <summary>Cases of a law that does not say how many.</summary>
    public const int Usual = 100;

    /// <summary>Asserts the law for every drawn case.</summary>
    /// <param name="gen">Draws cases.</param>
    /// <param name="law">Throws where the law does not hold.</param>
    /// <param name="iter">Cases of an ordinary run; a long run draws <see cref="Trials.Factor"/> times as many.</param>
    public static void Holds<T>(this Gen<T> gen, Action<T> law, int iter = Usual) =>
        LawRun.OfThisTest().Run(gen, law, iter);

    /// <summary>The same with a law that answers.</summary>
    public static void Holds<T>(this Gen<T> gen, Func<T, bool> law, int iter = Usual) => gen.Holds(Said(law), iter);

    /// <summary>A law that answers as one that throws.</summary>
    public static Action<T> Said<T>(Func<T, bool> law) => drawn => Assert.True(law(drawn), "The law does not hold.");

    /// <summary>Asserts a law that is awaited.</summary>
    public static async Task HoldsAsync<T>(this Gen<T> gen, Func<T, Task> law, int iter = Usual) =>
        await LawRun.OfThisTest().RunAsync(gen, law, iter);

    public static void Holds<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> law, int iter = Usual) =>
        gen.Holds(((T1, T2) t) => law(t.Item1, t.Item2), iter);

    public static void Holds<T1, T2>(this Gen<(T1, T2)> gen, Func<T1, T2, bool> law, int iter = Usual) =>
        gen.Holds(((T1, T2) t) => law(t.Item1, t.Item2), iter);

    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> law, int iter = Usual) =>
        gen.Holds(((T1, T2, T3) t) => law(t.Item1, t.Item2, t.Item3), iter);

    public static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Func<T1, T2, T3, bool> law, int iter = Usual) =>
        gen.Holds(((T1, T2, T3) t) => law(t.Item1, t.Item2, t.Item3), iter);

    public static void Holds<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen,
        Action<T1, T2, T3, T4> law,
        int iter = Usual
    ) => gen.Holds(((T1, T2, T3, T4) t) => law(t.Item1, t.Item2, t.Item3, t.Item4), iter);

    public static void Holds<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen,
        Func<T1, T2, T3, T4, bool> law,
        int iter = Usual
    ) => gen.Holds(((T1, T2, T3, T4) t) => law(t.Item1, t.Item2, t.Item3, t.Item4), iter);

    public static void Holds<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen,
        Action<T1, T2, T3, T4, T5> law,
        int iter = Usual
    ) => gen.Holds(((T1, T2, T3, T4, T5) t) => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), iter);

    public static void Holds<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> gen,
        Func<T1, T2, T3, T4, T5, bool> law,
        int iter = Usual
    ) => gen.Holds(((T1, T2, T3, T4, T5) t) => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5), iter);

    public static void Holds<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> gen,
        Action<T1, T2, T3, T4, T5, T6> law,
        int iter = Usual
    ) => gen.Holds(((T1, T2, T3, T4, T5, T6) t) => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6), iter);

    public static void Holds<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> gen,
        Func<T1, T2, T3, T4, T5, T6, bool> law,
        int iter = Usual
    ) => gen.Holds(((T1, T2, T3, T4, T5, T6) t) => law(t.Item1, t.Item2, t.Item3, t.Item4, t.Item5, t.Item6), iter);
}
