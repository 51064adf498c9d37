namespace InscriptionLab.Core.Tests.Evidence;

/// <summary>An invented house of the simulated world.</summary>
/// <param name="Name">Its name as it spells it.</param>
/// <param name="Style">Its usual lettering.</param>
/// <param name="From">First year.</param>
/// <param name="To">Last year.</param>
/// <param name="Address">Its address.</param>
/// <param name="ListedCopy">The copy's spelling that the list knows.</param>
/// <param name="Sightings">Further rows that the list has of it.</param>
internal sealed record SimulatedHouse(string Name, string Style, int From, int To, string Address, string ListedCopy, int Sightings);
