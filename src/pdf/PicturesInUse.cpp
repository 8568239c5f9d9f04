#include "pdf/PicturesInUse.h"

#include <array>

#include "pdf/PdfValues.h"
#include "pdf/PictureShape.h"

namespace rackbook {

namespace {

using PoDoFo::PdfName;

// The image as stored spans the unit square, its first row above (u to the right, v up). Where a
// point of it is looked at: x = a u + c v + e and y = b u + d v + f, again in a unit square.
struct Turn {
    int a, b, c, d, e, f;
};

// Exif 2.3, tag 0x0112, in its order: the sides at which the first row and the first column of the
// file are looked at are top left, top right, bottom right, bottom left, left top, right top, right
// bottom, left bottom.
constexpr std::array<Turn, 8> turns = {{
    {1, 0, 0, 1, 0, 0},
    {-1, 0, 0, 1, 1, 0},
    {-1, 0, 0, -1, 1, 1},
    {1, 0, 0, -1, 0, 1},
    {0, -1, -1, 0, 1, 1},
    {0, -1, 1, 0, 0, 1},
    {0, 1, 1, 0, 0, 0},
    {0, 1, -1, 0, 1, 0},
}};

}  // namespace

PicturesInUse::PicturesInUse(PoDoFo::PdfMemDocument& document,
                             const std::vector<PictureFile>& pictures)
    : m_document(document), m_pictures(pictures), m_made(pictures.size()) {}

PoDoFo::PdfReference PicturesInUse::reference(std::size_t picture) {
    if (!m_made[picture])
        m_made[picture] = made(picture);
    return *m_made[picture];
}

PoDoFo::PdfReference PicturesInUse::made(std::size_t picture) {
    const PictureFile& file = m_pictures[picture];
    const PictureShape shape = checkedShape(file, pictureName(picture));
    PoDoFo::PdfObject* image = m_document.GetObjects().CreateObject("XObject");
    PoDoFo::PdfDictionary& dictionary = image->GetDictionary();
    dictionary.AddKey("Subtype", PdfName("Image"));
    dictionary.AddKey("Width", wholeNumber(static_cast<std::size_t>(shape.width_px)));
    dictionary.AddKey("Height", wholeNumber(static_cast<std::size_t>(shape.height_px)));
    dictionary.AddKey("ColorSpace", PdfName(shape.channels == 3 ? "DeviceRGB" : "DeviceGray"));
    dictionary.AddKey("BitsPerComponent", wholeNumber(8));
    if (file.mediaType == "image/jpeg") {
        setUncompressed(*image, *file.bytes);
        dictionary.AddKey("Filter", PdfName("DCTDecode"));
    } else {
        setCompressed(*image, pngPixels(*file.bytes, pictureName(picture)));
    }
    return image->Reference();
}

std::string pictureName(std::size_t picture) {
    return "picture " + std::to_string(picture + 1);
}

void placePicture(ContentStream& stream, const Box& box, int orientation) {
    const Turn& turn = turns[static_cast<std::size_t>(orientation - 1)];
    stream.length(turn.a * box.width_mm).length(turn.b * box.height_mm);
    stream.length(turn.c * box.width_mm).length(turn.d * box.height_mm);
    stream.point(box.x_mm + turn.e * box.width_mm,
                 box.y_mm + box.height_mm - turn.f * box.height_mm);
    stream.operation("cm");
}

}  // namespace rackbook
