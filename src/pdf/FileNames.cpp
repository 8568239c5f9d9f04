#include "pdf/FileNames.h"

#include "base/Text.h"

namespace rackbook {

bool isPlainFileName(const std::string& name) {
    return !name.empty() && name.size() <= 255 && !invalidUtf8At(name) &&
           !controlCharacterIn(name) && name.find_first_of("/\\\n\t") == std::string::npos &&
           name.find_first_not_of('.') != std::string::npos;
}

bool isMediaType(const std::string& text) {
    const std::string word =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789!#$&-^_.+";
    const std::size_t slash = text.find_first_not_of(word);
    return slash != std::string::npos && slash > 0 && text[slash] == '/' &&
           slash + 1 < text.size() && text.size() <= 255 &&
           text.find_first_not_of(word, slash + 1) == std::string::npos;
}

}  // namespace rackbook
