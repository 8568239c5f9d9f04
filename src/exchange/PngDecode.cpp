#include <png.h>

#include <csetjmp>

#include "base/Error.h"
#include "exchange/PictureParts.h"

namespace rackbook {

namespace {

// Errors of libpng come back by longjmp, so the functions that it may leave hold nothing that would
// have to be destroyed; what it found is kept here.
class PngDecoder {
public:
    explicit PngDecoder(std::string_view bytes) : m_bytes(bytes) {
        m_png = png_create_read_struct(PNG_LIBPNG_VER_STRING, this, leave, passOver);
        m_info = m_png == nullptr ? nullptr : png_create_info_struct(m_png);
    }
    ~PngDecoder() { png_destroy_read_struct(&m_png, &m_info, nullptr); }
    PngDecoder(const PngDecoder&) = delete;
    PngDecoder& operator=(const PngDecoder&) = delete;

    bool readHeader() {
        if (m_info == nullptr || setjmp(m_back) != 0)
            return false;
        // A checksum that is wrong is damage wherever it stands.
        png_set_crc_action(m_png, PNG_CRC_ERROR_QUIT, PNG_CRC_ERROR_QUIT);
        png_set_read_fn(m_png, this, give);
        png_read_info(m_png, m_info);
        return true;
    }

    // Pre: readHeader() was true, and the rows come once each.
    bool readRows() {
        m_row.resize(png_get_rowbytes(m_png, m_info));
        return readEachRow();
    }

    png_structp png() const { return m_png; }
    png_infop info() const { return m_info; }
    const std::string& message() const { return m_message; }

private:
    bool readEachRow() {
        if (setjmp(m_back) != 0)
            return false;
        for (png_uint_32 i = png_get_image_height(m_png, m_info); i > 0; --i)
            png_read_row(m_png, m_row.data(), nullptr);
        png_read_end(m_png, nullptr);
        return true;
    }

    static void leave(png_structp png, png_const_charp message) {
        PngDecoder& decoder = *static_cast<PngDecoder*>(png_get_error_ptr(png));
        decoder.m_message = message;
        std::longjmp(decoder.m_back, 1);
    }

    static void passOver(png_structp, png_const_charp) {}

    static void give(png_structp png, png_bytep to, std::size_t count) {
        PngDecoder& decoder = *static_cast<PngDecoder*>(png_get_io_ptr(png));
        if (count > decoder.m_bytes.size() - decoder.m_at)
            png_error(png, "the file ends too early");
        decoder.m_bytes.copy(reinterpret_cast<char*>(to), count, decoder.m_at);
        decoder.m_at += count;
    }

    std::string_view m_bytes;
    std::size_t m_at = 0;
    png_structp m_png = nullptr;
    png_infop m_info = nullptr;
    std::jmp_buf m_back{};
    std::vector<png_byte> m_row;
    std::string m_message;
};

// What an archival page cannot hold as it is.
void requirePrintable(const std::string& file, const PngDecoder& decoder) {
    const int colour = png_get_color_type(decoder.png(), decoder.info());
    if ((colour & PNG_COLOR_MASK_ALPHA) != 0 ||
        png_get_valid(decoder.png(), decoder.info(), PNG_INFO_tRNS) != 0)
        throw InputError(file, "parts of it are see-through, which archival sheets do not allow",
                         "Save it over a white ground, without an alpha channel.");
    if (png_get_bit_depth(decoder.png(), decoder.info()) == 16)
        throw InputError(file, "it has 16 bits a component, more than sheets hold",
                         "Save it with 8 bits a component.");
    if (png_get_interlace_type(decoder.png(), decoder.info()) != PNG_INTERLACE_NONE)
        throw InputError(file, "it is interlaced, which sheets cannot hold",
                         "Save it without interlacing.");
}

std::string profileIn(const PngDecoder& decoder) {
    png_charp name = nullptr;
    int compression = 0;
    png_bytep profile = nullptr;
    png_uint_32 length = 0;
    if (png_get_iCCP(decoder.png(), decoder.info(), &name, &compression, &profile, &length) == 0)
        return {};
    return {reinterpret_cast<const char*>(profile), length};
}

}  // namespace

void decodePng(const std::string& file, std::string_view bytes, PictureFacts& facts) {
    PngDecoder decoder(bytes);
    if (!decoder.readHeader())
        refuseDamaged(file, "libpng says \"" + decoder.message() + "\"");
    const png_uint_32 width = png_get_image_width(decoder.png(), decoder.info());
    const png_uint_32 height = png_get_image_height(decoder.png(), decoder.info());
    requireHandySize(file, width, height);
    requirePrintable(file, decoder);
    const int colour = png_get_color_type(decoder.png(), decoder.info());
    if (!decoder.readRows())
        refuseDamaged(file, "libpng says \"" + decoder.message() + "\"");
    facts.width_px = static_cast<int>(width);
    facts.height_px = static_cast<int>(height);
    facts.components = (colour & PNG_COLOR_MASK_COLOR) != 0 ? 3 : 1;
    facts.bits = png_get_bit_depth(decoder.png(), decoder.info());
    facts.isIndexed = (colour & PNG_COLOR_MASK_PALETTE) != 0;
    facts.iccProfile = profileIn(decoder);
}

}  // namespace rackbook
