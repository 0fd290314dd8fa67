namespace MarkReader.Cameras.Boards;

/// <summary>Where a board stands before the camera: X = R·p + t, camera frame x right, y down, z ahead (mm).</summary>
public sealed class BoardPose
{
    private readonly double[] _r;
    private readonly double[] _t;

    /// <param name="rotation">Nine elements by rows: board to camera.</param>
    /// <param name="translation">The board's origin in the camera frame, mm.</param>
    public BoardPose(double[] rotation, double[] translation) => (_r, _t) = (rotation, translation);

    /// <summary>The board's origin in the camera frame, mm.</summary>
    public (double X, double Y, double Z) Origin => (_t[0], _t[1], _t[2]);

    /// <summary>Element of the rotation.</summary>
    public double this[int row, int column] => _r[(3 * row) + column];

    /// <summary>R·p, before the translation.</summary>
    public (double X, double Y, double Z) Turned(double x, double y, double z) => (
        (_r[0] * x) + (_r[1] * y) + (_r[2] * z),
        (_r[3] * x) + (_r[4] * y) + (_r[5] * z),
        (_r[6] * x) + (_r[7] * y) + (_r[8] * z));

    /// <summary>Turned by a small rotation vector in the camera frame (Rodrigues), then moved.</summary>
    public BoardPose Moved(double wx, double wy, double wz, double tx, double ty, double tz)
    {
        double angle = Math.Sqrt((wx * wx) + (wy * wy) + (wz * wz));
        double a = angle < 1e-9 ? 1 : Math.Sin(angle) / angle;
        double b = angle < 1e-9 ? 0.5 : (1 - Math.Cos(angle)) / (angle * angle);
        double[] turn =
        [
            1 - (b * ((wy * wy) + (wz * wz))), (b * wx * wy) - (a * wz), (b * wx * wz) + (a * wy),
            (b * wx * wy) + (a * wz), 1 - (b * ((wx * wx) + (wz * wz))), (b * wy * wz) - (a * wx),
            (b * wx * wz) - (a * wy), (b * wy * wz) + (a * wx), 1 - (b * ((wx * wx) + (wy * wy))),
        ];
        double[] r = new double[9];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
                r[(3 * i) + j] = (turn[3 * i] * _r[j]) + (turn[(3 * i) + 1] * _r[3 + j]) + (turn[(3 * i) + 2] * _r[6 + j]);
        }

        return new(r, [_t[0] + tx, _t[1] + ty, _t[2] + tz]);
    }

    /// <summary>Cosine of the angle between the board's normal and the line of sight to its origin.</summary>
    public double CosineOfTilt
    {
        get
        {
            double d = Math.Sqrt((_t[0] * _t[0]) + (_t[1] * _t[1]) + (_t[2] * _t[2]));
            return Math.Abs((_r[2] * _t[0]) + (_r[5] * _t[1]) + (_r[8] * _t[2])) / d;
        }
    }
}
