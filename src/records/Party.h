// A person or body in a role.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/EnumText.h"
#include "records/RecordKind.h"

namespace rackbook {

enum class PartyRole { maker, printer, publisher, holder, supplier };
template <>
struct EnumText<PartyRole> {
    static constexpr const char* names[] = {"maker", "printer", "publisher", "holder", "supplier"};
};

struct Party {
    static constexpr RecordKind kind = RecordKind::party;
    std::string id;
    std::string name;
    std::vector<PartyRole> roles;
    std::optional<std::string> contact;  // private: leaves the book only when asked for
    bool contactWithheld = false;        // a contact exists and was left out of this copy
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("name", r.name);
        v("roles", r.roles);
        v("contact", r.contact);
        v("contactWithheld", r.contactWithheld);
        v("note", r.note);
    }
};

}  // namespace rackbook
