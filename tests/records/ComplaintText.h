// What the invariants say of a record, as text.
#pragma once

#include <gtest/gtest.h>

#include <string>

#include "records/Invariants.h"
#include "support/SampleRecords.h"

namespace rackbook::test {

inline std::string textOfAll(const Record& record) {
    std::string text;
    for (const Complaint& complaint : complaintsAbout(record)) {
        if (!text.empty())
            text += "\n";
        text += complaint.pointer + ": " + complaint.what + ". " + complaint.remedy;
    }
    return text;
}

// Of a record that is sound until `spoil` has had its way.
template <class R>
std::string complaints(void (*spoil)(R&)) {
    R record = filled<R>(true);
    record.id = "sample";
    Needs{}(record, "-a");
    EXPECT_EQ(textOfAll(record), "") << "the sample itself must be sound";
    spoil(record);
    return textOfAll(record);
}

}  // namespace rackbook::test
