using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;

namespace Dripwright.Workbench.Encryption;

/// <summary>What the host needs to encrypt, or to stand behind something that does.</summary>
internal static class Encrypting
{
    public static void Add(IServiceCollection services, ServedCertificate served)
    {
        services.AddSingleton(served);
        services.AddHostedService<CertificateWatch>();
        services.AddHealthChecks().AddCheck<CertificateHealth>("certificate");
    }

    /// <summary>Comes when it is known whose request it is, and that it calls this machine by a name it has.</summary>
    public static void Use(WebApplication app)
    {
        if (app.Services.GetRequiredService<ServedCertificate>().Now is not null)
        {
            app.UseMiddleware<EncryptedOnly>();
        }
    }
}
