using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Exchange;

/// <summary>One line of lettering in a data set.</summary>
/// <param name="Shown">The object.</param>
/// <param name="Photo">The photo.</param>
/// <param name="Line">The line.</param>
/// <param name="Picture">The line laid flat.</param>
/// <param name="Embedding">Its embedding.</param>
internal sealed record DatasetMark(ExchangeObject Shown, ExchangePhoto Photo, ExchangeLine Line, GrayImage Picture, ReadOnlyMemory<sbyte> Embedding);
