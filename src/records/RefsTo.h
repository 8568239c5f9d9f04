// Whether a list of references names a record.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "records/Ref.h"

namespace rackbook {

template <class R>
bool isAmong(const std::vector<Ref<R>>& refs, const std::string& id) {
    return std::any_of(refs.begin(), refs.end(), [&](const Ref<R>& ref) { return ref.id == id; });
}

}  // namespace rackbook
