namespace PodLayout.Holding;

/// <summary>
/// A spot where the part is borne: it can be pushed there along a normal, never pulled, and resists sliding by at most the
/// friction coefficient times that push.
/// </summary>
/// <param name="Normal">Wrench of a push of 1 N.</param>
/// <param name="SlideA">Wrench of 1 N of friction along a first direction across the normal.</param>
/// <param name="SlideB">Wrench of 1 N of friction along the direction across both.</param>
/// <param name="Friction">Coefficient of friction.</param>
public readonly record struct Contact(Wrench Normal, Wrench SlideA, Wrench SlideB, double Friction)
{
    /// <summary>A spot on the underside: pushed at one place, rubbing at another (the same for a bare point).</summary>
    /// <param name="x">X of the push, mm.</param>
    /// <param name="y">Y of the push, mm.</param>
    /// <param name="frictionX">X of the friction, mm.</param>
    /// <param name="frictionY">Y of the friction, mm.</param>
    /// <param name="friction">Coefficient of friction.</param>
    public static Contact Below(double x, double y, double frictionX, double frictionY, double friction) => new(
        Wrench.Of(new(0, 0, 1), x, y, 0),
        Wrench.Of(new(1, 0, 0), frictionX, frictionY, 0),
        Wrench.Of(new(0, 1, 0), frictionX, frictionY, 0),
        friction);

    /// <summary>
    /// How freely a motion leaves this spot, mm: below 0 the spot stands in its way, by pushing or by rubbing.
    /// </summary>
    public double Freedom(Motion motion)
    {
        double a = motion.Work(SlideA), b = motion.Work(SlideB);
        return motion.Work(Normal) - Friction * Math.Sqrt(a * a + b * b);
    }

    /// <summary>The same where each newton of friction has a price; and whether friction is worth it there.</summary>
    public (double Freedom, bool Rubs) Freedom(Motion motion, double price)
    {
        double a = motion.Work(SlideA), b = motion.Work(SlideB);
        var slide = Math.Sqrt(a * a + b * b) - price;
        return (motion.Work(Normal) - (slide > 0 ? Friction * slide : 0), slide > 0);
    }

    /// <summary>The push of 1 N with the friction that stands most in the way of a motion.</summary>
    public Wrench Hardest(Motion motion)
    {
        double a = motion.Work(SlideA), b = motion.Work(SlideB);
        var slide = Math.Sqrt(a * a + b * b);
        return slide == 0 ? Normal : Normal + SlideA * (-Friction * a / slide) + SlideB * (-Friction * b / slide);
    }
}
