using System;

namespace InscriptionLab.Measures;

/// <summary>A vector in space in double precision; the unit is the owner's. The default value is the zero vector.</summary>
/// <param name="X">First coordinate.</param>
/// <param name="Y">Second coordinate.</param>
/// <param name="Z">Third coordinate.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>Gets the length, in the vector's own unit.</summary>
    public double Norm => Math.Sqrt(Dot(this));

    /// <summary>Adds two vectors.</summary>
    public static Vector3D operator +(Vector3D left, Vector3D right) => new(left.X + right.X, left.Y + right.Y, left.Z + right.Z);

    /// <summary>Subtracts one vector from another.</summary>
    public static Vector3D operator -(Vector3D left, Vector3D right) => new(left.X - right.X, left.Y - right.Y, left.Z - right.Z);

    /// <summary>Scales a vector.</summary>
    public static Vector3D operator *(Vector3D vector, double factor) => new(vector.X * factor, vector.Y * factor, vector.Z * factor);

    /// <summary>Gives the scalar product.</summary>
    public double Dot(Vector3D other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Gives the vector product.</summary>
    public Vector3D Cross(Vector3D other) => new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>Gives the unit vector of the same direction.</summary>
    /// <exception cref="InvalidOperationException">The vector has no length.</exception>
    public Vector3D Normalised() => Norm > 0 ? this * (1 / Norm) : throw new InvalidOperationException("A vector of no length has no direction.");
}
