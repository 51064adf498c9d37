using System;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>A clock that is set forward and back by hand.</summary>
internal sealed class TurnedClock(DateTimeOffset now) : TimeProvider
{
    internal DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
