using System.Reflection;

[assembly: Dripwright.Tests.CpuTimes]

namespace Dripwright.Tests;

[AttributeUsage(AttributeTargets.Assembly)]
internal sealed class CpuTimesAttribute : Xunit.v3.BeforeAfterTestAttribute
{
    private readonly System.Collections.Concurrent.ConcurrentDictionary<string, double> _at = new();
    private static double Now => System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;

    public override void Before(MethodInfo methodUnderTest, Xunit.v3.IXunitTest test) => _at[test.UniqueID] = Now;

    public override void After(MethodInfo methodUnderTest, Xunit.v3.IXunitTest test)
    {
        if (Environment.GetEnvironmentVariable("CPU_OUT") is { } f)
            File.AppendAllText(
                f,
                FormattableString.Invariant(
                    $"{Now - _at[test.UniqueID]:F3} {methodUnderTest.DeclaringType!.Name}.{methodUnderTest.Name}\n"
                )
            );
    }
}
