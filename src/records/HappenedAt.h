// The moment that a record is about, where it is one that happened.
#pragma once

#include "records/Record.h"

namespace rackbook {

// nullptr for things that last, and where nobody noted it. It lies in the record.
struct HappenedAt {
    const EdtfDate* operator()(const Weighing& r) const { return &r.at; }
    const EdtfDate* operator()(const Pull& r) const { return &r.start; }
    const EdtfDate* operator()(const Move& r) const { return &r.at; }
    const EdtfDate* operator()(const Look& r) const { return &r.at; }
    const EdtfDate* operator()(const Transfer& r) const { return &r.agreedOn; }
    const EdtfDate* operator()(const Issue& r) const { return &r.issuedOn; }
    const EdtfDate* operator()(const Reading& r) const { return known(r.takenOn); }
    const EdtfDate* operator()(const Drawdown& r) const { return known(r.madeOn); }
    const EdtfDate* operator()(const StockTake& r) const { return &r.at; }
    const EdtfDate* operator()(const Weather& r) const { return &r.on; }
    const EdtfDate* operator()(const Metering& r) const { return &r.from; }
    template <class R>
    const EdtfDate* operator()(const R&) const {
        return nullptr;
    }

protected:
    static const EdtfDate* known(const std::optional<EdtfDate>& date) {
        return date ? &*date : nullptr;
    }
};

}  // namespace rackbook
