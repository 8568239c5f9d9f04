// The sheets that can be made. A new one is a row in sheetKinds() and a template.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "cli/Arguments.h"
#include "commands/SheetSubject.h"
#include "exchange/SheetRecords.h"
#include "records/RecordSet.h"
#include "sheets/PageModel.h"
#include "sheets/Template.h"
#include "sheets/TextMeasurer.h"

namespace rackbook {

struct SheetRequest {
    const RecordSet& records;
    const SheetSubject& subject;
    CivilMinute asOf = 0;
    bool namesHolders = false;
    const SheetTemplate& sheetTemplate;
    const TextMeasurer& measurer;
    std::string created;  // as in DocumentInfo
    const Arguments& arguments;
    // Nothing where the book does not hold the picture's bytes.
    std::function<std::optional<PictureFile>(const Attachment&)> pictureOf;
    // The records behind a sheet about that, to be carried inside it.
    std::function<AssociatedFile(const SheetAbout&)> recordBehind;
    // To be called when each of many sheets is done.
    std::function<void()> oneIsDone;
};

struct SheetKind {
    const char* name = "";  // of the template too
    const char* what = "";
    SubjectKind subject = SubjectKind::book;
    SheetDepth depth;  // of the records behind it
    // Whether the records behind it may say who has what; on its pages it may stand all the same.
    bool mayNameHolders = true;
    TemplateRules (*rules)() = nullptr;
    // One model a document. Those without a record of their own get that of the whole subject.
    std::vector<PageModel> (*make)(const SheetRequest& request) = nullptr;
    // Options of the verb that only some kinds take, by name.
    std::vector<std::string> options;
    // Its file's name without ".pdf" says the day.
    bool isDated = false;
};

const std::vector<SheetKind>& sheetKinds();

std::vector<std::string> sheetNames();

// Throws UsageError with the nearest name where there is none of that name.
const SheetKind& sheetKindNamed(const std::string& name);

// Of the records behind a sheet of that kind, with holders named where that is asked for and may
// be.
SheetDepth depthOf(const SheetKind& kind, bool namesHolders);

// A code or an id, fit to be part of a file's name.
std::string fitForFile(const std::string& words);

// The name of the record inside a sheet of that kind about that.
std::string recordName(const SheetKind& kind, const SheetAbout& about);

// Ids that differ only in marks that no file name holds, or in capitals, must not become one file:
// numbers a name that is among those taken already, and adds it to them.
void giveNameOfItsOwn(std::string& name, std::set<std::string>& taken);

// What a sheet about that subject is about, by ids.
SheetAbout aboutSubject(const SheetSubject& subject);

}  // namespace rackbook
