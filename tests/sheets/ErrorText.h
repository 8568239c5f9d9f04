// The message of what a call throws, or nothing.
#pragma once

#include <string>

#include "base/Error.h"

namespace rackbook {

template <typename Failure, typename Call>
std::string messageOf(const Call& call) {
    try {
        call();
    } catch (const Failure& failure) {
        return failure.what();
    }
    return {};
}

}  // namespace rackbook
