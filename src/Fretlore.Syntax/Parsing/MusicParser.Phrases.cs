using System.Collections.Immutable;

namespace Fretlore.Syntax.Parsing;

/// <content>Phrases, events, notes, chords and marks: what is written without a blank between.</content>
internal sealed partial class MusicParser
{
    private PhraseSyntax Phrase()
    {
        var pieces = ImmutableArray.CreateBuilder<SyntaxNode>(1);
        while (true)
        {
            if (cursor.Current is ',' or ';')
            {
                pieces.Add(new JointSyntax(cursor.TakeSign()));
                if (!cursor.Touches) break;
            }
            if (AtEdge()) pieces.Add(new EdgeSyntax(cursor.Take(TokenKind.Word, cursor.Next + 2)));
            else if (Names.BeginsEvent(Rest)) pieces.Add(Event());
            else break;
            if (!cursor.Touches || cursor.Current is not (',' or ';')) break;
        }
        var phrase = new PhraseSyntax(pieces.DrainToImmutable());
        CheckPieces(phrase.Pieces);
        if (phrase.Pieces[^1] is EventSyntax) CheckEnd(phrase);
        return phrase;
    }

    private bool AtEdge() => Values.AtWord(cursor, "lo") || Values.AtWord(cursor, "hi");

    private void CheckPieces(ImmutableArray<SyntaxNode> pieces)
    {
        for (var i = 0; i < pieces.Length; i++)
        {
            if (pieces[i] is EdgeSyntax edge && !IsInPlace(pieces, i)) Findings.Add(SyntaxDiagnostics.EdgeOutOfPlace(edge.Span, edge.Word.Text));
        }
        if (pieces[^1] is JointSyntax last && (!last.IsGlide || pieces.Length == 1 || (cursor.Touches && !IsDelimiter(cursor.Current))))
        {
            Findings.Add(SyntaxDiagnostics.JointNeedsNote(last.Span, last.Sign.Text));
        }
    }

    /// <summary>An edge stands at either end of a phrase, with a glide between it and a note.</summary>
    private static bool IsInPlace(ImmutableArray<SyntaxNode> pieces, int edge) =>
        (edge == 0 && pieces is [_, JointSyntax { IsGlide: true }, EventSyntax, ..])
        || (edge == pieces.Length - 1 && pieces is [.., EventSyntax, JointSyntax { IsGlide: true }, _]);

    private static bool IsDelimiter(char c) => c is '|' or '{' or '}' or '(' or ')' or '"' or '[' or ']' or '@' or ',' or ';';

    /// <summary>After an event comes a blank, a joint or something that cannot be taken for a mark.</summary>
    private void CheckEnd(PhraseSyntax phrase)
    {
        if (!cursor.Touches) return;
        if (cursor.Is('@')) Findings.Add(SyntaxDiagnostics.PlaceAfterBracket(new TextSpan(cursor.Next, 1)));
        else if (Names.BeginsEvent(Rest) || IsAtTime()) Spaced(phrase);
    }

    private bool IsAtTime() => Names.IsTimeLetter(cursor.Current) && IsTime();

    private bool IsAtUnknownMark() =>
        cursor.Touches && !IsDelimiter(cursor.Current) && !Names.BeginsEvent(Rest) && !IsAtTime();

    private EventSyntax Event()
    {
        var grace = cursor.Is('g') ? cursor.TakeSign() : null;
        var stroke = cursor.Current is 'd' or 'u' ? cursor.TakeSign() : null;
        return new EventSyntax(grace, stroke, Sound());
    }

    private SoundSyntax Sound()
    {
        switch (cursor.Current)
        {
            case 'R': return new RestSyntax(cursor.TakeSign());
            case '=': return Hold();
            case 'r':
                var roll = cursor.Take(TokenKind.Word, cursor.EndOfRun(cursor.Next, Names.IsNameCharacter));
                return cursor.Is('[') ? Chord(roll) : Named(roll);
            case '[': return Chord(null);
            case '#': return Named(null);
            default: return Note();
        }
    }

    private HoldSyntax Hold() => new(cursor.TakeSign(), Marks());

    private NamedShapeSyntax Named(SyntaxToken? roll)
    {
        var hash = cursor.TakeSign();
        var end = cursor.Touches ? cursor.EndOfRun(cursor.Next, Names.IsNameCharacter) : cursor.Next;
        if (end > cursor.Next && cursor.Touches) return new NamedShapeSyntax(roll, hash, cursor.Take(TokenKind.Word, end), Marks());
        Findings.Add(SyntaxDiagnostics.HashNeedsName(hash.Span));
        return new NamedShapeSyntax(roll, hash, cursor.Missing(TokenKind.Word), []);
    }

    private NoteSyntax Note()
    {
        var tap = cursor.Is('t') ? cursor.TakeSign() : null;
        var bentBefore = cursor.Is('+') ? Raise() : null;
        var dead = cursor.Is('x') && (bentBefore is null || cursor.Touches) ? cursor.TakeSign() : null;
        SyntaxToken? fret = null;
        var touches = (tap ?? bentBefore?.Sign ?? dead) is null || cursor.Touches;
        if (touches && Names.IsDigit(cursor.Current)) fret = Values.Number(cursor);
        else if (dead is null)
        {
            fret = cursor.Missing(TokenKind.Number);
            Findings.Add(SyntaxDiagnostics.FretMissing((bentBefore?.Span ?? tap?.Span)!.Value));
        }
        var marks = Marks();
        if (!cursor.TouchesAt('@')) return new NoteSyntax(tap, bentBefore, dead, fret, marks, null, []);
        return new NoteSyntax(tap, bentBefore, dead, fret, marks, Where(), Marks());
    }

