using System.Runtime.InteropServices;

namespace Fretlore.Engraving.Fonts.Subset;

/// <summary>The subsetter in HarfBuzz's native library, which its .NET wrapper does not show.</summary>
/// <remarks>The name has neither prefix nor suffix of a platform: the runtime adds them, and finds the file where the wrapper's packages put it.</remarks>
internal static partial class SubsetLibrary
{
    private const string Library = "libHarfBuzzSharp";

    [Flags]
    public enum Flags : uint
    {
        NoHinting = 0x1,
        NotdefOutline = 0x40,
    }

    public enum Sets : uint
    {
        DropTableTag = 3,
        NameId = 4,
        LayoutFeatureTag = 6,
    }

    [LibraryImport(Library, EntryPoint = "hb_subset_input_create_or_fail")]
    public static partial nint InputCreate();

    [LibraryImport(Library, EntryPoint = "hb_subset_input_destroy")]
    public static partial void InputDestroy(nint input);

    [LibraryImport(Library, EntryPoint = "hb_subset_input_set_flags")]
    public static partial void InputSetFlags(nint input, Flags flags);

    [LibraryImport(Library, EntryPoint = "hb_subset_input_glyph_set")]
    public static partial nint InputGlyphSet(nint input);

    [LibraryImport(Library, EntryPoint = "hb_subset_input_set")]
    public static partial nint InputSet(nint input, Sets which);

    [LibraryImport(Library, EntryPoint = "hb_set_add")]
    public static partial void SetAdd(nint set, uint value);

    [LibraryImport(Library, EntryPoint = "hb_set_clear")]
    public static partial void SetClear(nint set);

    [LibraryImport(Library, EntryPoint = "hb_subset_plan_create_or_fail")]
    public static partial nint PlanCreate(nint face, nint input);

    [LibraryImport(Library, EntryPoint = "hb_subset_plan_execute_or_fail")]
    public static partial nint PlanExecute(nint plan);

    [LibraryImport(Library, EntryPoint = "hb_subset_plan_destroy")]
    public static partial void PlanDestroy(nint plan);

    [LibraryImport(Library, EntryPoint = "hb_subset_plan_old_to_new_glyph_mapping")]
    public static partial nint PlanOldToNew(nint plan);

    [LibraryImport(Library, EntryPoint = "hb_map_get")]
    public static partial uint MapGet(nint map, uint key);

    [LibraryImport(Library, EntryPoint = "hb_face_destroy")]
    public static partial void FaceDestroy(nint face);

    [LibraryImport(Library, EntryPoint = "hb_face_get_table_tags")]
    public static partial uint FaceTableTags(nint face, uint start, ref uint count, [Out] uint[] tags);

    [LibraryImport(Library, EntryPoint = "hb_face_reference_table")]
    public static partial nint FaceReferenceTable(nint face, uint tag);

    [LibraryImport(Library, EntryPoint = "hb_face_reference_blob")]
    public static partial nint FaceReferenceBlob(nint face);

    [LibraryImport(Library, EntryPoint = "hb_face_builder_create")]
    public static partial nint BuilderCreate();

    [LibraryImport(Library, EntryPoint = "hb_face_builder_add_table")]
    public static partial int BuilderAddTable(nint face, uint tag, nint blob);

    /// <summary>Mode 0 copies the bytes, so that the caller's array need not stay.</summary>
    [LibraryImport(Library, EntryPoint = "hb_blob_create")]
    public static partial nint BlobCreate(byte[] data, uint length, int mode, nint userData, nint destroy);

    [LibraryImport(Library, EntryPoint = "hb_blob_get_data")]
    public static partial nint BlobData(nint blob, out uint length);

    [LibraryImport(Library, EntryPoint = "hb_blob_destroy")]
    public static partial void BlobDestroy(nint blob);
}
