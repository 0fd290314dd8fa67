namespace MarkReader.Quantities;

/// <summary>The interval that holds a normal value with 95 % probability.</summary>
public static class Normal95
{
    /// <summary>Its half width over the standard deviation (JCGM 100:2008, Table G.2, infinite degrees of freedom).</summary>
    public const double Factor = 1.959963984540054;
}
