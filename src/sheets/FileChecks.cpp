#include "sheets/FileChecks.h"

#include <algorithm>
#include <optional>

#include "base/Error.h"
#include "base/Numbers.h"
#include "base/Text.h"

namespace rackbook {

namespace {

bool contains(const std::vector<std::string>& names, const std::string& name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

std::optional<double> numberIn(const Tree& tree) {
    if (const std::int64_t* whole = tree.asWhole())
        return static_cast<double>(*whole);
    if (const double* real = tree.asReal())
        return *real;
    return std::nullopt;
}

}  // namespace

void FileChecks::refuse(const std::string& pointer, const std::string& what,
                        const std::string& remedy) const {
    throw InputError(pointer.empty() ? m_file : m_file + " " + pointer, what, remedy);
}

std::string FileChecks::pointerTo(const std::string& parent, const std::string& name) {
    std::string pointer = parent + "/";
    for (const char c : name)
        pointer += c == '~' ? std::string("~0") : c == '/' ? std::string("~1") : std::string(1, c);
    return pointer;
}

std::string FileChecks::pointerTo(const std::string& parent, std::size_t index) {
    return parent + "/" + std::to_string(index);
}

std::string FileChecks::hint(const std::string& name, const std::vector<std::string>& known) {
    if (const auto near = nearestName(name, known))
        return "Write \"" + *near + "\" if that was meant.";
    constexpr std::size_t mostListed = 20;
    return known.size() > mostListed
               ? "The files that come with the program have all that are known."
               : "Known are: " + joined(known) + ".";
}

const Tree::Object& FileChecks::members(const Tree& tree, const std::string& pointer,
                                        const std::vector<std::string>& known,
                                        const std::string& kind) const {
    const Tree::Object* object = tree.asObject();
    if (!object)
        refuse(pointer, "this is not an object", "Write the members in braces.");
    std::vector<std::string> seen;
    for (const auto& [name, value] : *object) {
        if (!contains(known, name))
            refuse(pointerTo(pointer, name), "unknown " + kind + " \"" + printable(name) + "\"",
                   hint(name, known));
        if (contains(seen, name))
            refuse(pointerTo(pointer, name), kind + " \"" + name + "\" is given twice",
                   "Leave one of them out.");
        seen.push_back(name);
    }
    return *object;
}

const std::string& FileChecks::text(const Tree& tree, const std::string& pointer) const {
    const std::string* words = tree.asText();
    if (!words)
        refuse(pointer, "this is not text", "Write it in quotation marks.");
    return *words;
}

std::vector<std::string> FileChecks::texts(const Tree& tree, const std::string& pointer) const {
    const Tree::Array* array = tree.asArray();
    if (!array)
        refuse(pointer, "this is not a list", "Write a list of texts in square brackets.");
    std::vector<std::string> words;
    for (std::size_t i = 0; i < array->size(); ++i)
        words.push_back(text((*array)[i], pointerTo(pointer, i)));
    return words;
}

double FileChecks::number(const Tree& tree, const std::string& pointer, double least,
                          double most) const {
    const auto value = numberIn(tree);
    if (!value || !(*value >= least && *value <= most))
        refuse(pointer,
               "this is not a number from " + formatShortest(least) + " to " + formatShortest(most),
               "Write such a number, without a unit.");
    return *value;
}

const std::string& FileChecks::languageTag(const Tree& tree, const std::string& pointer) const {
    const std::string& tag = text(tree, pointer);
    const bool plain = std::all_of(tag.begin(), tag.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               c == '-';
    });
    if (tag.size() < 2 || !plain)
        refuse(pointer, "\"" + printable(tag) + "\" is not a language tag",
               "Write a tag of BCP 47 such as \"en\" or \"pt-BR\".");
    return tag;
}

std::vector<std::string> FileChecks::fontFamilies(const Tree& tree,
                                                  const std::string& pointer) const {
    std::vector<std::string> families = texts(tree, pointer);
    if (families.empty() || contains(families, ""))
        refuse(pointer, "a font family has no name",
               "Write at least one family, for instance \"Noto Sans\".");
    return families;
}

}  // namespace rackbook
