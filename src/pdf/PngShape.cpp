#include <png.h>

#include "base/Error.h"
#include "base/Text.h"
#include "pdf/PictureShape.h"

namespace rackbook {

namespace {

constexpr double mostPixels = 1e8;

// What the library holds while it reads; it lets go of it also where the constructor that follows
// throws.
struct PngReading {
    png_image image{};
    ~PngReading() { png_image_free(&image); }
};

// A file opened to be read.
class PngFile {
public:
    PngFile(const std::string& bytes, const std::string& where)
        : m_image(m_reading.image), m_where(where) {
        m_image.version = PNG_IMAGE_VERSION;
        if (!png_image_begin_read_from_memory(&m_image, bytes.data(), bytes.size()))
            refuse();
        if (m_image.format & PNG_FORMAT_FLAG_ALPHA)
            throw RenderError(where, "it has transparency", "Save it without.");
        if (m_image.format & PNG_FORMAT_FLAG_LINEAR)
            throw RenderError(where, "its samples have 16 bits", "Save it with 8 bits a channel.");
        if (static_cast<double>(m_image.width) * m_image.height > mostPixels)
            throw RenderError(where, "it has more than 100 million pixels", "Save it smaller.");
    }
    PngFile(const PngFile&) = delete;
    PngFile& operator=(const PngFile&) = delete;

    PictureShape shape() const {
        return {static_cast<int>(m_image.width), static_cast<int>(m_image.height),
                m_image.format & PNG_FORMAT_FLAG_COLOR ? 3 : 1};
    }

    std::string pixels() {
        m_image.format = shape().channels == 3 ? PNG_FORMAT_RGB : PNG_FORMAT_GRAY;
        std::string pixels(PNG_IMAGE_SIZE(m_image), '\0');
        if (!png_image_finish_read(&m_image, nullptr, pixels.data(), 0, nullptr))
            refuse();
        return pixels;
    }

private:
    [[noreturn]] void refuse() const {
        throw RenderError(m_where,
                          std::string("the PNG file cannot be read: ") +
                              printable(static_cast<const char*>(m_image.message)),
                          "Give an undamaged copy.");
    }

    PngReading m_reading;
    png_image& m_image;
    const std::string& m_where;
};

}  // namespace

PictureShape pngShape(const std::string& bytes, const std::string& where) {
    return PngFile(bytes, where).shape();
}

std::string pngPixels(const std::string& bytes, const std::string& where) {
    return PngFile(bytes, where).pixels();
}

}  // namespace rackbook
