#include "base/Tree.h"

namespace rackbook {

Tree& Tree::set(std::string name, Tree value) {
    if (isNull())
        m_value = Object{};
    std::get<Object>(m_value).emplace_back(std::move(name), std::move(value));
    return *this;
}

Tree& Tree::add(Tree value) {
    if (isNull())
        m_value = Array{};
    std::get<Array>(m_value).push_back(std::move(value));
    return *this;
}

const Tree* Tree::find(const std::string& name) const {
    if (const Object* object = asObject())
        for (const auto& [key, value] : *object)
            if (key == name)
                return &value;
    return nullptr;
}

}  // namespace rackbook
