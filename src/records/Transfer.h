// A consignment, sale, loan, gift or return between parties.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/Impression.h"

namespace rackbook {

enum class TransferKind { consignment, sale, loan, gift, giveBack };
template <>
struct EnumText<TransferKind> {
    static constexpr const char* names[] = {"consignment", "sale", "loan", "gift", "return"};
};

struct Transfer {
    static constexpr RecordKind kind = RecordKind::transfer;
    std::string id;
    TransferKind transferKind = TransferKind::sale;
    std::vector<Ref<Impression>> impressions;
    Ref<Party> giver;
    Ref<Party> receiver;
    EdtfDate agreedOn = EdtfDate::ofMinute(0);
    std::optional<EdtfDate> dueOn;  // when a consignment or loan ends
    std::optional<double> price;    // for all impressions together
    std::optional<std::string> currency;
    std::optional<std::string> terms;
    std::optional<std::string> note;

    template <class Self, class V>
    static void fields(Self& r, V& v) {
        v("id", r.id);
        v("transferKind", r.transferKind);
        v("impressions", r.impressions);
        v("giver", r.giver);
        v("receiver", r.receiver);
        v("agreedOn", r.agreedOn);
        v("dueOn", r.dueOn);
        v("price", r.price);
        v("currency", r.currency);
        v("terms", r.terms);
        v("note", r.note);
    }
};

}  // namespace rackbook
