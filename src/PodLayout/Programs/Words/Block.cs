namespace PodLayout.Programs.Words;

/// <summary>The words of one line. One object serves all lines of a program, so that reading makes no garbage.</summary>
internal sealed class Block
{
    /// <summary>Letters of axes that move the tip.</summary>
    public const string Axes = "XYZ";

    private readonly double[] _values = new double[26];
    private uint _seen;

    /// <summary>Line of the program, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>Whether it begins with a slash.</summary>
    public bool HasSlash { get; set; }

    /// <summary>Whether it holds a program number (O or a colon).</summary>
    public bool HasProgramNumber { get; set; }

    /// <summary>The G words in tenths: G90.1 is 901.</summary>
    public List<int> G { get; } = new(8);

    /// <summary>The M words.</summary>
    public List<int> M { get; } = new(4);

    /// <summary>Whether there is nothing to do.</summary>
    public bool IsEmpty => _seen == 0 && G.Count == 0 && M.Count == 0;

    /// <summary>Whether any of X, Y and Z stands here.</summary>
    public bool HasAxis => Has('X') || Has('Y') || Has('Z');

    public void Clear(int line)
    {
        (Line, _seen, HasSlash, HasProgramNumber) = (line, 0, false, false);
        G.Clear();
        M.Clear();
    }

    public bool Has(char letter) => (_seen & (1u << (letter - 'A'))) != 0;

    public bool HasG(int tenths) => G.Contains(tenths);

    public bool HasM(int number) => M.Contains(number);

    /// <summary>The value of a word; 0 when it does not stand here.</summary>
    public double this[char letter] => Has(letter) ? _values[letter - 'A'] : 0;

    /// <summary>Sets a word; false when it stands here already.</summary>
    public bool Put(char letter, double value)
    {
        if (Has(letter))
        {
            return false;
        }

        _values[letter - 'A'] = value;
        _seen |= 1u << (letter - 'A');
        return true;
    }
}
