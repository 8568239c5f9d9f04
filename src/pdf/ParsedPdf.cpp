#include "pdf/ParsedPdf.h"

#include <array>
#include <fstream>
#include <new>
#include <string_view>

#include "pdf/CarriedFilesAnswer.h"

namespace rackbook {

namespace {

using PoDoFo::PdfObject;

// Takes decoded bytes up to a limit, so that a small stream cannot blow up.
class BoundedOutput : public PoDoFo::PdfOutputStream {
public:
    BoundedOutput(std::string& bytes, std::size_t most) : m_bytes(bytes), m_most(most) {}

    PoDoFo::pdf_long Write(const char* part, PoDoFo::pdf_long length) override {
        if (static_cast<std::size_t>(length) > m_most - m_bytes.size())
            throw TooLarge{};
        m_bytes.append(part, static_cast<std::size_t>(length));
        return length;
    }
    void Close() override {}

private:
    std::string& m_bytes;
    std::size_t m_most;
};

std::string only(const char* word) {
    std::string answer;
    appendText(answer, word);
    return answer;
}

std::string parsed(const std::string& path,
                   const std::function<std::string(const ParsedPdf&)>& work) {
    PoDoFo::PdfVecObjects objects;
    PoDoFo::PdfParser parser(&objects);
    parser.ParseFile(path.c_str(), true);
    if (parser.GetEncrypted())
        return only(answerEncrypted);
    return work(ParsedPdf(objects, *parser.GetTrailer()));
}

// The library does not say why it gave up where it cannot undo an older encryption; its key always
// stands in plain bytes (ISO 32000-1, 7.6.1).
bool holdsEncryptionKey(const std::string& path) {
    constexpr std::string_view key = "/Encrypt";
    std::ifstream file(path, std::ios::binary);
    std::string window;
    std::array<char, 1 << 16> part{};
    while (file.read(part.data(), part.size()) || file.gcount() > 0) {
        window.append(part.data(), static_cast<std::size_t>(file.gcount()));
        if (window.find(key) != std::string::npos)
            return true;
        if (window.size() > key.size())
            window.erase(0, window.size() - key.size());
    }
    return false;
}

}  // namespace

const PdfObject* ParsedPdf::resolved(const PdfObject* object) const {
    for (int step = 0; object && object->IsReference(); ++step)
        object = step < 4 ? m_objects.GetObject(object->GetReference()) : nullptr;
    return object;
}

const PdfObject* ParsedPdf::entry(const PdfObject* parent, const char* key) const {
    return parent && parent->IsDictionary() ? resolved(parent->GetDictionary().GetKey(key))
                                            : nullptr;
}

std::string decodedStream(const PdfObject& stream, std::size_t most) {
    std::string bytes;
    BoundedOutput output(bytes, most);
    stream.GetStream()->GetFilteredCopy(&output);
    return bytes;
}

std::string answerFromPdf(const std::string& path,
                          const std::function<std::string(const ParsedPdf&)>& work) {
    PoDoFo::PdfError::EnableDebug(false);
    PoDoFo::PdfError::EnableLogging(false);
    try {
        return parsed(path, work);
    } catch (const TooLarge&) {
        return only(answerTooLarge);
    } catch (const TooMany&) {
        return only(answerTooMany);
    } catch (const PoDoFo::PdfError& error) {
        if (error.GetError() == PoDoFo::ePdfError_OutOfMemory)
            throw std::bad_alloc();
    }
    return only(holdsEncryptionKey(path) ? answerEncrypted : answerDamaged);
}

}  // namespace rackbook
