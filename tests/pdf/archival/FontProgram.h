// A TrueType font program as bytes (OpenType specification, "The OpenType Font File").
#pragma once

#include <cstddef>
#include <string>

namespace rackbook {

class TrueTypeProgram {
public:
    // Throws std::runtime_error where a table is missing or cut off.
    explicit TrueTypeProgram(const std::string& bytes);

    std::size_t glyphs() const { return m_glyphs; }
    // In thousandths of an em.
    double width(std::size_t glyph) const;
    bool hasOutline(std::size_t glyph) const;

private:
    std::size_t number(std::size_t at, std::size_t length) const;
    std::size_t table(const std::string& tag) const;

    std::string m_bytes;
    std::size_t m_glyphs = 0;
    std::size_t m_unitsPerEm = 0;
    std::size_t m_metrics = 0;  // how many entries hmtx has
    bool m_longOffsets = false;
};

}  // namespace rackbook
