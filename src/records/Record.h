// Any record, and loops over all kinds of record.
#pragma once

#include <string>
#include <string_view>
#include <type_traits>
#include <variant>

#include "records/Attachment.h"
#include "records/Balance.h"
#include "records/Block.h"
#include "records/Book.h"
#include "records/Drawdown.h"
#include "records/Edition.h"
#include "records/Impression.h"
#include "records/Issue.h"
#include "records/Layer.h"
#include "records/Look.h"
#include "records/Lot.h"
#include "records/Metering.h"
#include "records/Mix.h"
#include "records/Move.h"
#include "records/Party.h"
#include "records/Place.h"
#include "records/Pull.h"
#include "records/Reading.h"
#include "records/StockTake.h"
#include "records/Transfer.h"
#include "records/Weather.h"
#include "records/Weighing.h"

namespace rackbook {

// In the order of RecordKind.
using Record = std::variant<Book, Party, Place, Edition, Block, Lot, Balance, Mix, Weighing, Layer,
                            Impression, Pull, Drawdown, Reading, Transfer, Issue, Move, Look,
                            Attachment, StockTake, Weather, Metering>;

template <class R>
struct TypeTag {
    using Type = R;
};

namespace detail {
template <class F, class... Rs>
void forEachIn(const std::variant<Rs...>*, F&& f) {
    (f(TypeTag<Rs>{}), ...);
}
}  // namespace detail

// Calls f(TypeTag<R>{}) for every record type, in the order of RecordKind.
template <class F>
void forEachRecordType(F&& f) {
    detail::forEachIn(static_cast<const Record*>(nullptr), f);
}

// Calls f(TypeTag<R>{}) for the type of that kind.
template <class F>
void withRecordType(RecordKind kind, F&& f) {
    forEachRecordType([&](auto tag) {
        if (decltype(tag)::Type::kind == kind)
            f(tag);
    });
}

inline RecordKind kindOf(const Record& record) {
    return std::visit([](const auto& r) { return std::decay_t<decltype(r)>::kind; }, record);
}

inline const std::string& idOf(const Record& record) {
    return std::visit([](const auto& r) -> const std::string& { return r.id; }, record);
}

// "mix grey-stock", as messages and lists name a record.
inline std::string nameOf(RecordKind kind, std::string_view id) {
    return std::string(textOf(kind)) + " " + std::string(id);
}

// The happening that a record is about, where it is about one moment; absent for things that last.
std::optional<EdtfDate> happenedAt(const Record& record);

// True where every field of the two is equal.
bool sameFacts(const Record& a, const Record& b);

}  // namespace rackbook
