// What every fuzz target has: bytes in, nothing out but a crash where something is wrong.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "base/Error.h"

namespace rackbook::fuzz {

inline std::string_view textOf(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

// A property that must hold for whatever came in.
inline void require(bool holds, const char* property) {
    if (holds)
        return;
    std::fprintf(stderr, "does not hold: %s\n", property);
    std::abort();
}

// Refusing is right; a message is for a screen, and holds no control characters but line feeds.
template <class Work>
void tolerateRefusal(Work&& work) {
    try {
        work();
    } catch (const Error& error) {
        require(std::string_view(error.what()).size() < 1'000'000, "messages are short");
    }
}

}  // namespace rackbook::fuzz

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);
