using Dripwright.Sheets.Screen;
using Dripwright.Workbench.Editing;
using Dripwright.Workbench.Rigs;

namespace Dripwright.Workbench.Tests.Rigs;

public sealed class DrawingLookTests
{
    private static readonly Stage s_row = Stage.Of("row");
    private static readonly Stage s_cropWire = Stage.Of("crop-wire");

    [Fact]
    public void Whatever_is_looked_at_comes_back_from_its_address()
    {
        DrawnView?[] views = [null, .. Enum.GetValues<DrawnView>()];
        foreach (var view in views)
        {
            foreach (var colour in Enum.GetValues<ScreenColour>())
            {
                foreach (var row in (int[])[1, 2, 40])
                {
                    var look = new DrawingLook(view, row, colour);
                    var said = System.Web.HttpUtility.ParseQueryString(look.Query);
                    Assert.Equal(look, DrawingLook.Of(said["view"], said["row"], said["colour"]));
                }
            }
        }

        Assert.Equal("", new DrawingLook().Query);
    }

    [Theory]
    [InlineData("sideways", "0", "red")]
    [InlineData("1", "-2", "2")]
    [InlineData("Plan ", "two", "FLOW")]
    [InlineData("", "99999999999999", "")]
    public void A_word_that_says_nothing_is_passed_over(string view, string row, string colour)
    {
        Assert.Equal(new DrawingLook(), DrawingLook.Of(view, row, colour));
    }

    [Fact]
    public void A_view_that_a_room_does_not_have_shows_what_the_room_shows_first()
    {
        Assert.Equal(DrawnView.Plan, new DrawingLook(DrawnView.Wire).In(s_row));
        Assert.Equal(DrawnView.Plan, new DrawingLook().In(s_row));
        Assert.Equal(DrawnView.Wire, new DrawingLook().In(s_cropWire));
        Assert.Equal(DrawnView.Front, new DrawingLook(DrawnView.Front).In(s_cropWire));
        Assert.Equal(1, new DrawingLook(Row: 9).RowOf(2));
        Assert.Equal(2, new DrawingLook(Row: 2).RowOf(2));
    }
}
