namespace PodLayout.JsonFiles;

/// <summary>
/// Marks a form whose lengths may be given in inches as well: for each member <c>xMm</c> there is a member <c>xIn</c>, and one
/// of the two is given. Shops mix the systems (a quarter-inch groove on a pitch of 30 mm), and a converted number is a misread one.
/// </summary>
[AttributeUsage(AttributeTargets.Class)]
internal sealed class InchesTooAttribute : Attribute;
