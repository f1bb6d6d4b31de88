namespace Dripwright.Engine.Water;

/// <summary>How even a row's watering is, in the five words field evaluation uses.</summary>
public enum UniformityClass
{
    /// <summary>Most of the difference left is the making of the emitters.</summary>
    Excellent,

    /// <summary>Good practice.</summary>
    Good,

    /// <summary>Plants will differ; look for the cause.</summary>
    Fair,

    /// <summary>Some plants get far less than others.</summary>
    Poor,

    /// <summary>Not fit to grow on.</summary>
    Unacceptable,
}

/// <summary>How alike emitters of one kind are when they leave the maker, by coefficient of variation.</summary>
public enum ManufactureClass
{
    /// <summary>Hardly any difference.</summary>
    Excellent,

    /// <summary>Usual for emitters placed one by one; for emitting pipe up to 20 %.</summary>
    Average,

    /// <summary>Just usable, with several emitters to a plant.</summary>
    Marginal,

    /// <summary>Poor.</summary>
    Poor,

    /// <summary>Not to be used.</summary>
    Unacceptable,
}
