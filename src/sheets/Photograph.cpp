#include "sheets/Photograph.h"

#include <algorithm>

#include "sheets/LabelKeys.h"

namespace rackbook {

namespace {

// A panorama leaves some of the page's width, too.
constexpr double mostWidth_mm = 130;

bool isNewer(const Attachment* a, const Attachment* b) {
    if (!a->takenOn || !b->takenOn)
        return a->takenOn.has_value() && !b->takenOn;
    return a->takenOn->latest() > b->takenOn->latest();
}

}  // namespace

std::optional<Photograph> newestPhotograph(const std::vector<const Attachment*>& candidates,
                                           const PictureSource& pictureOf, CivilMinute asOf) {
    std::vector<const Attachment*> newestFirst(candidates.rbegin(), candidates.rend());
    std::stable_sort(newestFirst.begin(), newestFirst.end(), isNewer);
    for (const Attachment* attachment : newestFirst) {
        if (attachment->takenOn && attachment->takenOn->earliest() > asOf)
            continue;
        if (std::optional<PictureFile> file = pictureOf(*attachment))
            return Photograph{std::move(*file), attachment->caption.value_or(""),
                              attachment->takenOn};
    }
    return std::nullopt;
}

std::vector<const Attachment*> attachmentsOfEdition(const RecordSet& records,
                                                    const std::string& edition) {
    std::vector<const Attachment*> found;
    for (const Attachment& attachment : records.of<Attachment>())
        if (attachment.edition && attachment.edition->id == edition)
            found.push_back(&attachment);
    return found;
}

void addPhotographKeys(std::vector<std::string>& keys) {
    addLabelKeys(keys, "photograph", "shows caption captionMore taken noDay");
}

void addPhotograph(Flow& flow, const Photograph& photograph, const PhotographSetting& setting,
                   const SheetWords& words) {
    const std::string day =
        photograph.takenOn
            ? words.filled("photograph.taken", {{"date", words.date(*photograph.takenOn)}})
            : words("photograph.noDay");
    const std::string caption =
        photograph.caption.empty()
            ? day
            : words.filled("photograph.caption", {{"caption", photograph.caption}, {"day", day}});
    Panel panel;
    panel.content = flow.addPicture(photograph.file);
    panel.caption = setting.more.empty()
                        ? caption
                        : words.filled("photograph.captionMore",
                                       {{"caption", caption}, {"more", setting.more}});
    panel.alternate = words.filled("photograph.shows", {{"title", setting.title}});
    flow.panels({panel},
                std::min(setting.mostHeight_mm, mostWidth_mm / proportionsOf(photograph.file)));
}

}  // namespace rackbook
