using System.Reflection;
using Dripwright.Engine.Phrases;
using Dripwright.Language.Report;

namespace Dripwright.Engine.Tests.Findings;

/// <summary>Every measured value of plan.json is named with what it is and with the unit that it stands in.</summary>
public sealed class MeasuredUnitTests
{
    public static TheoryData<string, string, string> Measures =>
        new()
        {
            { nameof(Measured.Length), "length", "m" },
            { nameof(Measured.Mark), "length", "m" },
            { nameof(Measured.Shift), "length", "m" },
            { nameof(Measured.Size), "length", "m" },
            { nameof(Measured.Head), "length", "m" },
            { nameof(Measured.Tool), "length", "m" },
            { nameof(Measured.Millimetres), "length", "m" },
            { nameof(Measured.Opening), "length", "m" },
            { nameof(Measured.Volume), "volume", "m3" },
            { nameof(Measured.MeasuredOut), "volume", "m3" },
            { nameof(Measured.Flow), "flow", "m3/s" },
            { nameof(Measured.Velocity), "velocity", "m/s" },
            { nameof(Measured.Pressure), "pressure", "Pa" },
            { nameof(Measured.FloorLoad), "pressure", "Pa" },
            { nameof(Measured.Slope), "slope", "" },
            { nameof(Measured.Share), "share", "" },
            { nameof(Measured.Percent), "share", "" },
            { nameof(Measured.Number), "ratio", "" },
            { nameof(Measured.PH), "ph", "" },
            { nameof(Measured.Force), "force", "N" },
            { nameof(Measured.Newtons), "force", "N" },
            { nameof(Measured.NewtonMetres), "moment", "N m" },
            { nameof(Measured.Mass), "mass", "kg" },
            { nameof(Measured.Weighed), "mass", "kg" },
            { nameof(Measured.Power), "power", "W" },
            { nameof(Measured.Voltage), "voltage", "V" },
            { nameof(Measured.Current), "current", "A" },
            { nameof(Measured.Time), "duration", "s" },
            { nameof(Measured.Days), "duration", "s" },
            { nameof(Measured.Temperature), "temperature", "K" },
            { nameof(Measured.Celsius), "temperature", "K" },
            { nameof(Measured.Warming), "temperature-difference", "K" },
            { nameof(Measured.Degrees), "angle", "rad" },
            { nameof(Measured.Conductivity), "conductivity", "S/m" },
            { nameof(Measured.Ec), "conductivity", "S/m" },
            { nameof(Measured.Concentration), "concentration", "kg/m3" },
            { nameof(Measured.GramsPerLitre), "concentration", "kg/m3" },
            { nameof(Measured.Millimoles), "amount-concentration", "mol/m3" },
            { nameof(Measured.Milliequivalents), "charge-concentration", "mol/m3" },
        };

    [Theory]
    [MemberData(nameof(Measures))]
    public void A_value_is_named_with_what_it_measures_and_its_unit(string made, string quantity, string unit)
    {
        var factory = typeof(Measured).GetMethod(made)!;
        object[] values = [.. factory.GetParameters().Select(_ => (object)1.5)];
        var measured = (Measured)factory.Invoke(null, values)!;
        Assert.Equal(1.5, measured.Value);
        Assert.Equal((quantity, unit), (PlanJson.Quantity(measured), PlanJson.UnitOf(measured)));
    }

    [Fact]
    public void No_way_of_making_a_value_is_left_out()
    {
        var all = typeof(Measured)
            .GetMethods(BindingFlags.Public | BindingFlags.Static)
            .Where(method => method.ReturnType == typeof(Measured))
            .Select(method => method.Name);
        Assert.Empty(all.Except(Measures.Select(row => row.Data.Item1)));
    }
}
