// A matrix. A reduction block has one state for each cut; each cut destroys the state before it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/Edtf.h"
#include "records/Edition.h"

namespace rackbook {

struct BlockState {
    int ordinal = 1;  // 1, 2, 3 … in the order of cutting
    std::string words;
    std::optional<EdtfDate> cutOn;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("ordinal", r.ordinal);
        v("words", r.words);
        v("cutOn", r.cutOn);
    }
};

struct Block {
    static constexpr RecordKind kind = RecordKind::block;
    std::string id;
    Ref<Edition> edition;
    std::string name;
    std::optional<std::string> material;
    std::optional<std::string> role;  // key block, colour block, reduction block …
    std::vector<BlockState> states;
    MatrixFate fate = MatrixFate::kept;
    std::optional<EdtfDate> fateOn;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("edition", r.edition);
        v("name", r.name);
        v("material", r.material);
        v("role", r.role);
        v("states", r.states);
        v("fate", r.fate);
        v("fateOn", r.fateOn);
        v("note", r.note);
    }
};

}  // namespace rackbook
