// The operators of a content stream or a CMap with what stands before each (ISO
// 32000-1, 7.2, 7.8.2).
#pragma once

#include <string>
#include <vector>

namespace rackbook {

struct Operand {
    enum class Kind { number, name, string, array, dictionary };
    Kind kind = Kind::number;
    double number = 0;
    std::string text;            // of a name without its slash, the bytes of a string
    std::vector<Operand> items;  // of an array; of a dictionary key, value, key, value …
};

struct Operation {
    std::string name;
    std::vector<Operand> operands;  // of an inline image ("BI") its dictionary
};

// Throws std::runtime_error where the syntax is broken.
std::vector<Operation> operationsIn(const std::string& content);

// The value of a dictionary's key, or nothing.
const Operand* memberOf(const Operand& dictionary, const std::string& key);

}  // namespace rackbook
