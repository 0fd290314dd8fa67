namespace MarkReader.Imaging.Marks;

/// <summary>Fills the gaps of a picture with the smoothest surface that meets their rims: Laplace's equation, by successive over-relaxation.</summary>
/// <remarks>Young, Iterative Solution of Large Linear Systems, 1971; the rims of gaps at the border are free.</remarks>
internal static class Membrane
{
    private const double Relaxation = 1.85;
    private const int Rounds = 150;

    /// <summary>Changes <paramref name="values"/> where <paramref name="gap"/> is true; what stands there is the start.</summary>
    public static void Span(float[] values, bool[] gap, int size)
    {
        int[] inside = [.. Enumerable.Range(0, values.Length).Where(i => gap[i])];
        for (int round = 0; round < Rounds; round++)
        {
            foreach (int i in inside)
            {
                int x = i % size, y = i / size;
                double sum = 0;
                int count = 0;
                if (x > 0)
                    (sum, count) = (sum + values[i - 1], count + 1);
                if (x < size - 1)
                    (sum, count) = (sum + values[i + 1], count + 1);
                if (y > 0)
                    (sum, count) = (sum + values[i - size], count + 1);
                if (y < size - 1)
                    (sum, count) = (sum + values[i + size], count + 1);
                values[i] += (float)(Relaxation * ((sum / count) - values[i]));
            }
        }
    }
}
