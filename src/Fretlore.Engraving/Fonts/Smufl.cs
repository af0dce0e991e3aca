namespace Fretlore.Engraving.Fonts;

/// <summary>Code points of the music glyphs we draw, named as the standard names them.</summary>
/// <remarks>
/// The one table of them: a new glyph is one row here. Names and code points are those of the Standard Music Font Layout (SMuFL 1.4, W3C); a
/// test compares the ink of each with the box that the font's metadata gives for its name. A name that begins with a digit is spelt out.
/// </remarks>
public static class Smufl
{
    // Brackets and bar line parts.
    public const int Brace = 0xE000;
    public const int Bracket = 0xE002;
    public const int BracketTop = 0xE003;
    public const int BracketBottom = 0xE004;
    public const int SystemDivider = 0xE007;

    // Repeats and road map.
    public const int RepeatLeft = 0xE040;
    public const int RepeatRight = 0xE041;
    public const int RepeatRightLeft = 0xE042;
    public const int RepeatDots = 0xE043;
    public const int RepeatDot = 0xE044;
    public const int DalSegno = 0xE045;
    public const int DaCapo = 0xE046;
    public const int Segno = 0xE047;
    public const int Coda = 0xE048;
    public const int CodaSquare = 0xE049;

    // Clefs.
    public const int GClef = 0xE050;
    public const int GClef15mb = 0xE051;
    public const int GClef8vb = 0xE052;
    public const int CClef = 0xE05C;
    public const int FClef = 0xE062;
    public const int FClef8vb = 0xE064;
    public const int UnpitchedPercussionClef1 = 0xE069;
    [GlyphName("6stringTabClef")]
    public const int SixStringTabClef = 0xE06D;
    [GlyphName("4stringTabClef")]
    public const int FourStringTabClef = 0xE06E;
    public const int GClefChange = 0xE07A;
    public const int FClefChange = 0xE07C;

    // Metre.
    public const int TimeSig0 = 0xE080;
    public const int TimeSig1 = 0xE081;
    public const int TimeSig2 = 0xE082;
    public const int TimeSig3 = 0xE083;
    public const int TimeSig4 = 0xE084;
    public const int TimeSig5 = 0xE085;
    public const int TimeSig6 = 0xE086;
    public const int TimeSig7 = 0xE087;
    public const int TimeSig8 = 0xE088;
    public const int TimeSig9 = 0xE089;
    public const int TimeSigCommon = 0xE08A;
    public const int TimeSigCutCommon = 0xE08B;
    public const int TimeSigPlus = 0xE08C;
    public const int TimeSigParensLeft = 0xE094;
    public const int TimeSigParensRight = 0xE095;

    // Note heads.
    public const int NoteheadDoubleWhole = 0xE0A0;
    public const int NoteheadWhole = 0xE0A2;
    public const int NoteheadHalf = 0xE0A3;
    public const int NoteheadBlack = 0xE0A4;
    public const int NoteheadXWhole = 0xE0A7;
    public const int NoteheadXHalf = 0xE0A8;
    public const int NoteheadXBlack = 0xE0A9;
    public const int NoteheadCircleX = 0xE0B3;
    public const int NoteheadDiamondWhole = 0xE0D8;
    public const int NoteheadDiamondHalf = 0xE0D9;
    public const int NoteheadDiamondBlack = 0xE0DB;
    public const int NoteheadDiamondWhite = 0xE0DD;
    public const int NoteheadDiamondBlackWide = 0xE0DC;
    public const int NoteheadDiamondWhiteWide = 0xE0DE;
    public const int NoteheadTriangleUpBlack = 0xE0BE;
    public const int NoteheadTriangleDownBlack = 0xE0C7;
    public const int NoteheadParenthesisLeft = 0xE0F5;
    public const int NoteheadParenthesisRight = 0xE0F6;
    public const int NoteheadSlashVerticalEnds = 0xE100;
    public const int NoteheadSlashHorizontalEnds = 0xE101;
    public const int NoteheadSlashWhiteWhole = 0xE102;
    public const int NoteheadSlashWhiteHalf = 0xE103;

