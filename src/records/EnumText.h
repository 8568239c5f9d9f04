// Words for enumerators: the same in SQL, JSON and on the command line.
#pragma once

#include <cstddef>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// Specialise with `static constexpr const char* names[]`, in the order of the enumerators.
template <class E>
struct EnumText;

template <class E>
const char* textOf(E value) {
    return EnumText<E>::names[static_cast<std::size_t>(value)];
}

template <class E>
std::optional<E> enumFrom(std::string_view text) {
    constexpr std::size_t count = std::size(EnumText<E>::names);
    for (std::size_t i = 0; i < count; ++i)
        if (text == EnumText<E>::names[i])
            return static_cast<E>(i);
    return std::nullopt;
}

template <class E>
std::vector<std::string> enumNames() {
    return {std::begin(EnumText<E>::names), std::end(EnumText<E>::names)};
}

}  // namespace rackbook
