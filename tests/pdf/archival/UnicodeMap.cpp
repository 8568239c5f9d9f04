#include "UnicodeMap.h"

#include "ContentTokens.h"

namespace rackbook {

namespace {

// Adds to the last two bytes.
std::string advanced(std::string value, unsigned by) {
    if (value.size() < 2)
        return value;
    const unsigned last = codeIn(value.substr(value.size() - 2)) + by;
    value[value.size() - 2] = static_cast<char>(last >> 8);
    value[value.size() - 1] = static_cast<char>(last & 0xFF);
    return value;
}

void addRange(std::map<unsigned, std::string>& codes, const Operand& first, const Operand& last,
              const Operand& values) {
    const unsigned begin = codeIn(first.text);
    for (unsigned code = begin; code <= codeIn(last.text); ++code) {
        if (values.kind == Operand::Kind::string)
            codes[code] = advanced(values.text, code - begin);
        else if (code - begin < values.items.size())
            codes[code] = values.items[code - begin].text;
    }
}

}  // namespace

unsigned codeIn(const std::string& bytes) {
    unsigned code = 0;
    for (const char c : bytes)
        code = code * 256 + static_cast<unsigned char>(c);
    return code;
}

std::map<unsigned, std::string> unicodeMapIn(const std::string& cmap) {
    std::map<unsigned, std::string> codes;
    for (const Operation& operation : operationsIn(cmap)) {
        const auto& operands = operation.operands;
        if (operation.name == "endbfchar")
            for (std::size_t i = 0; i + 1 < operands.size(); i += 2)
                codes[codeIn(operands[i].text)] = operands[i + 1].text;
        if (operation.name == "endbfrange")
            for (std::size_t i = 0; i + 2 < operands.size(); i += 3)
                addRange(codes, operands[i], operands[i + 1], operands[i + 2]);
    }
    return codes;
}

}  // namespace rackbook
