namespace NightWatch.EndToEnd.Architecture;

/// <summary>
/// A type by the project, the folder and the name it is compiled under; a nested or generated type counts as its outermost one.
/// </summary>
/// <param name="Project">The project: the first two parts of the namespace, "NightWatch.Store".</param>
/// <param name="Folder">The namespace, which is the folder in the project.</param>
/// <param name="Name">The type's own name.</param>
public sealed record TypeNode(string Project, string Folder, string Name)
{
    /// <summary>
    /// The node of a type; null where it is not ours: a library's, or one that a generator puts into a namespace of its own.
    /// </summary>
    public static TypeNode? Of(string folder, string name)
    {
        var parts = folder.Split('.');
        return parts.Length >= 2 && parts[0] == "NightWatch" ? new TypeNode($"{parts[0]}.{parts[1]}", folder, name) : null;
    }

    public override string ToString() => $"{Folder}.{Name}";
}

/// <summary>One type names another, anywhere in what is compiled.</summary>
public sealed record TypeUse(TypeNode From, TypeNode To);
