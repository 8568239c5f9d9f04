// Reads values out of one file of a template and says where one is wrong. Private to sheets/.
#pragma once

#include <string>
#include <vector>

#include "base/Tree.h"

namespace rackbook {

class FileChecks {
public:
    explicit FileChecks(std::string file) : m_file(std::move(file)) {}

    const std::string& file() const { return m_file; }

    // Throws InputError at a JSON pointer (RFC 6901); "" is the whole file.
    [[noreturn]] void refuse(const std::string& pointer, const std::string& what,
                             const std::string& remedy) const;

    static std::string pointerTo(const std::string& parent, const std::string& name);
    static std::string pointerTo(const std::string& parent, std::size_t index);

    // "Write X if that was meant.", or what is known.
    static std::string hint(const std::string& name, const std::vector<std::string>& known);

    // The members of an object, none unknown and none given twice.
    const Tree::Object& members(const Tree& tree, const std::string& pointer,
                                const std::vector<std::string>& known,
                                const std::string& kind) const;

    const std::string& text(const Tree& tree, const std::string& pointer) const;
    std::vector<std::string> texts(const Tree& tree, const std::string& pointer) const;
    double number(const Tree& tree, const std::string& pointer, double least, double most) const;

    // A tag of BCP 47, as far as its characters go.
    const std::string& languageTag(const Tree& tree, const std::string& pointer) const;

    // At least one family, none of them empty.
    std::vector<std::string> fontFamilies(const Tree& tree, const std::string& pointer) const;

private:
    std::string m_file;
};

}  // namespace rackbook
