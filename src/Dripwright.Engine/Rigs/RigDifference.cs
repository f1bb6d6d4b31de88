using System.Collections;
using System.Globalization;
using System.Text;
using Dripwright.Engine.Files;
using Dripwright.Engine.Units;

namespace Dripwright.Engine.Rigs;

/// <summary>What differs between two rigs, field by field, in the grower's words.</summary>
/// <remarks>
/// Rigs are compared, not texts: "30 cm" in place of "300 mm", a comment or a default written out is no difference.
/// Elements of a list that are alike in both are matched first (longest common run), the others by their order.
/// </remarks>
public static class RigDifference
{
    /// <summary>All differences, in the order of the format. Empty exactly when the rigs say the same.</summary>
    /// <param name="before">The earlier rig.</param>
    /// <param name="after">The later rig; quantities are shown in its units.</param>
    public static IReadOnlyList<RigChange> Of(Rig before, Rig after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var changes = new List<RigChange>();
        new Walk(after.Units, changes).Record(before, after, "", "");
        return changes;
    }

    private sealed class Walk(UnitSystem units, List<RigChange> changes)
    {
        public void Record(object before, object after, string path, string where)
        {
            foreach (var field in FieldDescription.Of(after.GetType()))
            {
                var (was, now) = (field.Property.GetValue(before), field.Property.GetValue(after));
                var fieldPath = path.Length == 0 ? field.Name : $"{path}.{field.Name}";
                if (field.Kind is FieldKind.Section && was is not null && now is not null)
                {
                    Record(was, now, fieldPath, Join(where, Spaced(field.Name)));
                }
                else if (field.Kind is FieldKind.List && was is not null && now is not null)
                {
                    List(field, (IEnumerable)was, (IEnumerable)now, fieldPath, where);
                }
                else if (!Equals(was, now))
                {
                    var (wasText, nowText) = Values(field, was, now);
                    changes.Add(new RigChange(fieldPath, Join(where, Spaced(field.Name)), wasText, nowText));
                }
            }
        }

        private void List(FieldDescription field, IEnumerable before, IEnumerable after, string path, string where)
        {
            List<object> was = [.. before.Cast<object>()];
            List<object> now = [.. after.Cast<object>()];
            foreach (var (i, j) in Pairs([.. was.Select(Canonical)], [.. now.Select(Canonical)]))
            {
                var number = (j ?? i)!.Value;
                var itemPath = string.Create(CultureInfo.InvariantCulture, $"{path}[{number}]");
                var itemWhere = Join(where, Item(field.Name, number));
                if (i is { } from && j is { } to)
                {
                    Record(was[from], now[to], itemPath, itemWhere);
                }
                else
                {
                    changes.Add(
                        new RigChange(
                            itemPath,
                            itemWhere,
                            i is null ? null : Summary(was[i.Value]),
                            j is null ? null : Summary(now[j.Value])
                        )
                    );
                }
            }
        }

        private (string Before, string After) Values(FieldDescription field, object? was, object? now)
        {
            var (wasText, nowText) = (Value(field, was, exact: false), Value(field, now, exact: false));
            // A change too small for the usual digits is shown to the last one.
            return wasText == nowText
                ? (Value(field, was, exact: true), Value(field, now, exact: true))
                : (wasText, nowText);
        }

        private string Value(FieldDescription field, object? value, bool exact) =>
            value switch
            {
                null => "left to the plan",
                double ph when field.Kind is FieldKind.Ph && !exact => PhText.Print(ph),
                double number when field.Kind is FieldKind.Ph or FieldKind.Number => number.ToString(
                    "R",
                    CultureInfo.InvariantCulture
                ),
                decimal price => price.ToString("0.00##", CultureInfo.InvariantCulture),
                double si when exact => QuantityText.Exact(field.Quantity!.Dimension, si, units),
                double si => QuantityText.Format(field.Quantity!.Dimension, si, units),
                int whole => whole.ToString(CultureInfo.InvariantCulture),
                bool flag => flag ? "yes" : "no",
                Enum choice => FieldDescription.Dashed(choice.ToString()),
                string text when field.Kind is FieldKind.Text => FaultList.Quoted(text),
                _ => value.ToString()!,
            };

        // What an element is, in a few words: its plain fields that are not as assumed.
        private string Summary(object item)
        {
            var told = FieldDescription
                .Of(item.GetType())
                .Where(field => field.Kind is not (FieldKind.Section or FieldKind.List))
                .Select(field => (Field: field, Value: field.Property.GetValue(item)))
                .Where(pair => pair.Value is not null && !pair.Value.Equals(pair.Field.AssumedValue(units)))
                .Select(pair => $"{Spaced(pair.Field.Name)} {Value(pair.Field, pair.Value, exact: false)}")
                .ToList();
            return told.Count == 0 ? "all as assumed" : string.Join(", ", told);
        }

        private string Canonical(object item)
        {
            var text = new StringBuilder();
            foreach (var field in FieldDescription.Of(item.GetType()))
            {
                var value = field.Property.GetValue(item);
                text.Append(field.Name).Append('=');
                text.Append(
                    value switch
                    {
                        null => "",
                        double number => number.ToString("R", CultureInfo.InvariantCulture),
                        string word => word.Length.ToString(CultureInfo.InvariantCulture) + ":" + word,
                        IEnumerable list => "[" + string.Concat(list.Cast<object>().Select(Canonical)) + "]",
                        _ when field.Kind is FieldKind.Section => "{" + Canonical(value) + "}",
                        _ => Value(field, value, exact: true),
                    }
                );
                text.Append(';');
            }

            return text.ToString();
        }
    }

    /// <summary>Which element became which: those alike first, the rest between them in order. Null where there is none.</summary>
    internal static IEnumerable<(int? Before, int? After)> Pairs(
        IReadOnlyList<string> before,
        IReadOnlyList<string> after
    )
    {
        var common = new int[before.Count + 1, after.Count + 1];
        for (var i = before.Count - 1; i >= 0; i--)
        {
            for (var j = after.Count - 1; j >= 0; j--)
            {
                common[i, j] =
                    before[i] == after[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        var (b, a) = (0, 0);
        while (b < before.Count || a < after.Count)
        {
            // The next pair that is alike, or the ends.
            var (nextB, nextA) = (b, a);
            while (nextB < before.Count && nextA < after.Count && before[nextB] != after[nextA])
            {
                (nextB, nextA) =
                    common[nextB + 1, nextA] >= common[nextB, nextA + 1] ? (nextB + 1, nextA) : (nextB, nextA + 1);
            }

            if (nextB >= before.Count || nextA >= after.Count)
            {
                (nextB, nextA) = (before.Count, after.Count);
            }

            while (b < nextB || a < nextA)
            {
                yield return (b < nextB ? b++ : null, a < nextA ? a++ : null);
            }

            (b, a) = (nextB + 1, nextA + 1);
        }
    }

    private static string Join(string where, string word) => where.Length == 0 ? word : $"{where}, {word}";

    // "moduleLength" as "module length".
    private static string Spaced(string name) => FieldDescription.Dashed(name).Replace('-', ' ');

    // "rows" and 0 as "row 1".
    private static string Item(string list, int number)
    {
        var word = Spaced(list);
        return string.Create(CultureInfo.InvariantCulture, $"{(word.EndsWith('s') ? word[..^1] : word)} {number + 1}");
    }
}
