// The pictures that one document draws, each held once however often it is drawn.
#pragma once

#include <podofo/podofo.h>

#include <optional>
#include <vector>

#include "pdf/ContentStream.h"

namespace rackbook {

class PicturesInUse {
public:
    // Both must outlive it.
    PicturesInUse(PoDoFo::PdfMemDocument& document, const std::vector<PictureFile>& pictures);

    // The image (ISO 32000-1, 8.9.5), made when it is first asked for. A JPEG is held byte for
    // byte. Throws RenderError for a damaged PNG.
    PoDoFo::PdfReference reference(std::size_t picture);

private:
    PoDoFo::PdfReference made(std::size_t picture);

    PoDoFo::PdfMemDocument& m_document;
    const std::vector<PictureFile>& m_pictures;
    std::vector<std::optional<PoDoFo::PdfReference>> m_made;
};

// "picture 1", as messages name them.
std::string pictureName(std::size_t picture);

// Changes the coordinates so that the image fills the box, turned as the orientation (1–8) says.
void placePicture(ContentStream& stream, const Box& box, int orientation);

}  // namespace rackbook
