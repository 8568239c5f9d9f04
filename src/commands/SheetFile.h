// A sheet's file, as it lies before us, and the records that it carries.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "commands/Command.h"
#include "commands/SheetEstimates.h"
#include "commands/SheetKinds.h"
#include "exchange/SheetFacts.h"
#include "pdf/CarriedFiles.h"

namespace rackbook {

struct CarriedSheet {
    std::string text;    // as it is inside the file
    std::string sha256;  // of the text
    SheetFacts facts;
};

struct SheetFile {
    std::string path;
    std::string sha256;  // of the file's bytes
    std::vector<CarriedSheet> sheets;
};

// Throws InputError where it is no PDF that carries the records of a sheet, and where it changes
// while it is read.
SheetFile readSheetFile(const std::string& path);

// The same by another reader of what is inside.
using CarriedFilesReader = std::function<CarriedFiles(const std::string& path)>;
SheetFile readSheetFile(const std::string& path, const CarriedFilesReader& read);

// What a carried record says, against what the book would say in its place.
struct SheetComparison {
    std::vector<FactsDifference> differences;
    bool isRewritten = false;  // it says the same, in other bytes than rackbook writes

    bool isTrue() const { return differences.empty() && !isRewritten; }
};

// What the book would put inside the same sheet today: the same kind, subject and day. Throws
// InputError for a kind or a day that this version does not know.
class BookSheets {
public:
    // The records must outlive it.
    explicit BookSheets(const RecordSet& records) : m_indexes(records) {}
    std::string textFor(const SheetHeading& heading, bool namesHolders);
    SheetComparison compare(const CarriedSheet& sheet);

private:
    void readyFor(const SheetKind& kind, const SheetHeading& heading, bool namesHolders);

    SheetIndexes m_indexes;
    std::map<CivilMinute, SheetEstimates> m_estimates;  // by day
    // Of the kind, day and choice last asked for: many sheets of one file are alike in that.
    std::string m_last;
    std::unique_ptr<SheetRecords> m_behind;
};

// "EEL:1-3,7", "layer EEL/L4" …
std::string aboutWords(const RecordSet& records, const SheetAbout& about);

}  // namespace rackbook
