namespace Dripwright.Workbench.Tests.Http;

public sealed class CureTests
{
    private const string NoLid = """{ "rows": [ { "pots": 4 } ], "reservoir": { "lid": false } }""";

    [Fact]
    public async Task Every_cure_of_the_list_has_its_number_when_it_is_tried_alone()
    {
        await using var caller = await Caller.Open();
        var list = await caller.Post("cures", NoLid);
        Assert.Equal(200, list.Status);
        var cures = list
            .Json.EnumerateArray()
            .SelectMany(finding => finding.GetProperty("cures").EnumerateArray())
            .ToList();
        Assert.NotEmpty(cures);
        foreach (var cure in cures)
        {
            var tried = await caller.Post($"cures/try?cure={cure.GetProperty("number").GetString()}", NoLid);
            Assert.True(tried.Json.GetProperty("cured").GetBoolean());
            Assert.Equal(
                cure.GetProperty("changes").ToString(),
                tried.Json.GetProperty("change").GetProperty("changes").ToString()
            );
        }

        (await caller.Post("cures/try?cure=99.1", NoLid)).IsProblem(404);
        (await caller.Post("cures/try?cure=1", NoLid)).IsProblem(404);
    }

    [Fact]
    public async Task The_file_that_is_made_to_work_has_nothing_left_to_stop_or_mend()
    {
        await using var caller = await Caller.Open();
        var works = await caller.Post("make-it-work", NoLid);
        Assert.Equal(200, works.Status);
        foreach (var way in (string[])["fewest", "cheapest"])
        {
            var text = works.Json.GetProperty(way).GetProperty("text").GetString()!;
            var left = (await caller.Post("cures", text)).Json.EnumerateArray();
            Assert.All(
                left,
                cured =>
                    Assert.Equal("note", cured.GetProperty("finding").GetProperty("level").ToString(), ignoreCase: true)
            );
        }

        (await caller.Post("make-it-work?seconds=61", NoLid)).IsProblem(400);
    }
}
