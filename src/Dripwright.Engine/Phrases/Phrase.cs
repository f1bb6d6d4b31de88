namespace Dripwright.Engine.Phrases;

/// <summary>Something to say, as a value: the key of a text and what goes into its places. It becomes words only at the edge.</summary>
/// <remarks>
/// A place takes a <see cref="Measured"/> (told in the reader's units), a whole number, a text that is nobody's to translate (the name
/// of a part, a key of the catalogue, what the grower wrote), <see cref="Numbers"/> ("1 to 4, 7"), another phrase, or a
/// <see cref="Several"/> of phrases. The texts stand by key in one file per language; <c>{0}</c> is the first place.
/// Two phrases are equal when they say the same.
/// </remarks>
public sealed class Phrase : IEquatable<Phrase>
{
    private const string PlainKey = "";

    private Phrase(string key, IReadOnlyList<object> values)
    {
        Key = key;
        Values = values;
    }

    /// <summary>Key of the text; empty for a text that stands for itself.</summary>
    public string Key { get; }

    /// <summary>What goes into the text's places, in their order.</summary>
    public IReadOnlyList<object> Values { get; }

    /// <summary>Nothing to say.</summary>
    public static Phrase None { get; } = new(PlainKey, [""]);

    /// <summary>Whether it says nothing.</summary>
    public bool IsNone => Key.Length == 0 && Values[0] is "";

    /// <summary>A text that is nobody's to translate: what the grower wrote, the name of a part.</summary>
    /// <param name="text">The text.</param>
    public static Phrase Plain(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Length == 0 ? None : new Phrase(PlainKey, [text]);
    }

    /// <summary>A measured value by itself.</summary>
    /// <param name="value">The value.</param>
    public static Phrase Of(Measured value) => new(PlainKey, [value]);

    /// <summary>Several phrases in a row, those that say nothing left out.</summary>
    /// <param name="several">The phrases, and what stands between them.</param>
    public static Phrase Of(Several several)
    {
        ArgumentNullException.ThrowIfNull(several);
        Phrase[] said = [.. several.Each.Where(each => !each.IsNone)];
        return said switch
        {
            [] => None,
            [var one] => one,
            _ => new Phrase(PlainKey, [several with { Each = said }]),
        };
    }

    /// <summary>The text of a key, with its places filled.</summary>
    /// <param name="key">The key, such as <c>finding.drain-full.what</c>.</param>
    /// <param name="values">What goes into the places.</param>
    /// <exception cref="ArgumentException">The key is empty, or a value is of a kind that cannot be told.</exception>
    public static Phrase Of(string key, params ReadOnlySpan<object> values)
    {
        ArgumentException.ThrowIfNullOrEmpty(key);
        foreach (var value in values)
        {
            if (value is not (Measured or int or string or Numbers or Phrase or Several))
            {
                throw new ArgumentException(
                    $"'{key}' cannot tell a {value?.GetType().Name ?? "null"}.",
                    nameof(values)
                );
            }
        }

        return new Phrase(key, values.ToArray());
    }

    /// <summary>The text for one or for several: <c>key.one</c> or <c>key.many</c>, the number in the first place.</summary>
    /// <param name="key">The key without its ending.</param>
    /// <param name="count">[-] How many.</param>
    /// <param name="more">What goes into the further places.</param>
    public static Phrase Counted(string key, int count, params ReadOnlySpan<object> more) =>
        Of(count == 1 ? $"{key}.one" : $"{key}.many", [count, .. more]);

    /// <summary>Whether both say the same.</summary>
    public static bool operator ==(Phrase? left, Phrase? right) => left is null ? right is null : left.Equals(right);

    /// <summary>Whether they say something else.</summary>
    public static bool operator !=(Phrase? left, Phrase? right) => !(left == right);

    /// <inheritdoc/>
    public bool Equals(Phrase? other) => other is not null && Key == other.Key && Values.SequenceEqual(other.Values);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Phrase);

    /// <inheritdoc/>
    public override int GetHashCode() =>
        HashCode.Combine(Key, Values.Count, Values.Count > 0 ? Values[0].GetHashCode() : 0);

    /// <summary>Whether it says the same but for values that are hardly apart.</summary>
    /// <param name="other">The other phrase.</param>
    /// <param name="share">[-] How far two measured values may differ, as a share of the greater.</param>
    internal bool IsNear(Phrase other, double share) =>
        Key == other.Key
        && Values.Count == other.Values.Count
        && Values.Zip(other.Values).All(pair => AreNear(pair.First, pair.Second, share));

    private static bool AreNear(object one, object other, double share) =>
        (one, other) switch
        {
            (Measured a, Measured b) => (a.Dimension, a.Form) == (b.Dimension, b.Form)
                && Math.Abs(a.Value - b.Value) <= share * Math.Max(Math.Abs(a.Value), Math.Abs(b.Value)),
            (Phrase a, Phrase b) => a.IsNear(b, share),
            (Several a, Several b) => a.Joint == b.Joint
                && a.Each.Count == b.Each.Count
                && a.Each.Zip(b.Each).All(pair => pair.First.IsNear(pair.Second, share)),
            _ => one.Equals(other),
        };

    /// <summary>Key and values, for a debugger; words are made at the edge.</summary>
    public override string ToString() => Key.Length == 0 ? $"{Values[0]}" : $"{Key}({string.Join(", ", Values)})";
}

/// <summary>Whole numbers that are told as short as it goes: "1 to 4, 7".</summary>
/// <param name="Each">[-] The numbers, in any order.</param>
public sealed record Numbers(IReadOnlyList<int> Each)
{
    /// <inheritdoc/>
    public bool Equals(Numbers? other) => other is not null && Each.SequenceEqual(other.Each);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Each.Count, Each.Count > 0 ? Each[0] : 0);
}

/// <summary>Several phrases in a row.</summary>
/// <param name="Each">The phrases.</param>
/// <param name="Joint">What stands between them.</param>
public sealed record Several(IReadOnlyList<Phrase> Each, Joint Joint = Joint.And)
{
    /// <inheritdoc/>
    public bool Equals(Several? other) => other is not null && Joint == other.Joint && Each.SequenceEqual(other.Each);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Each.Count, Joint);

    /// <summary>Keys and values, for a debugger.</summary>
    public override string ToString() => string.Join($" {Joint} ", Each);
}

/// <summary>What stands between several phrases.</summary>
public enum Joint
{
    /// <summary>"tomato, pepper and basil".</summary>
    And,

    /// <summary>"a stiffer tube, one more frame or braces".</summary>
    Or,

    /// <summary>"row 1, pot 3; row 2, pot 4".</summary>
    Semicolon,

    /// <summary>"header, feed lines".</summary>
    Comma,

    /// <summary>Sentences, one after the other.</summary>
    Sentence,
}
