using System.Globalization;
using System.Text.Json;
using Dripwright.Engine.Catalogue;
using Dripwright.Engine.Proposing;
using Dripwright.Engine.Rigs;
using Dripwright.Language;

namespace Dripwright.Workbench.Tests.Http;

/// <summary>What a program is told is told in the language it asks for; what it is to read stays as it is.</summary>
public sealed class LanguageTests
{
    private static readonly (string, string) s_pseudo = ("Accept-Language", "xx, qps-ploc;q=0.8, en;q=0.5");

    [Theory]
    [InlineData("GET", "rigs/99", 404)]
    [InlineData("GET", "no-such-address", 404)]
    [InlineData("DELETE", "catalogue/all", 405)]
    [InlineData("GET", "catalogue/all?kind=cars", 400)]
    [InlineData("POST", "plan", 422)]
    [InlineData("POST", "suggest?seconds=0", 400)]
    public async Task Problems_are_told_in_the_language_that_is_asked_for(string method, string address, int status)
    {
        await using var caller = await Caller.Open();
        var body = method == "POST" ? """{ "rows": [ { "pots": 0 } ] }""" : null;
        var told = await caller.Send(
            new HttpMethod(method),
            address,
            body,
            ifMatch: null,
            type: "application/json",
            headers: s_pseudo
        );
        Assert.Equal(status, told.Status);
        Assert.StartsWith("⟦", told.Json.GetProperty("title").GetString(), StringComparison.Ordinal);
        Assert.StartsWith("⟦", told.Json.GetProperty("detail").GetString(), StringComparison.Ordinal);
        var english = await caller.Send(new HttpMethod(method), address, body);
        Assert.DoesNotContain("⟦", english.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(BadFileKind.Rig)]
    [InlineData(BadFileKind.Brief)]
    internal async Task Every_fault_of_a_bad_file_is_told_in_the_language_that_is_asked_for(BadFileKind kind)
    {
        await using var caller = await Caller.Open();
        var address = kind is BadFileKind.Rig ? "plan" : "suggest";
        foreach (var text in BadFiles.Of(kind))
        {
            var told = await caller.Send(
                HttpMethod.Post,
                address,
                text,
                ifMatch: null,
                type: "application/json",
                headers: s_pseudo
            );
            Assert.Equal(422, told.Status);
            var faults = told.Json.GetProperty("faults").EnumerateArray().ToList();
            // That no word of these leaks is tested where the texts are.
            Assert.Equal(Told(kind, text), faults.Select(Said));
            Assert.Contains("⟦", faults[0].GetProperty("expected").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Checking_a_rig_file_tells_its_faults_in_the_language_that_is_asked_for()
    {
        await using var caller = await Caller.Open();
        var text = BadFiles.Of(BadFileKind.Rig).Last();
        var told = await caller.Send(
            HttpMethod.Post,
            "check",
            text,
            ifMatch: null,
            type: "application/json",
            headers: s_pseudo
        );
        Assert.Equal(200, told.Status);
        Assert.Equal(Told(BadFileKind.Rig, text), told.Json.GetProperty("faults").EnumerateArray().Select(Said));
    }

    [Fact]
    public async Task Sentences_of_a_plan_follow_the_language_and_its_fields_and_numbers_do_not()
    {
        await using var caller = await Caller.Open();
        var english = await Plan(caller, ("Accept-Language", "en"));
        var pseudo = await Plan(caller, s_pseudo);
        Assert.Contains("⟦", pseudo.GetRawText(), StringComparison.Ordinal);
        Assert.Equal(english.GetProperty("dose").GetRawText(), pseudo.GetProperty("dose").GetRawText());
        Assert.Equal(english.GetProperty("reservoir").GetRawText(), pseudo.GetProperty("reservoir").GetRawText());
        Assert.Equal(
            english.EnumerateObject().Select(field => field.Name),
            pseudo.EnumerateObject().Select(field => field.Name)
        );
    }

    [Fact]
    public async Task The_description_for_programs_stays_english()
    {
        await using var caller = await Caller.Open();
        var told = await caller.Send(
            HttpMethod.Get,
            "openapi.json",
            (string?)null,
            ifMatch: null,
            type: "application/json",
            headers: s_pseudo
        );
        Assert.DoesNotContain("⟦", told.Text, StringComparison.Ordinal);
    }

    private static (int, string?, string?) Said(JsonElement fault) =>
        (
            fault.GetProperty("line").GetInt32(),
            fault.GetProperty("found").GetString(),
            fault.GetProperty("expected").GetString()
        );

    private static List<(int, string?, string?)> Told(BadFileKind kind, string text)
    {
        using var speaking = new Speaking(CultureInfo.GetCultureInfo("qps-ploc"));
        var faults =
            kind is BadFileKind.Rig
                ? RigReader.Read(text, "rig", PartsCatalogue.Default).Faults
                : BriefReader.Read(text, "brief", PartsCatalogue.Default).Faults;
        return [.. faults.Told().Select(fault => (fault.Line, (string?)fault.Found, (string?)fault.Expected))];
    }

    private static async Task<JsonElement> Plan(Caller caller, (string, string) language) =>
        (
            await caller.Send(
                HttpMethod.Post,
                "plan?draws=false",
                Caller.TenPots,
                ifMatch: null,
                type: "application/json",
                headers: language
            )
        ).Json;
}
