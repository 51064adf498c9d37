using Xunit;

namespace InscriptionLab.Catalogue.Tests.Services;

/// <summary>Tests that share one PostgreSQL server and one RabbitMQ broker.</summary>
[CollectionDefinition(Name)]
public sealed class PostgresTests : ICollectionFixture<PostgresServer>, ICollectionFixture<RabbitServer>
{
    internal const string Name = "PostgreSQL";
}