    // Whole notes for text.
    public const int NoteDoubleWhole = 0xE1D0;
    public const int NoteWhole = 0xE1D2;
    public const int NoteHalfUp = 0xE1D3;
    public const int NoteQuarterUp = 0xE1D5;
    public const int Note8thUp = 0xE1D7;
    public const int Note16thUp = 0xE1D9;
    public const int Note32ndUp = 0xE1DB;
    public const int AugmentationDot = 0xE1E7;
    public const int TextBlackNoteShortStem = 0xE1F0;
    public const int TextBlackNoteLongStem = 0xE1F1;
    public const int TextBlackNoteFrac8thLongStem = 0xE1F3;
    public const int TextBlackNoteFrac16thLongStem = 0xE1F5;
    public const int TextCont8thBeamLongStem = 0xE1F8;
    public const int TextAugmentationDot = 0xE1FC;
    public const int TextTupletBracketStartLongStem = 0xE201;
    public const int TextTuplet3LongStem = 0xE202;
    public const int TextTupletBracketEndLongStem = 0xE203;

    // Flags and tremolo.
    public const int Tremolo1 = 0xE220;
    public const int Tremolo2 = 0xE221;
    public const int Tremolo3 = 0xE222;
    public const int Tremolo4 = 0xE223;
    public const int Tremolo5 = 0xE224;
    public const int BuzzRoll = 0xE22A;
    public const int Flag8thUp = 0xE240;
    public const int Flag8thDown = 0xE241;
    public const int Flag16thUp = 0xE242;
    public const int Flag16thDown = 0xE243;
    public const int Flag32ndUp = 0xE244;
    public const int Flag32ndDown = 0xE245;
    public const int Flag64thUp = 0xE246;
    public const int Flag64thDown = 0xE247;
    public const int Flag128thUp = 0xE248;
    public const int Flag128thDown = 0xE249;

    // Accidentals.
    public const int AccidentalFlat = 0xE260;
    public const int AccidentalNatural = 0xE261;
    public const int AccidentalSharp = 0xE262;
    public const int AccidentalDoubleSharp = 0xE263;
    public const int AccidentalDoubleFlat = 0xE264;
    public const int AccidentalTripleSharp = 0xE265;
    public const int AccidentalTripleFlat = 0xE266;
    public const int AccidentalParensLeft = 0xE26A;
    public const int AccidentalParensRight = 0xE26B;
    public const int AccidentalQuarterToneFlatStein = 0xE280;
    public const int AccidentalQuarterToneSharpStein = 0xE282;

    // Articulation and holds.
    public const int ArticAccentAbove = 0xE4A0;
    public const int ArticAccentBelow = 0xE4A1;
    public const int ArticStaccatoAbove = 0xE4A2;
    public const int ArticStaccatoBelow = 0xE4A3;
    public const int ArticTenutoAbove = 0xE4A4;
    public const int ArticTenutoBelow = 0xE4A5;
    public const int ArticStaccatissimoAbove = 0xE4A6;
    public const int ArticStaccatissimoBelow = 0xE4A7;
    public const int ArticMarcatoAbove = 0xE4AC;
    public const int ArticMarcatoBelow = 0xE4AD;
    public const int ArticAccentStaccatoAbove = 0xE4B0;
    public const int ArticAccentStaccatoBelow = 0xE4B1;
    public const int ArticTenutoStaccatoAbove = 0xE4B2;
    public const int ArticTenutoStaccatoBelow = 0xE4B3;
    public const int ArticTenutoAccentAbove = 0xE4B4;
    public const int ArticTenutoAccentBelow = 0xE4B5;
    public const int ArticLaissezVibrerAbove = 0xE4BA;
    public const int ArticLaissezVibrerBelow = 0xE4BB;
    public const int FermataAbove = 0xE4C0;
    public const int FermataBelow = 0xE4C1;
    public const int FermataShortAbove = 0xE4C4;
    public const int FermataLongAbove = 0xE4C6;
    public const int BreathMarkComma = 0xE4CE;
    public const int BreathMarkTick = 0xE4CF;
    public const int Caesura = 0xE4D1;

    // Rests and bar repeats.
    public const int RestLonga = 0xE4E1;
    public const int RestDoubleWhole = 0xE4E2;
    public const int RestWhole = 0xE4E3;
    public const int RestHalf = 0xE4E4;
    public const int RestQuarter = 0xE4E5;
    public const int Rest8th = 0xE4E6;
    public const int Rest16th = 0xE4E7;
    public const int Rest32nd = 0xE4E8;
    public const int Rest64th = 0xE4E9;
    public const int Rest128th = 0xE4EA;
    public const int RestHBar = 0xE4EE;
    public const int RestHBarLeft = 0xE4EF;
    public const int RestHBarMiddle = 0xE4F0;
    public const int RestHBarRight = 0xE4F1;
    public const int RestDoubleWholeLegerLine = 0xE4F3;
    public const int RestWholeLegerLine = 0xE4F4;
    public const int RestHalfLegerLine = 0xE4F5;
    public const int Repeat1Bar = 0xE500;
    public const int Repeat2Bars = 0xE501;
    public const int Repeat4Bars = 0xE502;
    public const int RepeatBarUpperDot = 0xE503;
    public const int RepeatBarSlash = 0xE504;
    public const int RepeatBarLowerDot = 0xE505;

