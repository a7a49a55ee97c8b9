using PodLayout.Geometry;

namespace PodLayout.Shops;

/// <summary>A drilled hole that brings vacuum to the board's face; plugged unless a pod stands on it.</summary>
/// <param name="Name">Short name that stands on the card, for instance "5-3" (column and row of its cell, counted from 1).</param>
/// <param name="Centre">Board coordinates, mm.</param>
/// <param name="State">Whether it works.</param>
public sealed record Port(string Name, Point2 Centre, PortState State);
