using System.Globalization;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>
/// Reads the d attribute of a path (SVG 2, section 9.3), in double precision and with the flags of arcs written without
/// blanks. What follows an error is not drawn, as the standard says; the error is reported.
/// </summary>
internal sealed class SvgPathData
{
    private readonly string _text;
    private readonly List<SvgSubpath> _subpaths = [];
    private int _at;
    private Point3 _here;
    private Point3 _start;
    private Point3 _handle;

    private SvgPathData(string text) => _text = text;

    /// <summary>The subpaths, and what is wrong with the text; null when nothing is.</summary>
    public static (List<SvgSubpath> Subpaths, string? Error) Read(string text)
    {
        var data = new SvgPathData(text);
        var error = data.Read();
        return (data._subpaths, error);
    }

    private string? Read()
    {
        var last = '\0';
        while (SkipBlanks(commas: false))
        {
            var at = _at;
            var command = _text[_at++];
            if (!"MmLlHhVvCcSsQqTtAaZz".Contains(command, StringComparison.Ordinal))
                return $"found '{command}' at character {at + 1}, where a path command was expected";
            if (last == '\0' && command is not ('M' or 'm'))
                return $"it begins with '{command}', not with M";
            var first = true;
            do
            {
                if (!Step(first ? command : Repeated(command), last))
                    return $"a number is missing or damaged at character {_at + 1}";
                last = command;
                first = false;
            }
            while (command is not ('Z' or 'z') && StartsNumber());
        }

        return null;
    }

    /// <summary>Further pairs after a move are lines.</summary>
    private static char Repeated(char command) => command switch { 'M' => 'L', 'm' => 'l', _ => command };

    private bool Step(char command, char last)
    {
        var relative = char.IsAsciiLetterLower(command);
        var here = _here;
        var reflects = char.ToUpperInvariant(last) switch
        {
            'C' or 'S' => char.ToUpperInvariant(command) == 'S',
            'Q' or 'T' => char.ToUpperInvariant(command) == 'T',
            _ => false,
        };
        var mirrored = reflects ? here * 2 - _handle : here;
        switch (char.ToUpperInvariant(command))
        {
            case 'Z':
                if (_subpaths.Count > 0)
                    _subpaths[^1].Close();
                _here = _start;
                return true;
            case 'M':
                return Point(relative, out var m) && Begin(m);
            case 'L':
                return Point(relative, out var l) && Line(l);
            case 'H':
                return Number(out var x) && Line(here with { X = x + (relative ? here.X : 0) });
            case 'V':
                return Number(out var y) && Line(here with { Y = y + (relative ? here.Y : 0) });
            case 'C':
                return Point(relative, out var c1) && Point(relative, out var c2) && Point(relative, out var c) && Bezier(c2, here, c1, c2, c);
            case 'S':
                return Point(relative, out var s2) && Point(relative, out var s) && Bezier(s2, here, mirrored, s2, s);
            case 'Q':
                return Point(relative, out var q1) && Point(relative, out var q) && Bezier(q1, here, q1, q);
            case 'T':
                return Point(relative, out var t) && Bezier(mirrored, here, mirrored, t);
            default:
                return Arc(relative);
        }
    }

    private bool Begin(Point3 at)
    {
        _here = at;
        _start = at;
        _subpaths.Add(new(at));
        return true;
    }

    /// <summary>After a Z without a move, the next subpath begins where the last began.</summary>
    private SvgSubpath Open()
    {
        if (_subpaths[^1].IsClosed)
            _subpaths.Add(new(_here));
        return _subpaths[^1];
    }

    private bool Line(Point3 to)
    {
        Open().AddLine(to);
        _here = to;
        return true;
    }

    private bool Bezier(Point3 handle, params Point3[] controls)
    {
        Open().Add(SplineCurve.Bezier(controls), controls[^1]);
        _handle = handle;
        _here = controls[^1];
        return true;
    }

    private bool Arc(bool relative)
    {
        if (!Number(out var rx) || !Number(out var ry) || !Number(out var turn) || !Flag(out var large) || !Flag(out var sweep) || !Point(relative, out var to))
            return false;
        if (SvgArc.Between(_here, to, rx, ry, turn, large, sweep) is { } arc)
            Open().Add(arc, to);
        else if (to != _here)
            Open().AddLine(to);
        _here = to;
        return true;
    }

    private bool Point(bool relative, out Point3 point)
    {
        point = default;
        if (!Number(out var x) || !Number(out var y))
            return false;
        point = new(x, y, 0);
        if (relative)
            point += _here;
        return true;
    }

    private bool SkipBlanks(bool commas)
    {
        var comma = !commas;
        while (_at < _text.Length && (char.IsWhiteSpace(_text[_at]) || (!comma && _text[_at] == ',')))
            comma |= _text[_at++] == ',';
        return _at < _text.Length;
    }

    private bool StartsNumber() =>
        SkipBlanks(commas: true) && (char.IsAsciiDigit(_text[_at]) || _text[_at] is '+' or '-' or '.');

    private bool Flag(out bool flag)
    {
        flag = false;
        if (!SkipBlanks(commas: true) || _text[_at] is not ('0' or '1'))
            return false;
        flag = _text[_at++] == '1';
        return true;
    }

    private bool Number(out double number)
    {
        number = 0;
        if (!SkipBlanks(commas: true))
            return false;
        var end = _at;
        if (_text[end] is '+' or '-')
            end++;
        end = Digits(end);
        if (end < _text.Length && _text[end] == '.')
            end = Digits(end + 1);
        if (end < _text.Length && _text[end] is 'e' or 'E')
        {
            var sign = end + 1 < _text.Length && _text[end + 1] is '+' or '-' ? end + 2 : end + 1;
            end = Digits(sign) > sign ? Digits(sign) : end;
        }

        if (!double.TryParse(_text.AsSpan(_at, end - _at), NumberStyles.Float, CultureInfo.InvariantCulture, out number) || !double.IsFinite(number))
            return false;
        _at = end;
        return true;
    }

    private int Digits(int at)
    {
        while (at < _text.Length && char.IsAsciiDigit(_text[at]))
            at++;
        return at;
    }
}
