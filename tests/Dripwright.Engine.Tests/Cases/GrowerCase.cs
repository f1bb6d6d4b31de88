using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;

namespace Dripwright.Engine.Tests.Cases;

/// <summary>What a plan is expected to say of a rig.</summary>
internal enum Expected
{
    /// <summary>Nothing to stop or mend; or nothing by the rules that the case names.</summary>
    Silent,

    /// <summary>A note.</summary>
    Note,

    /// <summary>A mend.</summary>
    Mend,

    /// <summary>A stop.</summary>
    Stop,

    /// <summary>A figure within bounds.</summary>
    Figure,
}

/// <summary>Whether the plan comes out as expected, measured.</summary>
internal enum Now
{
    /// <summary>It does, and its cure cures.</summary>
    Right,

    /// <summary>It does not yet.</summary>
    Wrong,
}

/// <summary>The answers from which a first rig is made, as a grower gives them.</summary>
internal sealed record FirstAnswers
{
    public string Units { get; init; } = "us";
    public int Rows { get; init; } = 1;
    public int Pots { get; init; } = 10;
    public bool Gravity { get; init; }
}

/// <summary>What was read at the tank.</summary>
internal sealed record TankLook(double Ec, double Ph, double Litres);

/// <summary>A figure of the plan and what it may be, in the unit of its name; no bound above where there is no most.</summary>
internal sealed record FigureBounds(string Of, double Least, double? Most);

/// <summary>A rig, and what an experienced grower would say of it.</summary>
internal sealed record GrowerCase
{
    /// <summary>A sentence that names it.</summary>
    public required string Name { get; init; }

    /// <summary>The rig file's fields that matter; all else is assumed.</summary>
    public JsonObject? Rig { get; init; }

    /// <summary>In place of a rig: the answers from which one is made.</summary>
    public FirstAnswers? Start { get; init; }

    /// <summary>A reading at the tank, where the case is about putting the tank right.</summary>
    public TankLook? Tank { get; init; }

    /// <summary>What an experienced grower, builder or adviser would say, in one sentence.</summary>
    public required string Says { get; init; }

    /// <summary>Whose judgement that is.</summary>
    public required string Source { get; init; }

    /// <summary>What is expected of the plan.</summary>
    public required Expected Expect { get; init; }

    /// <summary>The rule that is to speak.</summary>
    public string? Rule { get; init; }

    /// <summary>In place of a rule: the short plain name of one that does not exist yet.</summary>
    public string? Missing { get; init; }

    /// <summary>The fields that a rule to come would point at, so that its coming is noticed.</summary>
    public IReadOnlyList<string> Fields { get; init; } = [];

    /// <summary>The rules that are to be silent; all stops and mends where none is named.</summary>
    public IReadOnlyList<string> Rules { get; init; } = [];

    /// <summary>A field of the rig that the rig file cannot say yet.</summary>
    public string? Unsaid { get; init; }

    /// <summary>The figure that is expected.</summary>
    public FigureBounds? Figure { get; init; }

    /// <summary>Fields with the new values that cure it.</summary>
    public JsonObject? Cure { get; init; }

    /// <summary>Whether the plan says so today, as measured.</summary>
    public required Now Now { get; init; }

    /// <summary>The case's name, which is what a test run shows.</summary>
    public override string ToString() => Name;
}

/// <summary>All cases, by area.</summary>
internal static class CaseBook
{
    private static readonly JsonSerializerOptions s_json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase) },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        ReadCommentHandling = JsonCommentHandling.Skip,
    };

    /// <summary>Areas in the order of the page; each is a file beside this one.</summary>
    public static IReadOnlyList<(string File, string Title)> Areas { get; } =
    [
        ("water", "Water"),
        ("stand", "Stand and wire"),
        ("nutrients", "Nutrients"),
        ("waters", "Water reports"),
        ("shelves", "Shelves of salts and bags"),
        ("tanks", "Readings at a tank"),
        ("parts", "Parts, power and place"),
    ];

    /// <summary>Every case with the file it stands in.</summary>
    public static IReadOnlyList<(string File, GrowerCase Case)> All { get; } =
    [.. Areas.SelectMany(area => Of(area.File).Select(c => (area.File, c)))];

    private static GrowerCase[] Of(string file) =>
        JsonSerializer.Deserialize<GrowerCase[]>(
            CommittedText.Of($"tests/Dripwright.Engine.Tests/Cases/{file}.json"),
            s_json
        )!;
}
