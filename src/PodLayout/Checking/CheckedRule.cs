namespace PodLayout.Checking;

/// <summary>The rules that a layout must keep, in the order in which they are told.</summary>
public enum CheckedRule
{
    /// <summary>The upper seal lies under sound wood, by the seal margin.</summary>
    SealInSoundWood,

    /// <summary>The body keeps the cut clearance from the outline and the holes.</summary>
    BodyClearOfCuts,

    /// <summary>No floor that does not bear the pod's vacuum lies inside its upper seal.</summary>
    FloorsBearVacuum,

    /// <summary>Bodies keep the pod gap from each other.</summary>
    PodsApart,

    /// <summary>The body's edges lie on the grooves that its column and row name.</summary>
    OnTheLattice,

    /// <summary>The body lies inside the usable area.</summary>
    InsideUsableArea,

    /// <summary>The body keeps its clearance from pins, stops, damaged spots and what the job says to avoid.</summary>
    ClearOfObstacles,

    /// <summary>The ports that pods are fed by are the ports to open, each for one pod.</summary>
    PortsListed,

    /// <summary>Each pod has as many ports as it needs.</summary>
    EnoughPorts,

    /// <summary>The ports to open work.</summary>
    PortsWork,

    /// <summary>A pod's ports lie inside its lower seal, by the port margin.</summary>
    PortsInsideSeal,

    /// <summary>No port that is open lies under the seal line of a pod that it does not feed.</summary>
    NoOpenPortUnderSeal,

    /// <summary>No more pods of a type than the shop has.</summary>
    Stock,

    /// <summary>Only pods that may be turned are.</summary>
    QuarterTurn,

    /// <summary>All pods have one height.</summary>
    OneHeight,

    /// <summary>The pods that the job keeps stand in the layout.</summary>
    KeptPodsStand,

    /// <summary>Every edge point is within its overhang limit of a pod, through the wood.</summary>
    EdgeWithinLimit,

    /// <summary>Every interior point is within the span limit of a pod, through the wood.</summary>
    InteriorWithinLimit,

    /// <summary>Every point of a thin floor is within their span limit of a pod, through the wood.</summary>
    FloorWithinLimit,

    /// <summary>A pod stands under each loose piece that pods are to hold.</summary>
    PiecesHeld,

    /// <summary>The pods of a loose piece lie about its centre of mass, where they are to.</summary>
    PiecesBalanced,

    /// <summary>The part's centre of mass lies inside the figure of its pods, so that it does not tip off before the vacuum is on.</summary>
    PartStands,

    /// <summary>The part is held against the cutter at the least factor.</summary>
    PartHeld,
}
