#include "base/Translated.h"

namespace rackbook {

namespace {

Translating inUse = nullptr;

}  // namespace

std::string translated(const char* context, const char* words) {
    return inUse == nullptr ? std::string(words) : inUse(context, words);
}

std::string translated(const char* context, const std::string& words) {
    return translated(context, words.c_str());
}

std::string filledIn(const std::string& words, std::initializer_list<std::string> parts) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool isMark =
            words[i] == '%' && i + 1 < words.size() && words[i + 1] >= '1' && words[i + 1] <= '9';
        const auto part = isMark ? static_cast<std::size_t>(words[i + 1] - '1') : parts.size();
        if (part < parts.size()) {
            text += *(parts.begin() + part);
            ++i;
        } else {
            text += words[i];
        }
    }
    return text;
}

void setTranslating(Translating translating) {
    inUse = translating;
}

}  // namespace rackbook
