#include "base/Error.h"
#include "pdf/PictureShape.h"

namespace rackbook {

namespace {

// Walks over the marker segments before the picture itself.
class Segments {
public:
    Segments(const std::string& bytes, const std::string& where) : m_bytes(bytes), m_where(where) {}

    PictureShape shape() {
        if (byteAt(0) != 0xFF || byteAt(1) != startOfImage)
            throw RenderError(m_where, "it is no JPEG file", "Give a JPEG or PNG file.");
        for (std::size_t at = 2;;) {
            if (byteAt(at) != 0xFF)
                refuseDamage();
            const int marker = byteAt(at + 1);
            if (marker == 0xFF) {  // a fill byte
                ++at;
                continue;
            }
            if (isFrame(marker))
                return frame(marker, at);
            if (marker < 0xC0 || marker == endOfImage || marker == startOfScan)
                refuseDamage();
            const int length = pairAt(at + 2);
            if (length < 2)
                refuseDamage();
            at += 2 + static_cast<std::size_t>(length);
        }
    }

private:
    // ITU-T T.81, table B.1.
    static constexpr int startOfImage = 0xD8;
    static constexpr int endOfImage = 0xD9;
    static constexpr int startOfScan = 0xDA;
    static constexpr int lastHuffmanFrame = 0xC2;  // from 0xC0: baseline, extended, progressive

    // The frames 0xC0 to 0xCF, less the tables of codes, the extension and arithmetic conditions.
    static bool isFrame(int marker) {
        return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 &&
               marker != 0xCC;
    }

    PictureShape frame(int marker, std::size_t at) const {
        if (marker > lastHuffmanFrame)
            throw RenderError(m_where, "its coding is one that PDF lacks",
                              "Save it as a baseline or progressive JPEG.");
        if (byteAt(at + 4) != 8)
            throw RenderError(m_where, "its samples have other than 8 bits",
                              "Save it with 8 bits a channel.");
        const PictureShape shape{pairAt(at + 7), pairAt(at + 5), byteAt(at + 9)};
        if (shape.channels != 1 && shape.channels != 3)
            throw RenderError(m_where, "it is neither grey nor RGB", "Save it as grey or RGB.");
        if (shape.width_px < 1 || shape.height_px < 1)
            refuseDamage();
        return shape;
    }

    int byteAt(std::size_t at) const {
        if (at >= m_bytes.size())
            refuseDamage();
        return static_cast<unsigned char>(m_bytes[at]);
    }
    int pairAt(std::size_t at) const { return byteAt(at) * 256 + byteAt(at + 1); }

    [[noreturn]] void refuseDamage() const {
        throw RenderError(m_where, "the JPEG file is damaged", "Give an undamaged copy.");
    }

    const std::string& m_bytes;
    const std::string& m_where;
};

}  // namespace

PictureShape jpegShape(const std::string& bytes, const std::string& where) {
    return Segments(bytes, where).shape();
}

}  // namespace rackbook