    private ImmutableArray<MarkSyntax> Marks()
    {
        if (!cursor.Touches) return [];
        var marks = ImmutableArray.CreateBuilder<MarkSyntax>(1);
        while (cursor.Touches && Mark() is { } mark) marks.Add(mark);
        return marks.DrainToImmutable();
    }

    private MarkSyntax? Mark()
    {
        switch (cursor.Current)
        {
            case '+': return Raise();
            case '_': return Amount(MarkKind.Dip);
            case '~':
                var tilde = cursor.TakeSign();
                if (cursor.Touches && Names.IsDigit(cursor.Current)) return new MarkSyntax(MarkKind.Trill, tilde, Values.Number(cursor));
                Findings.Add(SyntaxDiagnostics.TrillNeedsFret(tilde.Span));
                return new MarkSyntax(MarkKind.Trill, tilde, cursor.Missing(TokenKind.Number));
            case '-': return new MarkSyntax(MarkKind.Release, cursor.TakeSign());
            case '!': return new MarkSyntax(MarkKind.Accent, cursor.TakeSign());
            case '?': return new MarkSyntax(MarkKind.Ghost, cursor.TakeSign());
            case '\'': return new MarkSyntax(MarkKind.Staccato, cursor.TakeSign());
            case 'm': return new MarkSyntax(MarkKind.PalmMute, cursor.TakeSign());
            case 'v':
                var isWide = cursor.Peek(1) == 'v';
                return new MarkSyntax(isWide ? MarkKind.WideVibrato : MarkKind.Vibrato, cursor.TakeSign(isWide ? 2 : 1));
            case '*':
                var star = cursor.TakeSign();
                var how = cursor.TouchesAt('p') ? cursor.TakeSign() : cursor.Touches && Names.IsDigit(cursor.Current) ? Values.Number(cursor) : null;
                return new MarkSyntax(MarkKind.Harmonic, star, how);
            case 'f' when Names.IsDigit(cursor.Peek(1)):
                return new MarkSyntax(MarkKind.Finger, cursor.TakeSign(), cursor.Take(TokenKind.Number, cursor.Next + 1));
            case ':':
                var colon = cursor.TakeSign();
                if (cursor.Touches && Names.IsTimeLetter(cursor.Current)) return new MarkSyntax(MarkKind.Tremolo, colon, TremoloValue());
                Findings.Add(SyntaxDiagnostics.TremoloNeedsValue(colon.Span));
                return new MarkSyntax(MarkKind.Tremolo, colon, cursor.Missing(TokenKind.Time));
            default: return null;
        }
    }

    private SyntaxToken TremoloValue() =>
        cursor.Take(TokenKind.Time, cursor.EndOfRun(cursor.Next + 1, c => c == '.'));

    /// <summary><c>+</c>, then an amount, then cents: digits are cents only with the <c>c</c> after them, else they are the fret.</summary>
    private MarkSyntax Raise() => Amount(MarkKind.Raise);

    private MarkSyntax Amount(MarkKind kind)
    {
        var sign = cursor.TakeSign();
        var length = !cursor.Touches ? 0 : cursor.Current switch
        {
            'w' => cursor.Peek(1) is 'h' or 'w' ? 2 : 1,
            'h' or 'q' => 1,
            _ => 0,
        };
        var amount = length > 0 ? cursor.TakeSign(length) : null;
        var digits = cursor.Touches ? cursor.EndOfRun(cursor.Next, Names.IsDigit) : cursor.Next;
        var cents = digits > cursor.Next && At(digits) == 'c' ? cursor.Take(TokenKind.Word, digits + 1) : null;
        return new MarkSyntax(kind, sign, amount, cents);
    }

    /// <summary>The bracket of a shape block.</summary>
    public ChordSyntax Bracket() => Chord(null);

    private ChordSyntax Chord(SyntaxToken? roll)
    {
        var open = cursor.TakeSign();
        var slots = ImmutableArray.CreateBuilder<SyntaxNode>();
        while (!cursor.AtEnd && cursor.Current is not (']' or '[' or '|' or '{' or '}' or '(' or '"'))
        {
            if (cursor.Is('.')) slots.Add(new EmptySlotSyntax(cursor.TakeSign()));
            else if (cursor.Is('=')) slots.Add(Hold());
            else if (cursor.Current is 't' or 'x' or '+' || Names.IsDigit(cursor.Current))
            {
                if (Names.BeginsEvent(Rest)) slots.Add(Slot());
                else slots.Add(Stray());
            }
            else if (Names.IsTimeLetter(cursor.Current)) break;
            else slots.Add(Stray());
        }
        if (cursor.Is(']')) return new ChordSyntax(roll, open, slots.DrainToImmutable(), cursor.TakeSign(), Marks());
        Findings.Add(SyntaxDiagnostics.UnclosedBracket(open.Span));
        return new ChordSyntax(roll, open, slots.DrainToImmutable(), cursor.Missing(TokenKind.Sign), []);
    }

    private NoteSyntax Slot()
    {
        var note = Note();
        if (note.At is { } at) Findings.Add(SyntaxDiagnostics.PlaceInBracket(at.Span));
        return note;
    }
}
