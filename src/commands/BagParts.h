// What goes into a bag beside its manifests, part by part. Each writes below FOLDER/data.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "commands/Command.h"
#include "records/RecordSet.h"
#include "store/BookFile.h"

namespace rackbook {

// Where the parts lie, below the bag; take-bag looks for them there.
constexpr const char* bagRecords = "data/records";
constexpr const char* bagJournal = "data/journal.jsonl";

// A line of bag-info.txt in a bag that says nothing about people.
constexpr const char* bagPeopleLabel = "Personal-Data";
constexpr const char* bagPeopleLeftOut = "left out";

// A file for each kind, and the bytes of attachments where wanted; returns how many attachments
// have none.
std::size_t writeBagRecords(const BookFile& book, const std::vector<Record>& records,
                            const std::string& bag, bool withFiles);
// The journal with its hashes, an entry a line.
void writeBagJournal(const BookFile& book, const std::string& bag);
// A table in CSV for each kind, every field.
void writeBagTables(const std::vector<Record>& records, const std::string& bag);
// The schemas and the page that explains them.
void writeBagSchemas(const DataFolders& folders, const std::string& bag);
// Dublin Core for each of these editions.
void writeBagDescriptions(const RecordSet& all, const std::vector<Record>& records,
                          const Book& studio, const std::string& bag);
// The documentation of each edition as of now, as rackbook sheet makes it.
void writeBagSheets(CommandContext& context, const std::vector<Record>& records,
                    const std::string& bag);

struct HandedOutSheets {
    std::size_t copied = 0;
    std::vector<std::string> missing;  // ids of issues whose file is not among those
};

// Copies the files of sheets that were handed out, known by the hash in the register, from `folder`
// and those below it. An empty name: none are looked for.
HandedOutSheets copyHandedOut(const std::vector<Record>& records, const std::string& folder,
                              const std::string& bag);

}  // namespace rackbook
