namespace InscriptionLab.Reliefs;

/// <summary>What several lamps told of a surface.</summary>
public enum ReliefKind
{
    /// <summary>Full normals: the lamps stood in three or more directions that do not lie in one plane.</summary>
    Normals,

    /// <summary>Slopes in one direction only, that in which the lamps differ; strokes that run along it do not show.</summary>
    OneDirection,
}