    // Octave signs.
    public const int Ottava = 0xE510;
    public const int OttavaAlta = 0xE511;
    public const int Quindicesima = 0xE514;
    public const int OctaveParensLeft = 0xE51A;
    public const int OctaveParensRight = 0xE51B;
    public const int OttavaBassaVb = 0xE51C;

    // Dynamics.
    public const int DynamicPiano = 0xE520;
    public const int DynamicMezzo = 0xE521;
    public const int DynamicForte = 0xE522;
    public const int DynamicRinforzando = 0xE523;
    public const int DynamicSforzando = 0xE524;
    public const int DynamicZ = 0xE525;
    public const int DynamicNiente = 0xE526;
    public const int DynamicPPP = 0xE52A;
    public const int DynamicPP = 0xE52B;
    public const int DynamicMP = 0xE52C;
    public const int DynamicMF = 0xE52D;
    public const int DynamicFF = 0xE52F;
    public const int DynamicFFF = 0xE530;
    public const int DynamicFortePiano = 0xE534;
    public const int DynamicSforzato = 0xE539;

    // Grace notes and ornaments.
    public const int GraceNoteAcciaccaturaStemUp = 0xE560;
    public const int GraceNoteAppoggiaturaStemUp = 0xE562;
    public const int GraceNoteSlashStemUp = 0xE564;
    public const int GraceNoteSlashStemDown = 0xE565;
    public const int OrnamentTrill = 0xE566;
    public const int OrnamentTurn = 0xE567;
    public const int OrnamentTurnInverted = 0xE568;
    public const int OrnamentShortTrill = 0xE56C;
    public const int OrnamentMordent = 0xE56D;
    public const int BrassScoop = 0xE5D0;
    public const int BrassDoitShort = 0xE5D4;
    public const int BrassFallLipShort = 0xE5D7;
    public const int BrassFallRoughShort = 0xE5DD;

    // Strokes and plucking.
    public const int StringsDownBow = 0xE610;
    public const int StringsUpBow = 0xE612;
    public const int StringsHarmonic = 0xE614;
    public const int StringsThumbPosition = 0xE624;
    public const int PluckedSnapPizzicatoBelow = 0xE630;
    public const int PluckedSnapPizzicatoAbove = 0xE631;
    public const int PluckedLeftHandPizzicato = 0xE633;
    public const int PluckedWithFingernails = 0xE636;
    public const int PluckedDamp = 0xE638;
    public const int PluckedDampAll = 0xE639;
    public const int PluckedPlectrum = 0xE63A;
    public const int ArpeggiatoUp = 0xE634;
    public const int ArpeggiatoDown = 0xE635;
    public const int Arpeggiato = 0xE63C;

    // Guitar.
    public const int GuitarVibratoBarScoop = 0xE830;
    public const int GuitarVibratoBarDip = 0xE831;
    public const int GuitarShake = 0xE832;
    public const int GuitarString0 = 0xE833;
    public const int GuitarString1 = 0xE834;
    public const int GuitarString2 = 0xE835;
    public const int GuitarString3 = 0xE836;
    public const int GuitarString4 = 0xE837;
    public const int GuitarString5 = 0xE838;
    public const int GuitarString6 = 0xE839;
    public const int GuitarString7 = 0xE83A;
    public const int GuitarString8 = 0xE83B;
    public const int GuitarString9 = 0xE83C;
    public const int GuitarString10 = 0xE84A;
    public const int GuitarString11 = 0xE84B;
    public const int GuitarString12 = 0xE84C;
    public const int GuitarOpenPedal = 0xE83D;
    public const int GuitarHalfOpenPedal = 0xE83E;
    public const int GuitarClosePedal = 0xE83F;
    public const int GuitarLeftHandTapping = 0xE840;
    public const int GuitarRightHandTapping = 0xE841;
    public const int GuitarGolpe = 0xE842;
    public const int GuitarFadeIn = 0xE843;
    public const int GuitarFadeOut = 0xE844;
    public const int GuitarVolumeSwell = 0xE845;
    public const int GuitarStrumUp = 0xE846;
    public const int GuitarStrumDown = 0xE847;
    public const int GuitarBarreFull = 0xE848;
    public const int GuitarBarreHalf = 0xE849;
    public const int FretboardFilledCircle = 0xE858;
    public const int FretboardX = 0xE859;
    public const int FretboardO = 0xE85A;

