using System.Diagnostics.CodeAnalysis;
using Dripwright.Engine.Phrases;

namespace Dripwright.Engine.Chemistry.Solutions;

/// <summary>Why a question about a solution has no answer, and what would help.</summary>
/// <param name="What">What is so, in one sentence with its values.</param>
/// <param name="Remedy">What to do or what to read again.</param>
public sealed record Unanswerable(Phrase What, Phrase Remedy)
{
    /// <summary>A reason whose texts stand under <c>unanswerable.(name).what</c> and <c>.remedy</c>.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="what">What goes into the places of the first text.</param>
    internal static Unanswerable Of(string name, params ReadOnlySpan<object> what) =>
        new(Phrase.Of($"unanswerable.{name}.what", what), Phrase.Of($"unanswerable.{name}.remedy"));

    /// <summary>The same with another remedy, whose text stands under <c>unanswerable.(name).remedy.(remedy)</c>.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="remedy">Name of the remedy.</param>
    /// <param name="what">What goes into the places of the first text.</param>
    internal static Unanswerable With(string name, string remedy, params ReadOnlySpan<object> what) =>
        new(Phrase.Of($"unanswerable.{name}.what", what), Phrase.Of($"unanswerable.{name}.remedy.{remedy}"));
}

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

    internal static Answer<T> No(Unanswerable refusal) => new(null, [refusal]);

    internal static Answer<T> No(IReadOnlyList<Unanswerable> refusals) => new(null, refusals);
}
