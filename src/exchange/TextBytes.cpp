#include "exchange/TextBytes.h"

#include <algorithm>

#include "base/Text.h"

namespace rackbook {

namespace {

bool beginsWith(std::string_view text, std::string_view beginning) {
    return text.substr(0, beginning.size()) == beginning;
}

int lineAt(std::string_view bytes, std::size_t at) {
    return 1 + static_cast<int>(std::count(bytes.begin(), bytes.begin() + at, '\n'));
}

// A control character that no text has, also where the bytes are no UTF-8.
std::size_t junkAt(std::string_view bytes) {
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        const auto c = static_cast<unsigned char>(bytes[i]);
        if ((c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0x7F)
            return i;
    }
    return bytes.size();
}

}  // namespace

std::optional<TextFault> textFaultIn(std::string_view bytes, const std::string& instead) {
    if (bytes.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return TextFault{0, "the file is empty", "Export it again."};
    if (beginsWith(bytes, "\xFF\xFE") || beginsWith(bytes, "\xFE\xFF"))
        return TextFault{0, "the file is UTF-16", "Save it as UTF-8."};
    if (const std::size_t at = junkAt(bytes); at < bytes.size())
        return TextFault{lineAt(bytes, at), "the file holds bytes that are no text", instead};
    if (const auto at = invalidUtf8At(bytes))
        return TextFault{lineAt(bytes, *at), "the text is not UTF-8", "Save it as UTF-8."};
    return std::nullopt;
}

}  // namespace rackbook
