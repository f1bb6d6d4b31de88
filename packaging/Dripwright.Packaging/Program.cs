using Dripwright.Packaging;

try
{
    return args switch
    {
        ["finish", var folder, var platform, var packages, var bill, var root] => Finish(
            folder,
            platform,
            packages,
            bill,
            root
        ),
        ["advisories", var report, var canary] => Advisories.Tell(
            File.ReadAllText(report),
            File.ReadAllText(canary),
            Console.Out
        ),
        _ => Misused(),
    };
}
catch (Exception wrong) when (wrong is IOException or InvalidDataException or UnauthorizedAccessException)
{
    Console.Error.WriteLine($"packaging: {wrong.Message}");
    return 2;
}

static int Finish(string folder, string platform, string packages, string bill, string root)
{
    var shipped = Shipped.Read(folder);
    var committed = Committed.Read(root);
    Licences.Write(shipped, committed, packages, root, Path.Combine(folder, "licences"));
    BillOfMaterials.Complete(bill, shipped, committed, packages);
    var natives = NativeLibrary.Of(folder);
    var foreign = natives.Where(one => !one.IsFor(platform)).ToList();
    foreach (var one in foreign)
    {
        Console.Error.WriteLine(
            $"packaging: {one.Name} is {one.Format} for {one.Processor}; expected what {platform} runs."
        );
    }

    var lacking = Feature.LackingIn(natives);
    File.WriteAllText(Path.Combine(folder, "README.txt"), ReadMe.Of(platform, lacking));
    Console.WriteLine(
        $"{platform}: {shipped.Count} packages, {natives.Count} native files; without: {(lacking.Count == 0 ? "nothing" : string.Join(", ", lacking.Select(one => one.Name)))}"
    );
    return foreign.Count == 0 ? 0 : 1;
}

static int Misused()
{
    Console.Error.WriteLine(
        "packaging: expected \"finish FOLDER PLATFORM PACKAGES BILL ROOT\" or \"advisories REPORT CANARY\". ./publish and ./test call it."
    );
    return 2;
}
