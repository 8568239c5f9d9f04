// What a field's type is, for code that walks the fields of a record.
#pragma once

#include <optional>
#include <type_traits>
#include <vector>

#include "records/Ref.h"

namespace rackbook {

template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};

template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};

template <class T>
struct IsRef : std::false_type {};
template <class R>
struct IsRef<Ref<R>> : std::true_type {
    using Target = R;
};

template <class T, class = void>
struct HasFields : std::false_type {};

namespace detail {
struct AnyVisitor {
    template <class T>
    void operator()(const char*, T&) {}
};
}  // namespace detail

template <class T>
struct HasFields<
    T, std::void_t<decltype(T::fields(std::declval<T&>(), std::declval<detail::AnyVisitor&>()))>>
    : std::true_type {};

}  // namespace rackbook
