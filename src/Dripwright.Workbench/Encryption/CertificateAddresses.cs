using System.Security.Cryptography.X509Certificates;
using Dripwright.Language;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Dripwright.Workbench.Encryption;

/// <summary>Where a phone gets the authority's certificate. It is public: no key is in it, and nobody need sign in for it.</summary>
internal static class CertificateAddresses
{
    /// <summary>The page that tells how to trust it.</summary>
    public const string Page = "/certificate";

    /// <summary>The certificate.</summary>
    public const string File = Page + "/authority.crt";

    public static void Map(WebApplication app) =>
        app.MapGet(
                File,
                (HttpContext context, ServedCertificate served) =>
                {
                    using var root = served.Own?.Root();
                    context.Response.Headers.CacheControl = "no-store";
                    // The type that makes phones and browsers offer to trust it; the bytes as they all read them.
                    return root is null
                        ? Results.NotFound()
                        : Results.File(
                            root.Export(X509ContentType.Cert),
                            "application/x-x509-ca-cert",
                            Words.Of("encryption.file.name")
                        );
                }
            )
            .ExcludeFromDescription();
}
