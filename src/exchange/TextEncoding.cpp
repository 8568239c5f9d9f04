#include "exchange/TextEncoding.h"

#include <iconv.h>

#include <algorithm>
#include <array>
#include <cerrno>

#include "base/Error.h"
#include "base/Text.h"
#include "exchange/TextBytes.h"

namespace rackbook {

namespace {

constexpr const char* utf8 = "utf-8";
constexpr const char* utf16 = "utf-16";
constexpr const char* utf16le = "utf-16le";
constexpr const char* utf16be = "utf-16be";
constexpr const char* windows1252 = "windows-1252";

struct Mark {
    std::string_view bytes;
    const char* encoding;
};

constexpr Mark marks[] = {{"\xEF\xBB\xBF", utf8}, {"\xFF\xFE", utf16le}, {"\xFE\xFF", utf16be}};

const Mark* markOf(std::string_view bytes) {
    for (const Mark& mark : marks)
        if (bytes.substr(0, mark.bytes.size()) == mark.bytes)
            return &mark;
    return nullptr;
}

// Text in Latin letters has a zero byte beside most of its characters in UTF-16, and none in
// anything else.
const char* plainUtf16(std::string_view bytes) {
    constexpr std::size_t looked = 4096;
    const std::string_view beginning = bytes.substr(0, looked);
    std::array<std::size_t, 2> zeros{};
    for (std::size_t i = 0; i < beginning.size(); ++i)
        if (beginning[i] == '\0')
            ++zeros[i % 2];
    const std::size_t pairs = beginning.size() / 2;
    if (bytes.size() % 2 != 0 || pairs == 0)
        return nullptr;
    if (zeros[1] > pairs / 2 && zeros[0] == 0)
        return utf16le;
    return zeros[0] > pairs / 2 && zeros[1] == 0 ? utf16be : nullptr;
}

class Converter {
public:
    explicit Converter(const std::string& from) : m_handle(iconv_open("UTF-8", from.c_str())) {
        if (m_handle == reinterpret_cast<iconv_t>(-1))
            throw InputError({}, "this system does not know the encoding " + from,
                             "Save the file as UTF-8.");
    }
    ~Converter() { iconv_close(m_handle); }
    Converter(const Converter&) = delete;
    Converter& operator=(const Converter&) = delete;

    // False at bytes that the encoding does not have; `text` holds what stands before them.
    bool convert(std::string_view bytes, std::string& text) {
        std::string input(bytes);  // iconv takes bytes that it might change
        char* from = input.data();
        std::size_t left = input.size();
        std::array<char, 65536> buffer{};
        while (left > 0) {
            char* to = buffer.data();
            std::size_t room = buffer.size();
            const std::size_t done = iconv(m_handle, &from, &left, &to, &room);
            text.append(buffer.data(), buffer.size() - room);
            if (done == static_cast<std::size_t>(-1) && errno != E2BIG)
                return false;
        }
        return true;
    }

private:
    iconv_t m_handle;
};

int lineAtEndOf(const std::string& text) {
    return 1 + static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

std::string place(const std::string& file, int line) {
    return line > 0 ? file + ":" + std::to_string(line) : file;
}

std::string mapsEncoding(const std::string& name) {
    return "\"encoding\": \"" + name + "\"";
}

struct Choice {
    std::string encoding;
    std::size_t markLength = 0;
    bool isGuess = false;
};

Choice choiceFor(std::string_view bytes, const std::optional<std::string>& said,
                 EncodingGuess guess, const std::string& file) {
    if (const Mark* mark = markOf(bytes)) {
        if (said && *said != mark->encoding && !(*said == utf16 && mark->encoding != utf8))
            throw InputError(file,
                             std::string("the file begins with the mark of ") + mark->encoding +
                                 ", and " + *said + " is said",
                             "Leave the encoding out.");
        return {mark->encoding, mark->bytes.size(), false};
    }
    if (said)
        return {*said, 0, false};
    if (const char* found = plainUtf16(bytes))
        return {found, 0, false};
    if (guess == EncodingGuess::windows1252 && invalidUtf8At(bytes))
        return {windows1252, 0, true};
    return {utf8, 0, false};
}

std::string inUtf8(std::string_view bytes, const Choice& choice, const std::string& file) {
    if (choice.encoding == utf8) {
        if (const std::optional<std::size_t> at = invalidUtf8At(bytes))
            throw InputError(place(file, lineAtEndOf(std::string(bytes.substr(0, *at)))),
                             "the text is not UTF-8",
                             "Say in the mapping what it is, such as " + mapsEncoding(windows1252) +
                                 "; rackbook take-table FILE shows what it looks like.");
        return std::string(bytes);
    }
    std::string text;
    if (!Converter(choice.encoding).convert(bytes, text))
        throw InputError(place(file, lineAtEndOf(text)),
                         "the file holds bytes that " + choice.encoding + " does not have",
                         "Say another encoding, or save the file as UTF-8.");
    return text;
}

// Old systems end their lines with CR alone.
void mendLineBreaks(std::string& text) {
    if (text.find('\n') == std::string::npos)
        std::replace(text.begin(), text.end(), '\r', '\n');
}

}  // namespace

const std::vector<std::string>& knownEncodings() {
    static const std::vector<std::string> names = {
        utf8,           utf16,          utf16le,        utf16be,        windows1252,
        "windows-1250", "windows-1251", "windows-1253", "windows-1254", "windows-1257",
        "iso-8859-1",   "iso-8859-2",   "iso-8859-15",  "macintosh",    "ibm437",
        "ibm850",       "ibm852",       "shift_jis"};
    return names;
}

DecodedText decodedText(std::string_view bytes, const std::optional<std::string>& encoding,
                        EncodingGuess guess, const std::string& file) {
    if (bytes.substr(0, 4) == "PK\x03\x04" || bytes.substr(0, 4) == "\xD0\xCF\x11\xE0")
        throw InputError(file, "this is a spreadsheet document or another archive, no CSV text",
                         "Open it in the spreadsheet and save its sheet as CSV.");
    const Choice choice = choiceFor(bytes, encoding, guess, file);
    DecodedText decoded;
    decoded.encoding = choice.encoding;
    decoded.hasMark = choice.markLength > 0;
    decoded.isGuess = choice.isGuess;
    decoded.text = inUtf8(bytes.substr(choice.markLength), choice, file);
    mendLineBreaks(decoded.text);
    if (const std::optional<TextFault> fault =
            textFaultIn(decoded.text, "Give a table as CSV text, or say another encoding."))
        throw InputError(place(file, fault->line), fault->what, fault->remedy);
    return decoded;
}

}  // namespace rackbook
