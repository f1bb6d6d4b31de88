using System.Globalization;

namespace Dripwright.Language;

/// <summary>The language of this thread's words until it is disposed.</summary>
public sealed class Speaking : IDisposable
{
    private readonly CultureInfo _before = CultureInfo.CurrentUICulture;

    /// <summary>Speaks a language from now on.</summary>
    /// <param name="language">The language; that of the thread where null.</param>
    public Speaking(CultureInfo? language)
    {
        CultureInfo.CurrentUICulture = language ?? _before;
    }

    /// <inheritdoc/>
    public void Dispose() => CultureInfo.CurrentUICulture = _before;
}