    // Chord symbols.
    public const int CsymDiminished = 0xE870;
    public const int CsymHalfDiminished = 0xE871;
    public const int CsymAugmented = 0xE872;
    public const int CsymMajorSeventh = 0xE873;
    public const int CsymMinor = 0xE874;
    public const int CsymParensLeftTall = 0xE875;
    public const int CsymParensRightTall = 0xE876;
    public const int CsymBracketLeftTall = 0xE877;
    public const int CsymBracketRightTall = 0xE878;
    public const int CsymAlteredBassSlash = 0xE87B;
    public const int CsymAccidentalFlat = 0xED60;
    public const int CsymAccidentalNatural = 0xED61;
    public const int CsymAccidentalSharp = 0xED62;
    public const int CsymAccidentalDoubleSharp = 0xED63;
    public const int CsymAccidentalDoubleFlat = 0xED64;

    // Tuplets.
    public const int Tuplet0 = 0xE880;
    public const int Tuplet1 = 0xE881;
    public const int Tuplet2 = 0xE882;
    public const int Tuplet3 = 0xE883;
    public const int Tuplet4 = 0xE884;
    public const int Tuplet5 = 0xE885;
    public const int Tuplet6 = 0xE886;
    public const int Tuplet7 = 0xE887;
    public const int Tuplet8 = 0xE888;
    public const int Tuplet9 = 0xE889;
    public const int TupletColon = 0xE88A;

    // Wavy lines, one segment each.
    public const int WiggleTrill = 0xEAA4;
    public const int WiggleArpeggiatoUp = 0xEAA9;
    public const int WiggleArpeggiatoDown = 0xEAAA;
    public const int WiggleArpeggiatoUpArrow = 0xEAAD;
    public const int WiggleArpeggiatoDownArrow = 0xEAAE;
    public const int WiggleGlissando = 0xEAAF;
    public const int GuitarVibratoStroke = 0xEAB2;
    public const int GuitarWideVibratoStroke = 0xEAB3;
    public const int WiggleVibrato = 0xEAB0;
    public const int WiggleVibratoWide = 0xEAB1;
    public const int WiggleVibratoMediumFast = 0xEADE;
    public const int WiggleSawtooth = 0xEABB;

    // Arrows.
    public const int ArrowBlackUp = 0xEB60;
    public const int ArrowBlackRight = 0xEB62;
    public const int ArrowBlackDown = 0xEB64;
    public const int ArrowBlackLeft = 0xEB66;
    public const int ArrowheadBlackUp = 0xEB78;
    public const int ArrowheadBlackRight = 0xEB7A;
    public const int ArrowheadBlackDown = 0xEB7C;
    public const int ArrowheadBlackLeft = 0xEB7E;

    // Metronome marks.
    public const int MetNoteDoubleWhole = 0xECA0;
    public const int MetNoteWhole = 0xECA2;
    public const int MetNoteHalfUp = 0xECA3;
    public const int MetNoteQuarterUp = 0xECA5;
    public const int MetNote8thUp = 0xECA7;
    public const int MetNote16thUp = 0xECA9;
    public const int MetNote32ndUp = 0xECAB;
    public const int MetAugmentationDot = 0xECB7;

    // Fingering.
    public const int Fingering0 = 0xED10;
    public const int Fingering1 = 0xED11;
    public const int Fingering2 = 0xED12;
    public const int Fingering3 = 0xED13;
    public const int Fingering4 = 0xED14;
    public const int Fingering5 = 0xED15;
    public const int FingeringTUpper = 0xED16;
    public const int FingeringPLower = 0xED17;
    public const int FingeringTLower = 0xED18;
    public const int FingeringILower = 0xED19;
    public const int FingeringMLower = 0xED1A;
    public const int FingeringALower = 0xED1B;
    public const int FingeringCLower = 0xED1C;
    public const int FingeringXLower = 0xED1D;
}
