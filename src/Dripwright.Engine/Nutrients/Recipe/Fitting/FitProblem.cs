namespace Dripwright.Engine.Nutrients.Recipe.Fitting;

/// <summary>
/// Minimise ½‖A·x - b‖² + c·x over x with 0 ≤ x ≤ u, E·x as it is at the start, and G·x ≤ h. Either A or c may be absent.
/// </summary>
/// <remarks>Rows are arrays of n numbers, n the number of unknowns. Rows of E and G are best near length 1.</remarks>
internal sealed record FitProblem
{
    public required int Unknowns { get; init; }

    /// <summary>Rows of A; none for a linear program.</summary>
    public double[][] Rows { get; init; } = [];

    /// <summary>b, as many as rows of A.</summary>
    public double[] Wanted { get; init; } = [];

    /// <summary>c; null for a pure least-squares fit.</summary>
    public double[]? Costs { get; init; }

    /// <summary>Rows of E: what must stay as it is at the start.</summary>
    public double[][] Kept { get; init; } = [];

    /// <summary>Rows of G.</summary>
    public double[][] Limited { get; init; } = [];

    /// <summary>h, as many as rows of G.</summary>
    public double[] Limits { get; init; } = [];

    /// <summary>u; infinite where there is none.</summary>
    public required double[] Most { get; init; }

    /// <summary>A start that holds all limits.</summary>
    public required double[] Start { get; init; }
}

/// <summary>The answer to a <see cref="FitProblem"/>.</summary>
/// <param name="X">The unknowns.</param>
/// <param name="Steps">Steps taken.</param>
/// <param name="Optimal">False where the step limit ended the search; <paramref name="X"/> still holds all limits.</param>
internal sealed record FitSolution(double[] X, int Steps, bool Optimal);
