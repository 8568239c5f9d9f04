// The photograph that a sheet shows.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "records/Attachment.h"
#include "records/RecordSet.h"
#include "sheets/Flow.h"
#include "sheets/PageModel.h"
#include "sheets/SheetWords.h"

namespace rackbook {

struct Photograph {
    PictureFile file;
    std::string caption;  // empty where none is recorded
    std::optional<EdtfDate> takenOn;
};

// Nothing where the book does not hold the picture's bytes.
using PictureSource = std::function<std::optional<PictureFile>(const Attachment&)>;

// The newest of those whose bytes are there, by the day it was taken; those without a day come
// last, and of equals the one that was recorded last is taken. What was taken after asOf is left
// out. `candidates` in the order of recording.
std::optional<Photograph> newestPhotograph(const std::vector<const Attachment*>& candidates,
                                           const PictureSource& pictureOf, CivilMinute asOf);

// Those of the edition itself, not of its impressions.
std::vector<const Attachment*> attachmentsOfEdition(const RecordSet& records,
                                                    const std::string& edition);

// The keys "photograph.…" that addPhotograph asks for.
void addPhotographKeys(std::vector<std::string>& keys);

struct PhotographSetting {
    std::string title;  // of the edition
    std::string more;   // a sentence that follows the caption; may be empty
    double mostHeight_mm = 0;
};

// The picture, and below it its caption and day.
void addPhotograph(Flow& flow, const Photograph& photograph, const PhotographSetting& setting,
                   const SheetWords& words);

}  // namespace rackbook
