using Dripwright.Workbench.Editing;

namespace Dripwright.Workbench.Tests.Editing;

public sealed class FormFieldTests
{
    [Theory]
    [InlineData("nutrients.ph", InputKind.Number)]
    [InlineData("nutrients.water.ph", InputKind.Number)]
    [InlineData("nutrients.partsOfFeed", InputKind.Whole)]
    [InlineData("nutrients.strength", InputKind.Quantity)]
    [InlineData("pump.model", InputKind.Part)]
    public void A_field_gets_the_input_that_its_kind_needs(string path, InputKind kind) =>
        Assert.Equal(kind, FormField.At(path).Kind);

    [Theory]
    [InlineData("5.8", "5.8")]
    [InlineData("5,8", "5.8")]
    [InlineData(" 12 ", "12")]
    [InlineData("2.40", "2.40")]
    [InlineData("1,000", null)]
    [InlineData("a lot", null)]
    [InlineData("", null)]
    public void What_is_typed_for_a_number_stands_in_the_file_without_quotes(string typed, string? file) =>
        Assert.Equal(file, FormField.Number(typed)?.ToJsonString());
}
