#include "pdf/CarriedFilesParser.h"

#include <podofo/podofo.h>

#include <array>
#include <fstream>
#include <new>
#include <set>
#include <string_view>

#include "pdf/CarriedFiles.h"
#include "pdf/CarriedFilesAnswer.h"

namespace rackbook {

namespace {

using PoDoFo::PdfObject;

constexpr std::size_t mostFiles = mostCarriedFiles;
constexpr int deepestNames = 32;

struct TooLarge {};

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

class FilesIn {
public:
    FilesIn(PoDoFo::PdfVecObjects& objects, const PdfObject& trailer, std::size_t mostBytes)
        : m_objects(objects), m_trailer(trailer), m_bytesLeft(mostBytes) {}

    std::string answer() {
        appendText(m_answer, answerFound);
        const PdfObject* info = entry(&m_trailer, "Info");
        appendText(m_answer, textOf(entry(info, "Title")));
        appendText(m_answer, textOf(entry(info, "CreationDate")));
        const PdfObject* catalog = entry(&m_trailer, "Root");
        const PdfObject* associated = entry(catalog, "AF");
        if (associated && associated->IsArray()) {
            for (std::size_t i = 0; i < associated->GetArray().size(); ++i)
                addFile(resolved(&associated->GetArray()[i]));
        } else {
            addNamed(entry(entry(catalog, "Names"), "EmbeddedFiles"), 0);
        }
        return m_answer;
    }

private:
    // References to references do not stand in files that are sound.
    const PdfObject* resolved(const PdfObject* object) const {
        for (int step = 0; object && object->IsReference(); ++step)
            object = step < 4 ? m_objects.GetObject(object->GetReference()) : nullptr;
        return object;
    }

    const PdfObject* entry(const PdfObject* parent, const char* key) const {
        return parent && parent->IsDictionary() ? resolved(parent->GetDictionary().GetKey(key))
                                                : nullptr;
    }

    static std::string textOf(const PdfObject* object) {
        return object && (object->IsString() || object->IsHexString())
                   ? object->GetString().GetStringUtf8()
                   : std::string();
    }

    // A tree that comes back to itself ends at the depth or at the number of files.
    void addNamed(const PdfObject* node, int depth) {
        if (!node || depth > deepestNames || !m_seen.insert(node).second)
            return;
        const PdfObject* names = entry(node, "Names");
        if (names && names->IsArray())
            for (std::size_t i = 1; i < names->GetArray().size(); i += 2)
                addFile(resolved(&names->GetArray()[i]));
        const PdfObject* kids = entry(node, "Kids");
        if (kids && kids->IsArray())
            for (std::size_t i = 0; i < kids->GetArray().size(); ++i)
                addNamed(resolved(&kids->GetArray()[i]), depth + 1);
    }

    void addFile(const PdfObject* specification) {
        const PdfObject* streams = entry(specification, "EF");
        const PdfObject* stream = entry(streams, "UF");
        if (!stream)
            stream = entry(streams, "F");
        if (!stream || !stream->HasStream())
            return;
        if (++m_files > mostFiles)
            throw TooLarge{};
        const PdfObject* name = entry(specification, "UF");
        appendText(m_answer, textOf(name ? name : entry(specification, "F")));
        const PdfObject* mediaType = entry(stream, "Subtype");
        appendText(m_answer,
                   mediaType && mediaType->IsName() ? mediaType->GetName().GetName() : "");
        appendText(m_answer, textOf(entry(specification, "Desc")));
        std::string bytes;
        BoundedOutput output(bytes, m_bytesLeft);
        stream->GetStream()->GetFilteredCopy(&output);
        m_bytesLeft -= bytes.size();
        appendText(m_answer, bytes);
    }

    PoDoFo::PdfVecObjects& m_objects;
    const PdfObject& m_trailer;
    std::size_t m_bytesLeft;
    std::size_t m_files = 0;
    std::set<const PdfObject*> m_seen;
    std::string m_answer;
};

std::string only(const char* word) {
    std::string answer;
    appendText(answer, word);
    return answer;
}

std::string parsed(const std::string& path, std::size_t mostBytes) {
    PoDoFo::PdfVecObjects objects;
    PoDoFo::PdfParser parser(&objects);
    parser.ParseFile(path.c_str(), true);
    if (parser.GetEncrypted())
        return only(answerEncrypted);
    return FilesIn(objects, *parser.GetTrailer(), mostBytes).answer();
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

std::string carriedFilesAnswer(const std::string& path, std::size_t mostBytes) {
    PoDoFo::PdfError::EnableDebug(false);
    PoDoFo::PdfError::EnableLogging(false);
    try {
        return parsed(path, mostBytes);
    } catch (const TooLarge&) {
        return only(answerTooLarge);
    } catch (const PoDoFo::PdfError& error) {
        if (error.GetError() == PoDoFo::ePdfError_OutOfMemory)
            throw std::bad_alloc();
    }
    return only(holdsEncryptionKey(path) ? answerEncrypted : answerDamaged);
}

}  // namespace rackbook
