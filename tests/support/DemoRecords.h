// The records of the demonstration edition, as its files hold them.
#pragma once

#include "base/Files.h"
#include "exchange/RecordFiles.h"
#include "records/RecordSet.h"
#include "support/Paths.h"

namespace rackbook::test {

inline RecordSet demoRecords() {
    RecordFileReader reader(sourcePath("schema"));
    for (const std::string& file : filesBelow(sourcePath("demo-edition"), ".json").paths)
        reader.read(file, readFile(file, 1 << 22));
    RecordSet records;
    for (IncomingRecord& incoming : reader.records())
        records.add(std::move(incoming.record));
    return records;
}

}  // namespace rackbook::test
