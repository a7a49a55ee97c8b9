namespace PodLayout.Seats;

/// <summary>What a place of the board lacks for a pod to stand there, the easiest to mend first.</summary>
internal enum BoardLack
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A working port inside its lower seal.</summary>
    Port,

    /// <summary>A plug in a port under its seal.</summary>
    StuckPort,

    /// <summary>Room beside a pin, a stop, a damaged spot or one to be avoided.</summary>
    Obstacle,

    /// <summary>Usable area under the whole body.</summary>
    UsableArea,
}
