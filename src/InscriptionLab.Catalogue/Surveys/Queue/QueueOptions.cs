using System;

namespace InscriptionLab.Surveys.Queue;

/// <summary>How a survey over several machines uses its queue.</summary>
public sealed record QueueOptions
{
    /// <summary>Gets the beginning of the queues' names; surveys with other names do not touch each other.</summary>
    /// <value>Default inscriptionlab.</value>
    public string Name { get; init; } = "inscriptionlab";

    /// <summary>Gets how often the broker hands out a photo whose worker died before it is put aside.</summary>
    /// <value>Default 25, as for a survey on one machine: a low number would put sound photos aside where workers are killed often.</value>
    public int MostDeliveries { get; init; } = 25;

    /// <summary>Gets how many photos may be on their way to the broker without its confirmation.</summary>
    /// <value>Default 200: enough to hide the way to the broker, little to send again after a break.</value>
    public int Unconfirmed { get; init; } = 200;

    /// <summary>Gets how long is waited before broker or database are tried again.</summary>
    /// <value>Default 1 s.</value>
    public TimeSpan Wait { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>Gets how long a queue must be empty before a worker that should end then ends.</summary>
    /// <value>Default 3 s.</value>
    public TimeSpan Quiet { get; init; } = TimeSpan.FromSeconds(3);

    /// <summary>Gets how often a database that answers may refuse one photo before the photo is put aside.</summary>
    /// <value>Default 5.</value>
    public int MostRefusals { get; init; } = 5;

    /// <summary>Gets the queue of photos.</summary>
    internal string Photos => Name + ".photos";

    /// <summary>Gets the queue of photos that were put aside, each with its reason.</summary>
    internal string Aside => Name + ".aside";
}
