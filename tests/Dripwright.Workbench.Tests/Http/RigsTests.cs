namespace Dripwright.Workbench.Tests.Http;

public sealed class RigsTests
{
    [Fact]
    public async Task A_rig_is_added_fetched_kept_named_thrown_away_and_taken_back()
    {
        await using var caller = await Caller.Open();
        var (id, tag) = await caller.Add("Bench");
        var fetched = await caller.Get($"rigs/{id}");
        Assert.Equal(Caller.TenPots, fetched.Text);
        Assert.Equal(tag, fetched.Tag);
        var other = Caller.TenPots.Replace("10", "12", StringComparison.Ordinal);
        var kept = await caller.Send(HttpMethod.Put, $"rigs/{id}", other, tag);
        Assert.Equal(200, kept.Status);
        Assert.NotEqual(tag, kept.Tag);
        var undone = await caller.Post($"rigs/{id}/undo", null, kept.Tag);
        Assert.Equal(200, undone.Status);
        Assert.Equal(Caller.TenPots, (await caller.Get($"rigs/{id}")).Text);
        Assert.Equal(200, (await caller.Post($"rigs/{id}/redo", null, undone.Tag)).Status);
        var named = await caller.Send(HttpMethod.Patch, $"rigs/{id}", """{ "name": "Long bench" }""");
        Assert.Equal("Long bench", named.Json.GetProperty("name").GetString());
        Assert.Equal("Long bench", (await caller.Get("rigs")).Json[0].GetProperty("name").GetString());
        Assert.Equal(204, (await caller.Send(HttpMethod.Delete, $"rigs/{id}", (string?)null)).Status);
        (await caller.Get($"rigs/{id}")).IsProblem(404);
        Assert.Equal(id, (await caller.Get("bin")).Json[0].GetProperty("id").GetRawText());
        Assert.Equal(200, (await caller.Post($"bin/{id}/restore")).Status);
        Assert.Equal(other, (await caller.Get($"rigs/{id}")).Text);
        (await caller.Post($"bin/{id}/restore")).IsProblem(404);
    }

    [Fact]
    public async Task Of_two_writers_the_second_is_told_and_nothing_is_lost()
    {
        await using var caller = await Caller.Open();
        var (id, tag) = await caller.Add("Bench");
        var mine = Caller.TenPots.Replace("10", "11", StringComparison.Ordinal);
        var yours = Caller.TenPots.Replace("10", "12", StringComparison.Ordinal);
        var both = await Task.WhenAll(
            caller.Send(HttpMethod.Put, $"rigs/{id}", mine, tag),
            caller.Send(HttpMethod.Put, $"rigs/{id}", yours, tag)
        );
        var (first, second) = both[0].Status == 200 ? (both[0], both[1]) : (both[1], both[0]);
        Assert.Equal(200, first.Status);
        second.IsProblem(412);
        Assert.Equal(first.Tag, second.Tag);
        Assert.Equal(both[0].Status == 200 ? mine : yours, (await caller.Get($"rigs/{id}")).Text);
        (await caller.Send(HttpMethod.Put, $"rigs/{id}", mine)).IsProblem(428);
        (await caller.Send(HttpMethod.Put, $"rigs/{id}", mine, "\"nonsense\"")).IsProblem(400);
        (await caller.Send(HttpMethod.Delete, $"rigs/{id}", (string?)null, tag)).IsProblem(412);
        (await caller.Post($"rigs/{id}/revisions", "{}", tag)).IsProblem(412);
        Assert.Equal(200, (await caller.Send(HttpMethod.Put, $"rigs/{id}", Caller.TenPots, "*")).Status);
    }

    [Fact]
    public async Task Revisions_are_saved_listed_and_fetched_and_the_pack_of_one_says_its_number()
    {
        await using var caller = await Caller.Open();
        var (id, tag) = await caller.Add("Bench");
        var saved = await caller.Post($"rigs/{id}/revisions", """{ "note": "first", "who": "Ada" }""", tag);
        Assert.Equal(201, saved.Status);
        Assert.Equal($"{Caller.Api}/rigs/{id}/revisions/1", saved.Headers["Location"]);
        Assert.Equal(200, (await caller.Post($"rigs/{id}/revisions", "{}", tag)).Status);
        var listed = (await caller.Get($"rigs/{id}/revisions")).Json[0];
        Assert.Equal("first", listed.GetProperty("note").GetString());
        Assert.Equal("Ada", listed.GetProperty("who").GetString());
        Assert.Equal(Caller.TenPots, (await caller.Get($"rigs/{id}/revisions/1")).Text);
        (await caller.Get($"rigs/{id}/revisions/2")).IsProblem(404);
        foreach (
            var verb in (string[])
                [
                    "check",
                    "plan?draws=false",
                    "summary?draws=false",
                    "sheets?draws=false",
                    "sheets/1?draws=false",
                    "pack.pdf?draws=false",
                    "pack.zip?draws=false",
                ]
        )
        {
            var join = verb.Contains('?', StringComparison.Ordinal) ? "&" : "?";
            Assert.Equal(200, (await caller.Get($"rigs/{id}/{verb}{join}revision=1")).Status);
            (await caller.Get($"rigs/{id}/{verb}{join}revision=7")).IsProblem(404);
            (await caller.Get($"rigs/999/{verb}")).IsProblem(404);
        }

        var faulty = await caller.Send(HttpMethod.Put, $"rigs/{id}", "{ half typed", "*");
        Assert.Equal(200, faulty.Status);
        var refused = (await caller.Post($"rigs/{id}/revisions", "{}", faulty.Tag)).IsProblem(422);
        Assert.NotEmpty(refused.Json.GetProperty("faults").EnumerateArray());
    }

    [Fact]
    public async Task A_garden_is_exported_and_imported_backed_up_and_restored()
    {
        await using var caller = await Caller.Open();
        await caller.Add("Bench");
        var file = await caller.Get("garden/export");
        Assert.Equal(1, file.Json.GetProperty("gardenFormat").GetInt32());
        var copy = await caller.Get("garden/backup");
        Assert.Equal("SQLite format 3"u8.ToArray(), copy.Bytes[..15]);
        var (second, _) = await caller.Add("Second");
        using var back = new ByteArrayContent(copy.Bytes);
        var brought = await caller.Send(HttpMethod.Post, "garden/restore", back, null, "application/octet-stream");
        Assert.Equal(204, brought.Status);
        (await caller.Get($"rigs/{second}")).IsProblem(404);
        var taken = await caller.Post("garden/import", file.Text);
        Assert.Equal(1, taken.Json.GetProperty("rigs").GetInt32());
        Assert.Equal(2, (await caller.Get("garden")).Json.GetProperty("rigs").GetInt32());
        (await caller.Post("garden/import", "{}")).IsProblem(422);
        using var junk = new ByteArrayContent([1, 2, 3]);
        var refused = await caller.Send(HttpMethod.Post, "garden/restore", junk, null, "application/octet-stream");
        refused.IsProblem(422);
        Assert.DoesNotContain(caller.Bench.Folder, refused.Text, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFileSystemEntries(caller.Bench.Folder, ".*passing-*"));
    }
}
