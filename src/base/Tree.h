// A small value tree: what a reading command reports as JSON, and what a template file says. It
// lets rooms that do not know the JSON library pass structured data.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace rackbook {

class Tree {
public:
    using Array = std::vector<Tree>;
    using Object = std::vector<std::pair<std::string, Tree>>;  // keeps the order of writing

    Tree() : m_value(nullptr) {}
    Tree(std::nullptr_t) : m_value(nullptr) {}
    Tree(bool value) : m_value(value) {}
    Tree(int value) : m_value(static_cast<std::int64_t>(value)) {}
    Tree(std::int64_t value) : m_value(value) {}
    Tree(std::size_t value) : m_value(static_cast<std::int64_t>(value)) {}
    Tree(double value) : m_value(value) {}
    Tree(const char* value) : m_value(std::string(value)) {}
    Tree(std::string value) : m_value(std::move(value)) {}
    Tree(Array value) : m_value(std::move(value)) {}
    Tree(Object value) : m_value(std::move(value)) {}

    static Tree array() { return Tree(Array{}); }
    static Tree object() { return Tree(Object{}); }

    // Appends; makes a null tree an object or an array first.
    Tree& set(std::string name, Tree value);
    Tree& add(Tree value);

    bool isNull() const { return std::holds_alternative<std::nullptr_t>(m_value); }
    const bool* asBool() const { return std::get_if<bool>(&m_value); }
    const std::int64_t* asWhole() const { return std::get_if<std::int64_t>(&m_value); }
    const double* asReal() const { return std::get_if<double>(&m_value); }
    const std::string* asText() const { return std::get_if<std::string>(&m_value); }
    const Array* asArray() const { return std::get_if<Array>(&m_value); }
    const Object* asObject() const { return std::get_if<Object>(&m_value); }

    // The member of that name, or nothing; nothing too where this is no object.
    const Tree* find(const std::string& name) const;

private:
    std::variant<std::nullptr_t, bool, std::int64_t, double, std::string, Array, Object> m_value;
};

}  // namespace rackbook
