namespace MarkReader.Imaging.Marks;

/// <summary>
/// Fills every dark area smaller than a given one up to the level at which it would run over into its surroundings. Larger dark areas, such as a
/// strip of tape or a shadow, stay exactly as they are.
/// </summary>
/// <remarks>Vincent, Morphological area openings and closings for grey-scale images (Shape in Picture, NATO ASI F126, 1994); by union-find in order of grey.</remarks>
internal static class AreaClosing
{
    /// <param name="values">A square picture, row by row.</param>
    /// <param name="size">Pixels on a side.</param>
    /// <param name="area">Dark areas with fewer pixels than this are filled.</param>
    public static float[] Fill(float[] values, int size, int area)
    {
        int n = values.Length;
        int[] order = [.. Enumerable.Range(0, n)];
        Array.Sort((float[])values.Clone(), order);
        int[] parent = new int[n];
        int[] count = new int[n];
        Array.Fill(parent, -1);
        foreach (int p in order)
        {
            parent[p] = p;
            count[p] = 1;
            int x = p % size, y = p / size;
            Join(x > 0, p - 1);
            Join(x < size - 1, p + 1);
            Join(y > 0, p - size);
            Join(y < size - 1, p + size);

            void Join(bool exists, int q)
            {
                if (!exists || parent[q] < 0)
                    return;
                int root = Root(q);
                if (root == p)
                    return;
                // A neighbour's basin that is still small, or level with this pixel, goes on growing through it; a full one is closed off.
                if (count[root] < area || values[root] == values[p])
                {
                    parent[root] = p;
                    count[p] += count[root];
                }
                else
                {
                    count[p] = area;
                }
            }
        }

        // From the brightest down: a root keeps its own level, the rest take their root's.
        float[] filled = new float[n];
        for (int i = n - 1; i >= 0; i--)
        {
            int p = order[i];
            filled[p] = parent[p] == p ? values[p] : filled[parent[p]];
        }

        return filled;

        int Root(int p)
        {
            while (parent[p] != p)
            {
                parent[p] = parent[parent[p]];
                p = parent[p];
            }

            return p;
        }
    }
}
