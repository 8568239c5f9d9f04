// The entry CIDSet of embedded font subsets, which says what glyphs are inside (ISO 32000-1,
// table 124).
#pragma once

namespace PoDoFo {
class PdfMemDocument;
}

namespace rackbook {

// The library's own sets cover more than is inside, which ISO 19005-3, 6.2.11.4.2 forbids; there
// the entry may be left out. (Clause from memory.)
void dropGlyphSets(PoDoFo::PdfMemDocument& document);

// Exact sets in the place of the library's: .notdef, the glyphs with a width in the file and those
// with an outline in the font program. ISO 19005-1, 6.3.5 asks for them. (Clause from memory.)
// Pre: the subsets are embedded, codes are glyph numbers. Throws RenderError for a font program
// that cannot be read.
void setExactGlyphSets(PoDoFo::PdfMemDocument& document);

}  // namespace rackbook
