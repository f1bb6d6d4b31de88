using Dripwright.Engine.Parts;

namespace Dripwright.Language.Report;

/// <content>Parts, cuts and holes.</content>
public static partial class PlanJson
{
    private static void WriteParts(UnitJson json, PartsPlan parts, PlanWords told)
    {
        json.List(
            "parts",
            parts.Lines,
            line =>
            {
                json.Text("part", line.Part);
                json.Text("name", told.Of(line.Name));
                json.Text("section", line.Section);
                json.Text("where", told.Of(line.Where));
                json.Count("needed", line.Needed);
                json.Count("spares", line.Spares);
                json.Count("onHand", line.OnHand);
                json.Count("buy", line.Buy);
                json.Count("packs", line.Packs);
                json.Count("packSize", line.PackSize);
                json.Metres("eachLength", line.EachLength);
                json.Valued("price", line.Price, parts.Currency);
                json.Yes("inventedPrice", line.InventedPrice);
                json.Text("unit", line.Unit);
                json.Text("note", told.Of(line.Note));
            }
        );
        json.Object(
            "cost",
            () =>
            {
                json.Valued("known", parts.Cost.Known, parts.Currency);
                json.Count("linesPriced", parts.Cost.LinesPriced);
                json.Count("linesUnpriced", parts.Cost.LinesUnpriced);
                json.Yes("anyInvented", parts.Cost.AnyInvented);
                json.Object(
                    "nutrients",
                    () =>
                    {
                        json.Valued("known", parts.NutrientsCost.Known, parts.Currency);
                        json.Count("linesPriced", parts.NutrientsCost.LinesPriced);
                        json.Count("linesUnpriced", parts.NutrientsCost.LinesUnpriced);
                    }
                );
            }
        );
        json.List(
            "oftenForgotten",
            parts.Forgotten,
            thing =>
            {
                json.Text("name", told.Of(thing.Name));
                json.Text("why", told.Of(thing.Why));
            }
        );
        json.List("cuts", parts.Cuts, cut => WriteCut(json, cut, parts.Currency));
        json.Texts("cutTroubles", parts.CutTroubles.Select(trouble => told.Of(trouble.What)));
        json.List(
            "holes",
            parts.Holes,
            hole =>
            {
                json.Text("piece", hole.Piece);
                json.Text("run", hole.Run);
                json.Count("hole", hole.Number);
                json.Count("row", hole.Row);
                json.Count("pot", hole.Pot);
                json.Metres("fromEnd", hole.FromEnd);
                json.Metres("step", hole.Step);
                json.Millimetres("diameter", hole.Diameter);
                json.Text("tool", told.Of(hole.Tool));
                json.Text("face", EnumWords.Of(hole.Face));
            }
        );
        json.List(
            "potHoles",
            parts.PotHoles,
            hole =>
            {
                json.Text("potKind", hole.Pot);
                json.Count("count", hole.Count);
                json.Metres("height", hole.Height);
                json.Millimetres("diameter", hole.Diameter);
                json.Text("tool", told.Of(hole.Tool));
            }
        );
    }

    private static void WriteCut(UnitJson json, CutPlan cut, string currency)
    {
        json.Text("material", cut.Material);
        json.Metres("bought", cut.BoughtLength);
        json.Metres("used", cut.UsedLength);
        json.Metres("waste", cut.Waste);
        json.Share("waste", cut.WasteShare);
        json.Valued("price", cut.Price, currency);
        var unit = cut.Measure == PurchaseMeasure.Length ? "m" : currency;
        json.Valued("purchase", cut.Purchase, unit);
        json.Valued("lowerBound", cut.LowerBound, unit);
        json.Yes("provenOptimal", cut.ProvenOptimal);
        json.Yes("longestLeftoverProven", cut.LongestLeftoverProven);
        json.Text("method", EnumWords.Of(cut.Method));
        json.Count("setUps", cut.SetUps);
        json.MetresEach("leftovers", cut.Leftovers);
        json.List(
            "purchases",
            cut.Purchases,
            buy =>
            {
                json.Metres("length", buy.Length);
                json.Count("count", buy.Count);
            }
        );
        json.List(
            "stocks",
            cut.Stocks,
            stock =>
            {
                json.Text("onHandLabel", stock.OnHandLabel ?? "");
                json.Yes("bought", stock.IsBought);
                json.Metres("length", stock.Length);
                json.Count("cuts", stock.Cuts);
                json.Metres("leftover", stock.Leftover);
                json.Yes("leftoverUsable", stock.LeftoverUsable);
                json.List(
                    "pieces",
                    stock.Pieces,
                    piece =>
                    {
                        json.Text("label", piece.Label);
                        json.Metres("start", piece.Start);
                        json.Metres("length", piece.Length);
                    }
                );
            }
        );
        json.List(
            "kerfTraps",
            cut.KerfTraps,
            trap =>
            {
                json.Metres("pieceLength", trap.PieceLength);
                json.Metres("stockLength", trap.StockLength);
                json.Count("withoutKerf", trap.WithoutKerf);
                json.Count("withKerf", trap.WithKerf);
                json.Millimetres("shortenBy", trap.ShortenBy);
            }
        );
    }
}
