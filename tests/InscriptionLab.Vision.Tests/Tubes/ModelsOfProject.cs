using System;
using System.IO;
using InscriptionLab.Vision.Models;

namespace InscriptionLab.Vision.Tests.Tubes;

/// <summary>The models folder of the project, as it is published.</summary>
internal static class ModelsOfProject
{
    internal static ModelShelf Shelf()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "InscriptionLab.sln")))
        {
            folder = folder.Parent;
        }

        return new ModelShelf(Path.Combine(folder?.FullName ?? throw new InvalidOperationException("The tests run inside the project's folder."), "models"));
    }
}
