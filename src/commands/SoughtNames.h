// Whether a text says a name, however it is spaced, cased or pointed.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

class SoughtNames {
public:
    // Sought as a whole, and word by word where a word tells something (three letters or more).
    void addName(std::string_view name);
    // Sought as a whole only: an address, the name of a place. Each line and each part between
    // commas and semicolons by itself.
    void addWhole(std::string_view text);

    // What of them the text says, as it was added: a whole one before a word; nothing where none.
    std::optional<std::string> foundIn(std::string_view text) const;
    bool isEmpty() const { return m_sought.empty(); }

private:
    struct Sought {
        std::vector<std::string> words;  // folded, in order
        std::string shown;
    };
    void add(std::string_view text, std::size_t fewestLetters);

    std::vector<Sought> m_sought;  // whole ones before words
};

}  // namespace rackbook
