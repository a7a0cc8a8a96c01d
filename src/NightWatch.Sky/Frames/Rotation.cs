namespace NightWatch.Sky.Frames;

/// <summary>A rotation of axes: multiplying a vector by it gives the same vector's components in the new axes.</summary>
/// <param name="X">New x axis in the old frame.</param>
/// <param name="Y">New y axis in the old frame.</param>
/// <param name="Z">New z axis in the old frame.</param>
public readonly record struct Rotation(Vector3D X, Vector3D Y, Vector3D Z)
{
    /// <summary>The inverse.</summary>
    public Rotation Transposed => new(new(X.X, Y.X, Z.X), new(X.Y, Y.Y, Z.Y), new(X.Z, Y.Z, Z.Z));

    /// <summary>Turns the axes about x, counter-clockwise seen from +x.</summary>
    public static Rotation AboutX(double angleRad)
    {
        var (sin, cos) = Math.SinCos(angleRad);
        return new(new(1, 0, 0), new(0, cos, sin), new(0, -sin, cos));
    }

    /// <summary>Turns the axes about z, counter-clockwise seen from +z.</summary>
    public static Rotation AboutZ(double angleRad)
    {
        var (sin, cos) = Math.SinCos(angleRad);
        return new(new(cos, sin, 0), new(-sin, cos, 0), new(0, 0, 1));
    }

    /// <summary>A vector in the new axes.</summary>
    public static Vector3D operator *(Rotation r, Vector3D v) => new(r.X.Dot(v), r.Y.Dot(v), r.Z.Dot(v));

    /// <summary>The right rotation first, then the left one.</summary>
    public static Rotation operator *(Rotation second, Rotation first)
    {
        var inverse = first.Transposed;
        return new(inverse * second.X, inverse * second.Y, inverse * second.Z);
    }
}
