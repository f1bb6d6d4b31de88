using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;

namespace Dripwright.Language.Report;

/// <summary>The answer to a brief for programs. Every number says its unit in its name.</summary>
public static class ProposalJson
{
    private static readonly JsonWriterOptions s_pretty = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static readonly JsonDocumentOptions s_rigs = new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
    };

    /// <summary>The text.</summary>
    /// <param name="answer">The answer.</param>
    public static string Write(ProposalList answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var words = new PlanWords(answer.Units);
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, s_pretty))
        {
            json.WriteStartObject();
            json.WriteNumber("format", 1);
            json.WriteStartArray("proposals");
            foreach (var proposal in answer.Proposals)
            {
                Write(json, proposal, words);
            }

            json.WriteEndArray();
            json.WriteStartArray("obstacles");
            foreach (var obstacle in answer.Obstacles)
            {
                json.WriteStartObject();
                json.WriteString("what", words.Of(obstacle.What));
                json.WriteString("remedy", words.Of(obstacle.Remedy));
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteStartArray("remarks");
            foreach (var remark in answer.Remarks)
            {
                json.WriteStringValue(words.Of(remark));
            }

            json.WriteEndArray();
            Write(json, answer.Search);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static void Write(Utf8JsonWriter json, Proposal proposal, PlanWords words)
    {
        json.WriteStartObject();
        json.WriteString("title", words.Of(proposal.Title));
        json.WriteString("why", words.Of(proposal.Why));
        json.WriteNumber("cost", proposal.Cost);
        json.WriteString("currency", proposal.Currency);
        json.WriteNumber("linesUnpriced", proposal.LinesUnpriced);
        json.WriteNumber("uniformityShare", proposal.Uniformity);
        json.WriteNumber("markShare", proposal.Mark);
        json.WriteBoolean("proven", proposal.Proven);
        using var rig = JsonDocument.Parse(RigWriter.Write(proposal.Rig), s_rigs);
        json.WritePropertyName("rig");
        rig.RootElement.WriteTo(json);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, SearchReport search)
    {
        json.WriteStartObject("search");
        json.WriteNumber("planned", search.Planned);
        json.WriteNumber("placed", search.Placed);
        json.WriteNumber("unexamined", search.Unexamined);
        if (search.LeastCostUnexamined is { } least)
        {
            json.WriteNumber("leastCostUnexamined", least);
        }
        else
        {
            json.WriteNull("leastCostUnexamined");
        }

        json.WriteBoolean("complete", search.Complete);
        json.WriteBoolean("stopped", search.Stopped);
        json.WriteEndObject();
    }
}
