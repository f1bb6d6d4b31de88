using System.Text.Json;

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
