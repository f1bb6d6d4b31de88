using Dripwright.Engine.Rigs;

namespace Dripwright.Engine.Proposing;

/// <summary>All of a rig but its pump, kind of emitter and strainer: what decides where everything stands.</summary>
/// <param name="Index">Place in the order of trying; the earlier wins where all else is equal.</param>
/// <param name="Pattern">Rows and pots.</param>
/// <param name="Entry">Where the feed line enters.</param>
/// <param name="Exit">Where the drain leaves.</param>
/// <param name="Line">Feed line.</param>
/// <param name="Header">Header.</param>
/// <param name="Drain">Drain pipe.</param>
/// <param name="Outlet">Pot outlet.</param>
/// <param name="Tank">Reservoir.</param>
/// <param name="Emitters">Emitters per pot.</param>
/// <param name="Gravity">True without a pump, the tank on its shelf.</param>
internal sealed record Frame(
    int Index,
    RowPattern Pattern,
    FeedEntry Entry,
    DrainExit Exit,
    string Line,
    string Header,
    string Drain,
    string Outlet,
    string Tank,
    int Emitters,
    bool Gravity
);
