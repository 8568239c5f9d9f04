// The segments of a JPEG file (ITU-T T.81, annex B) and what lies in its application segments: JFIF
// (ISO/IEC 10918-5), Exif (JEITA CP-3451), ICC profiles (ICC.1, annex B.4).
#include <map>
#include <utility>

#include "exchange/ColourProfile.h"
#include "exchange/PictureParts.h"

namespace rackbook {

namespace {

constexpr int startOfImage = 0xd8;
constexpr int endOfImage = 0xd9;
constexpr int startOfScan = 0xda;
constexpr int application0 = 0xe0;
constexpr int application1 = 0xe1;
constexpr int application2 = 0xe2;
constexpr int application13 = 0xed;
constexpr int application14 = 0xee;
constexpr int application15 = 0xef;
constexpr int comment = 0xfe;

// With the zero that ends them in the file.
constexpr std::string_view jfifName("JFIF\0", 5);
constexpr std::string_view exifName("Exif\0\0", 6);
constexpr std::string_view iccName("ICC_PROFILE\0", 12);
constexpr std::string_view adobeName("Adobe");
constexpr std::size_t adobeLength = 12;

bool beginsWith(std::string_view text, std::string_view start) {
    return text.substr(0, start.size()) == start;
}

class Segments {
public:
    Segments(const std::string& file, std::string_view bytes) : m_file(file), m_bytes(bytes) {}

    PictureParts sorted() {
        m_parts.kept.reserve(m_bytes.size());
        m_parts.kept += "\xff\xd8";
        m_at = 2;
        for (int marker = nextMarker(); marker != endOfImage; marker = nextMarker())
            take(marker);
        m_parts.kept += "\xff\xd9";
        if (m_at < m_bytes.size())
            m_parts.note("what follows the picture");
        for (const auto& [number, piece] : m_profile)
            m_parts.iccProfile += piece;
        if (!m_profile.empty() && !isColourProfile(m_parts.iccProfile))
            dropProfile();
        return std::move(m_parts);
    }

private:
    int byteAt(std::size_t at) const {
        if (at >= m_bytes.size())
            refuseDamaged(m_file, "it is cut short");
        return static_cast<unsigned char>(m_bytes[at]);
    }

    int nextMarker() {
        if (byteAt(m_at) != 0xff)
            refuseDamaged(m_file, "something else stands where a segment should begin");
        while (byteAt(m_at) == 0xff)
            ++m_at;
        return byteAt(m_at++);
    }

    void take(int marker) {
        if (marker == startOfImage || marker == 0)
            refuseDamaged(m_file, "its segments are out of order");
        const std::size_t length = static_cast<std::size_t>(byteAt(m_at) * 256 + byteAt(m_at + 1));
        if (length < 2 || m_at + length > m_bytes.size())
            refuseDamaged(m_file, "it is cut short");
        const std::string_view content = m_bytes.substr(m_at + 2, length - 2);
        if ((marker >= application0 && marker <= application15) || marker == comment)
            sort(marker, content);
        else
            keep(marker, content);
        m_at += length;
        if (marker == startOfScan)
            copyScan();
    }

    // Nobody could say what the colours mean by it, and it may be anything.
    void dropProfile() {
        m_parts.note(brokenProfile);
        m_parts.iccProfile.clear();
        for (auto span = m_profileAt.rbegin(); span != m_profileAt.rend(); ++span)
            m_parts.kept.erase(span->first, span->second);
    }

    void keep(int marker, std::string_view content) {
        const std::size_t length = content.size() + 2;
        m_parts.kept += '\xff';
        m_parts.kept += static_cast<char>(marker);
        m_parts.kept += static_cast<char>(length / 256);
        m_parts.kept += static_cast<char>(length % 256);
        m_parts.kept += content;
    }

    void sort(int marker, std::string_view content) {
        if (marker == application0 && beginsWith(content, jfifName) && content.size() >= 14) {
            keepJfif(content);
        } else if (marker == application2 && beginsWith(content, iccName) &&
                   content.size() > iccName.size() + 2) {
            m_profileAt.emplace_back(m_parts.kept.size(), content.size() + 4);
            m_profile[static_cast<unsigned char>(content[iccName.size()])] =
                content.substr(iccName.size() + 2);
            keep(marker, content);
        } else if (marker == application14 && beginsWith(content, adobeName) &&
                   content.size() >= adobeLength) {
            keepAdobe(content);
        } else {
            noteBeside(marker, content);
        }
    }

    // Which way its colours are coded; decoders read no further (ITU-T T.872).
    void keepAdobe(std::string_view content) {
        if (content.size() > adobeLength)
            m_parts.note("other data");
        keep(application14, content.substr(0, adobeLength));
    }

    // Without the small picture that may be in it.
    void keepJfif(std::string_view content) {
        if (content.size() > 14)
            m_parts.note("a small copy of the picture");
        keep(application0, std::string(content.substr(0, 12)) + std::string(2, '\0'));
    }

    void noteBeside(int marker, std::string_view content) {
        if (marker == comment) {
            m_parts.note("a comment");
        } else if (marker == application1 && beginsWith(content, exifName)) {
            m_parts.note("data of the camera (Exif)");
            if (m_parts.exif.empty())
                m_parts.exif = content.substr(exifName.size());
        } else if (marker == application1) {
            m_parts.noteXmp(content);
        } else if (marker == application13) {
            m_parts.note("captions (IPTC)");
        } else {
            m_parts.note("other data");
        }
    }

    // Up to the next marker that is no part of the scan; 0xff 0x00 is a byte of it, and so are the
    // restart markers.
    void copyScan() {
        const std::size_t begin = m_at;
        while (true) {
            const std::size_t next = m_bytes.find('\xff', m_at);
            if (next == std::string_view::npos)
                refuseDamaged(m_file, "it is cut short");
            const int marker = byteAt(next + 1);
            m_at = next;
            if (marker != 0 && marker != 0xff && (marker < 0xd0 || marker > 0xd7))
                break;
            m_at = marker == 0xff ? next + 1 : next + 2;
        }
        m_parts.kept += m_bytes.substr(begin, m_at - begin);
    }

    const std::string& m_file;
    std::string_view m_bytes;
    std::size_t m_at = 0;
    PictureParts m_parts;
    std::map<int, std::string> m_profile;                          // its pieces by number
    std::vector<std::pair<std::size_t, std::size_t>> m_profileAt;  // their places in what is kept
};

}  // namespace

PictureParts jpegParts(const std::string& file, std::string_view bytes) {
    return Segments(file, bytes).sorted();
}

}  // namespace rackbook
