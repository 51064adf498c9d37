using Xunit;

namespace InscriptionLab.Catalogue.Tests.Services;

/// <summary>Tests that share one PostgreSQL server.</summary>
[CollectionDefinition(Name)]
public sealed class PostgresTests : ICollectionFixture<PostgresServer>
{
    internal const string Name = "PostgreSQL";
}
