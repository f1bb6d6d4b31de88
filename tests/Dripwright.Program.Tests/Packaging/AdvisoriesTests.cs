using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using Dripwright.Packaging;

namespace Dripwright.Program.Tests.Packaging;

public sealed class AdvisoriesTests
{
    private const string Known =
        "x.csproj : warning NU1903: Package 'Newtonsoft.Json' 12.0.3 has a known high severity vulnerability, https://example.org/1 [x.slnx]";

    [Fact]
    public void Silence_is_no_answer_where_a_known_fault_passes_as_sound()
    {
        using var told = new StringWriter();
        Assert.Equal(3, Advisories.Tell("Restored.", "Restored.", told));
        Assert.Contains("not checked", told.ToString(), StringComparison.Ordinal);
        using var clean = new StringWriter();
        Assert.Equal(0, Advisories.Tell("Restored.", Known, clean));
        Assert.Contains("none", clean.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_planted_advisory_on_a_package_that_we_use_is_found()
    {
        var port = FreePort();
        using var source = new HttpListener();
        source.Prefixes.Add($"http://127.0.0.1:{port}/");
        source.Start();
        var answering = Answer(source, port);
        var folder = Directory.CreateTempSubdirectory("dripwright-planted-").FullName;
        try
        {
            await Write(
                folder,
                "nuget.config",
                $"""
                <configuration>
                  <packageSources><clear /><add key="here" value="{folder}" /></packageSources>
                  <auditSources>
                    <clear /><add key="planted" value="http://127.0.0.1:{port}/index.json" allowInsecureConnections="true" />
                  </auditSources>
                </configuration>
                """
            );
            // In the cache already, for we use it.
            await Write(
                folder,
                "planted.csproj",
                """
                <Project Sdk="Microsoft.NET.Sdk">
                  <PropertyGroup>
                    <TargetFramework>net10.0</TargetFramework><NuGetAudit>true</NuGetAudit><NuGetAuditLevel>low</NuGetAuditLevel>
                  </PropertyGroup>
                  <ItemGroup><PackageReference Include="CsvHelper" Version="34.0.0" /></ItemGroup>
                </Project>
                """
            );
            var (exit, report, error) = await BuiltProgram.End(
                BuiltProgram.StartOf(
                    "dotnet",
                    "restore",
                    Path.Combine(folder, "planted.csproj"),
                    "-v",
                    "minimal",
                    "--nologo"
                )
            );
            Assert.True(exit == 0, report + error);
            using var told = new StringWriter();
            Assert.Equal(1, Advisories.Tell(report, Known, told));
            Assert.Contains("NU1904: Package 'CsvHelper' 34.0.0", told.ToString(), StringComparison.Ordinal);
        }
        finally
        {
            source.Stop();
            await answering;
            Directory.Delete(folder, recursive: true);
        }
    }

    private static Task Write(string folder, string name, string text) =>
        File.WriteAllTextAsync(Path.Combine(folder, name), text, TestContext.Current.CancellationToken);

    // A source of packages that knows of one fault.
    private static async Task Answer(HttpListener source, int port)
    {
        var here = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}");
        while (true)
        {
            HttpListenerContext asked;
            try
            {
                asked = await source.GetContextAsync();
            }
            catch (Exception ended) when (ended is HttpListenerException or ObjectDisposedException)
            {
                return;
            }

            var text = asked.Request.Url!.AbsolutePath switch
            {
                "/index.json" =>
                    $$"""{"version":"3.0.0","resources":[{"@id":"{{here}}/all.json","@type":"VulnerabilityInfo/6.7.0"}]}""",
                "/all.json" => $$"""[{"@name":"base","@id":"{{here}}/base.json","@updated":"2026-01-01T00:00:00Z"}]""",
                _ => """{"csvhelper":[{"url":"https://example.org/planted","severity":3,"versions":"(, 99.0.0)"}]}""",
            };
            asked.Response.ContentType = "application/json";
            await asked.Response.OutputStream.WriteAsync(Encoding.UTF8.GetBytes(text));
            asked.Response.Close();
        }
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
