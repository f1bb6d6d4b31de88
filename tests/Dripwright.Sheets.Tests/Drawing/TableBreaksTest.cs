using Dripwright.Sheets.Drawing;
using Dripwright.Sheets.Model;

namespace Dripwright.Sheets.Tests.Drawing;

public sealed class TableBreaksTest
{
    [Fact]
    public void No_sheet_has_fewer_than_three_rows_of_a_table()
    {
        // Every filling from none to a full sheet, and tables of all lengths.
        for (var fill = 0; fill < 60; fill += 3)
        {
            for (var rows = 3; rows < 60; rows += 4)
            {
                var table = new Table(new Column("Row"));
                for (var i = 0; i < rows; i++)
                {
                    table.Row("row");
                }

                var drafts = new Flow(Paper.A4, "Table").Space(fill * 4).Table(table).Build();
                var counts = drafts.Select(d => SheetText.Of(d.Elements).Count(t => t.Text.Content == "row")).ToList();
                Assert.Equal(rows, counts.Sum());
                Assert.DoesNotContain(counts, c => c is 1 or 2);
            }
        }
    }

    [Fact]
    public void The_last_sheet_never_holds_a_few_lines_only()
    {
        for (var lines = 1; lines < 120; lines++)
        {
            var flow = new Flow(Paper.A4, "Steps");
            for (var i = 0; i < lines; i++)
            {
                flow.Step("Do it.");
            }

            var last = flow.Build()[^1];
            var steps = SheetText.Of(last.Elements).Count(t => t.Text.Content == "Do it.");
            Assert.True(steps >= Math.Min(lines, 4), $"{Wording.Count(steps)} of {Wording.Count(lines)}");
        }
    }
}
