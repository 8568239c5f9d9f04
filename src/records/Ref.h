// A record named by another: its id, typed by what it must be.
#pragma once

#include <string>

namespace rackbook {

template <class R>
struct Ref {
    std::string id;

    friend bool operator==(const Ref& a, const Ref& b) { return a.id == b.id; }
    friend bool operator!=(const Ref& a, const Ref& b) { return a.id != b.id; }
    friend bool operator<(const Ref& a, const Ref& b) { return a.id < b.id; }
};

}  // namespace rackbook
