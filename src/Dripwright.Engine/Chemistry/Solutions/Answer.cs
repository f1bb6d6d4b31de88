using System.Diagnostics.CodeAnalysis;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Why a question about a solution has no answer, and what would help.</summary>
/// <param name="What">What is so, in one sentence with its values.</param>
/// <param name="Remedy">What to do or what to read again.</param>
public sealed record Unanswerable(string What, string Remedy);

/// <summary>Either an answer or the reasons why there is none: an impossible reading is explained, never computed through.</summary>
/// <typeparam name="T">What was asked for.</typeparam>
public sealed record Answer<T>
    where T : class
{
    private Answer(T? value, IReadOnlyList<Unanswerable> refusals)
    {
        Value = value;
        Refusals = refusals;
    }

    /// <summary>The answer; null where there is none.</summary>
    public T? Value { get; }

    /// <summary>Why there is none; empty where there is one.</summary>
    public IReadOnlyList<Unanswerable> Refusals { get; }

    /// <summary>Whether there is an answer.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    public bool Found => Value is not null;

    internal static Answer<T> Of(T value) => new(value, []);

    internal static Answer<T> No(string what, string remedy) => new(null, [new Unanswerable(what, remedy)]);

    internal static Answer<T> No(Unanswerable refusal) => new(null, [refusal]);

    internal static Answer<T> No(IReadOnlyList<Unanswerable> refusals) => new(null, refusals);
}
