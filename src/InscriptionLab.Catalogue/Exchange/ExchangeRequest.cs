using System;

namespace InscriptionLab.Exchange;

/// <summary>What is to be handed on, and how.</summary>
/// <param name="Format">One of <see cref="ExchangeFolder.Formats"/>.</param>
/// <param name="ObjectKey">One object; null for all.</param>
/// <param name="Out">Folder to write to.</param>
/// <param name="BaseAddress">Address under which it will be published.</param>
/// <param name="Licence">Licence of what is handed on; null where the user gives none.</param>
public sealed record ExchangeRequest(string Format, string? ObjectKey, string Out, Uri BaseAddress, string? Licence);
