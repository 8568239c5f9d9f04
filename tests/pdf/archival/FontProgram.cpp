#include "FontProgram.h"

#include <algorithm>
#include <stdexcept>

namespace rackbook {

TrueTypeProgram::TrueTypeProgram(const std::string& bytes) : m_bytes(bytes) {
    m_glyphs = number(table("maxp") + 4, 2);
    m_unitsPerEm = number(table("head") + 18, 2);
    m_longOffsets = number(table("head") + 50, 2) != 0;
    m_metrics = number(table("hhea") + 34, 2);
    if (m_unitsPerEm == 0 || m_metrics == 0)
        throw std::runtime_error("font program: no measures");
}

double TrueTypeProgram::width(std::size_t glyph) const {
    const std::size_t entry = std::min(glyph, m_metrics - 1);
    return static_cast<double>(number(table("hmtx") + 4 * entry, 2)) * 1000 /
           static_cast<double>(m_unitsPerEm);
}

bool TrueTypeProgram::hasOutline(std::size_t glyph) const {
    const std::size_t size = m_longOffsets ? 4 : 2;
    const std::size_t at = table("loca") + glyph * size;
    return number(at + size, size) > number(at, size);
}

std::size_t TrueTypeProgram::number(std::size_t at, std::size_t length) const {
    if (at + length > m_bytes.size())
        throw std::runtime_error("font program: cut off");
    std::size_t value = 0;
    for (std::size_t i = 0; i < length; ++i)
        value = value * 256 + static_cast<unsigned char>(m_bytes[at + i]);
    return value;
}

std::size_t TrueTypeProgram::table(const std::string& tag) const {
    const std::size_t tables = number(4, 2);
    for (std::size_t i = 0; i < tables; ++i)
        if (m_bytes.compare(12 + 16 * i, 4, tag) == 0)
            return number(12 + 16 * i + 8, 4);
    throw std::runtime_error("font program: no table " + tag);
}

}  // namespace rackbook
