namespace PodLayout.Woods;

/// <summary>Elastic ratios at about 12 % moisture: L along the grain, R radial, T tangential.</summary>
/// <param name="TOverL">ET/EL.</param>
/// <param name="ROverL">ER/EL.</param>
/// <param name="LrOverL">GLR/EL.</param>
/// <param name="LtOverL">GLT/EL; null where the table has none.</param>
/// <param name="NuLr">Poisson's ratio, load along L and strain along R.</param>
/// <param name="NuLt">Poisson's ratio, load along L and strain along T.</param>
public sealed record ElasticRatios(Figure TOverL, Figure ROverL, Figure LrOverL, Figure? LtOverL, Figure NuLr, Figure NuLt);
