#include "pdf/FontPermission.h"

#include <ft2build.h>
#include FT_FREETYPE_H

#include <memory>

#include "base/Error.h"

namespace rackbook {

namespace {

using Library = std::unique_ptr<FT_LibraryRec_, decltype(&FT_Done_FreeType)>;
using Face = std::unique_ptr<FT_FaceRec_, decltype(&FT_Done_Face)>;

Library newLibrary() {
    FT_Library library = nullptr;
    if (FT_Init_FreeType(&library) != 0)
        throw RenderError("fonts", "the font library cannot be started",
                          "Report this fault of the program.");
    return {library, &FT_Done_FreeType};
}

Face openedFace(FT_Library library, const std::string& file) {
    FT_Face face = nullptr;
    return {FT_New_Face(library, file.c_str(), 0, &face) == 0 ? face : nullptr, &FT_Done_Face};
}

// What its maker forbids, in words; empty where nothing stands in the way.
std::string forbidden(FT_UShort flags) {
    constexpr FT_UShort mayBeViewed =
        FT_FSTYPE_PREVIEW_AND_PRINT_EMBEDDING | FT_FSTYPE_EDITABLE_EMBEDDING;
    if ((flags & FT_FSTYPE_RESTRICTED_LICENSE_EMBEDDING) != 0 && (flags & mayBeViewed) == 0)
        return "to be put into documents";
    if ((flags & FT_FSTYPE_NO_SUBSETTING) != 0)
        return "to be put into documents in part";
    if ((flags & FT_FSTYPE_BITMAP_EMBEDDING_ONLY) != 0)
        return "to be put into documents with its outlines";
    return {};
}

}  // namespace

void requireEmbeddable(const std::string& fontFile) {
    const Library library = newLibrary();
    const Face face = openedFace(library.get(), fontFile);
    if (!face)
        return;
    const std::string what = forbidden(FT_Get_FSType_Flags(face.get()));
    if (!what.empty())
        throw RenderError(fontFile, "its maker does not allow this font " + what,
                          "Name another family in the template; Noto Sans is free.");
}

}  // namespace rackbook
