// The message of what a call throws; says so where it throws nothing or something else.
#pragma once

#include <exception>
#include <string>

#include "base/Error.h"

namespace rackbook::test {

template <class Failure = Error, class Call>
std::string messageOf(const Call& call) {
    try {
        call();
    } catch (const Failure& failure) {
        return failure.what();
    } catch (const std::exception& other) {
        return std::string("(another kind of failure) ") + other.what();
    }
    return "(nothing was thrown)";
}

}  // namespace rackbook::test
