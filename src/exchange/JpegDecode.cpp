#include <csetjmp>
#include <cstdio>

// libjpeg's header wants FILE, and its names for warnings stand apart.
#include <jerror.h>
#include <jpeglib.h>

#include "base/Error.h"
#include "exchange/PictureParts.h"

namespace rackbook {

namespace {

// More scans than any camera writes: a small file could keep a reader busy for hours.
constexpr int mostScans = 200;

// Errors of libjpeg come back by longjmp, so the functions that it may leave hold nothing that
// would have to be destroyed; what it found is kept here.
class JpegDecoder {
public:
    explicit JpegDecoder(std::string_view bytes) : m_bytes(bytes) {
        m_jpeg.err = jpeg_std_error(&m_errors.base);
        m_errors.base.error_exit = leave;
        m_errors.base.emit_message = noteWarning;
        m_progress.progress_monitor = watch;
        m_jpeg.client_data = this;
    }
    ~JpegDecoder() { jpeg_destroy_decompress(&m_jpeg); }
    JpegDecoder(const JpegDecoder&) = delete;
    JpegDecoder& operator=(const JpegDecoder&) = delete;

    bool readHeader() {
        if (setjmp(m_errors.back) != 0)
            return false;
        jpeg_create_decompress(&m_jpeg);
        m_jpeg.client_data = this;
        m_jpeg.progress = &m_progress;
        jpeg_mem_src(&m_jpeg, reinterpret_cast<const unsigned char*>(m_bytes.data()),
                     static_cast<unsigned long>(m_bytes.size()));
        jpeg_read_header(&m_jpeg, TRUE);
        return true;
    }

    bool readRows() {
        if (setjmp(m_errors.back) != 0)
            return false;
        m_jpeg.out_color_space = m_jpeg.jpeg_color_space;
        jpeg_start_decompress(&m_jpeg);
        const JDIMENSION width =
            m_jpeg.output_width * static_cast<JDIMENSION>(m_jpeg.output_components);
        JSAMPARRAY row = m_jpeg.mem->alloc_sarray(reinterpret_cast<j_common_ptr>(&m_jpeg),
                                                  JPOOL_IMAGE, width, 1);
        while (m_jpeg.output_scanline < m_jpeg.output_height)
            jpeg_read_scanlines(&m_jpeg, row, 1);
        jpeg_finish_decompress(&m_jpeg);
        return true;
    }

    const jpeg_decompress_struct& jpeg() const { return m_jpeg; }
    // Whether what was read is worth less than it should be.
    bool hasDamage() const { return m_hasDamage; }
    bool hasTooManyScans() const { return m_hasTooManyScans; }
    std::string lastMessage() const { return m_message; }

private:
    struct Errors {
        jpeg_error_mgr base;  // first, so that libjpeg's pointer to it is one to this
        std::jmp_buf back;
    };

    static JpegDecoder& decoderOf(j_common_ptr common) {
        return *static_cast<JpegDecoder*>(common->client_data);
    }

    static void leave(j_common_ptr common) {
        common->err->format_message(common, decoderOf(common).m_message);
        std::longjmp(reinterpret_cast<Errors*>(common->err)->back, 1);
    }

    // Bytes to spare between segments, or a newer JFIF, harm no picture.
    static void noteWarning(j_common_ptr common, int level) {
        const int code = common->err->msg_code;
        if (level >= 0 || code == JWRN_EXTRANEOUS_DATA || code == JWRN_JFIF_MAJOR)
            return;
        JpegDecoder& decoder = decoderOf(common);
        if (!decoder.m_hasDamage)
            common->err->format_message(common, decoder.m_message);
        decoder.m_hasDamage = true;
    }

    static void watch(j_common_ptr common) {
        JpegDecoder& decoder = decoderOf(common);
        if (decoder.m_jpeg.input_scan_number <= mostScans)
            return;
        decoder.m_hasTooManyScans = true;
        std::longjmp(reinterpret_cast<Errors*>(common->err)->back, 1);
    }

    std::string_view m_bytes;
    jpeg_decompress_struct m_jpeg{};
    Errors m_errors{};
    jpeg_progress_mgr m_progress{};
    char m_message[JMSG_LENGTH_MAX] = "";
    bool m_hasDamage = false;
    bool m_hasTooManyScans = false;
};

// What an archival page cannot hold.
void requirePrintable(const std::string& file, const jpeg_decompress_struct& jpeg) {
    constexpr const char* remedy = "Save it as an ordinary JPEG in sRGB or in greys.";
    if (jpeg.num_components == 4)
        throw InputError(file,
                         "its colours are CMYK, which an archival sheet made for sRGB cannot "
                         "hold",
                         "Turn it into sRGB in the program that it comes from and save it again.");
    if (jpeg.num_components != 1 && jpeg.num_components != 3)
        throw InputError(
            file, "it has " + std::to_string(jpeg.num_components) + " components a pixel", remedy);
    if (jpeg.arith_code != 0)
        throw InputError(file, "it is arithmetically coded, which sheets cannot hold", remedy);
    if (jpeg.jpeg_color_space == JCS_RGB && jpeg.saw_Adobe_marker == 0)
        throw InputError(file, "its colours are coded in a way that not every reader knows",
                         remedy);
}

[[noreturn]] void refuse(const std::string& file, const JpegDecoder& decoder) {
    if (decoder.hasTooManyScans())
        throw InputError(file,
                         "the picture comes in more than " + std::to_string(mostScans) + " scans",
                         "Save it as an ordinary JPEG.");
    refuseDamaged(file, "libjpeg says \"" + decoder.lastMessage() + "\"");
}

}  // namespace

void decodeJpeg(const std::string& file, std::string_view bytes, PictureFacts& facts) {
    JpegDecoder decoder(bytes);
    if (!decoder.readHeader())
        refuse(file, decoder);
    const jpeg_decompress_struct& jpeg = decoder.jpeg();
    requireHandySize(file, jpeg.image_width, jpeg.image_height);
    requirePrintable(file, jpeg);
    if (!decoder.readRows() || decoder.hasDamage())
        refuse(file, decoder);
    facts.width_px = static_cast<int>(jpeg.image_width);
    facts.height_px = static_cast<int>(jpeg.image_height);
    facts.components = jpeg.num_components;
    facts.bits = jpeg.data_precision;
}

}  // namespace rackbook
