using System.Net;
using System.Security.Cryptography.X509Certificates;
using Dripwright.Workbench.Encryption;

namespace Dripwright.Workbench.Tests.Encryption;

/// <summary>An authority as a garden makes it, with its keys still at hand, and what a thief of them would sign.</summary>
internal sealed class GardenAuthority : IDisposable
{
    public const string Name = "greenhouse.test";
    public static readonly DateTimeOffset Now = DateTimeOffset.UtcNow;

    private readonly string[] _names = [Name, HostName.Own];

    public GardenAuthority()
    {
        Root = Authority.Root(_names, Now);
        Signing = Authority.Signing(Root, _names);
        Folder = Directory.CreateTempSubdirectory("dripwright-authority-").FullName;
        RootFile = Write("root.pem", Root.ExportCertificatePem());
        SigningFile = Write("signing.pem", Signing.ExportCertificatePem());
    }

    public X509Certificate2 Root { get; }

    public X509Certificate2 Signing { get; }

    public string Folder { get; }

    public string RootFile { get; }

    public string SigningFile { get; }

    /// <summary>The names of a certificate.</summary>
    public static X509Extension Names(string kind, string name)
    {
        var names = new SubjectAlternativeNameBuilder();
        switch (kind)
        {
            case "dns":
                names.AddDnsName(name);
                break;
            case "address":
                names.AddIpAddress(IPAddress.Parse(name));
                break;
            case "mail":
                names.AddEmailAddress(name);
                break;
            default:
                names.AddUri(new Uri(name));
                break;
        }

        return names.Build();
    }

    public string Write(string name, string text)
    {
        var file = Path.Combine(Folder, name);
        File.WriteAllText(file, text);
        return file;
    }

    public void Dispose()
    {
        Root.Dispose();
        Signing.Dispose();
        Directory.Delete(Folder, recursive: true);
    }
}
