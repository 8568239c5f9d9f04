#include "exchange/LinkedArt.h"

#include <algorithm>

#include "exchange/LinkedEdition.h"
#include "exchange/LinkedObjects.h"
#include "exchange/LinkedPictures.h"
#include "exchange/LinkedWork.h"

namespace rackbook {

namespace {

// A party or a place: its name and no more.
Tree named(LinkedKind kind, RecordKind recordKind, const std::string& id, const std::string& name,
           const LinkedWork& work) {
    Tree tree = work.headOf(kind, id, name);
    tree.set("identified_by",
             Tree::array().add(linkedName(name)).add(linkedIdentifier(id, "id of the record")));
    tree.set("referred_to_by", Tree::array().add(work.originOf(recordKind, id)));
    return tree;
}

class Files {
public:
    explicit Files(const LinkedWork& work) : m_work(work) {}

    void add(LinkedKind kind, const std::string& id, Tree content) {
        m_files.push_back({m_work.uris().pathOf(kind, id), std::move(content)});
    }

    std::vector<LinkedArtFile> m_files;

private:
    const LinkedWork& m_work;
};

void addEditions(const std::vector<const Edition*>& editions, LinkedWork& work, Files& files) {
    for (const Edition* edition : editions)
        files.add(LinkedKind::edition, edition->id, setOf(*edition, work));
    for (const Edition* edition : editions)
        files.add(LinkedKind::image, edition->id, imageOf(*edition, work));
    std::set<std::string> processes;
    for (const Edition* edition : editions)
        if (!edition->process.empty() && processes.insert(processId(*edition)).second)
            files.add(LinkedKind::process, processId(*edition), processOf(*edition, work));
    for (const Edition* edition : editions)
        for (std::size_t i = 0; i < edition->inscriptions.size(); ++i)
            files.add(LinkedKind::inscription, inscriptionId(*edition, i),
                      textOf(*edition, i, work));
    for (const Block& block : work.records().of<Block>())
        if (std::find(editions.begin(), editions.end(), work.records().find(block.edition)) !=
            editions.end())
            files.add(LinkedKind::block, block.id, objectOf(block, work));
}

void addPictures(const std::vector<const Attachment*>& pictures, const LinkedWork& work,
                 Files& files) {
    for (const Attachment* picture : pictures)
        files.add(LinkedKind::picture, picture->id, pictureOf(*picture, work));
}

void addNamed(const LinkedWork& work, Files& files) {
    const RecordSet& records = work.records();
    const auto addParties = [&](LinkedKind kind, const std::set<std::string>& ids) {
        for (const std::string& id : ids)
            files.add(kind, id,
                      named(kind, RecordKind::party, id, records.find<Party>(id)->name, work));
    };
    addParties(LinkedKind::person, work.personsNamed());
    addParties(LinkedKind::group, work.groupsNamed());
    for (const std::string& id : work.placesNamed())
        files.add(
            LinkedKind::place, id,
            named(LinkedKind::place, RecordKind::place, id, records.find<Place>(id)->name, work));
}

bool isLetterOrDigit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
}

}  // namespace

bool isLinkedBase(std::string_view base) {
    const std::size_t colon = base.find("://");
    if (colon == std::string_view::npos)
        return false;
    const std::string_view scheme = base.substr(0, colon);
    const std::string_view rest = base.substr(colon + 3);
    if ((scheme != "http" && scheme != "https") || rest.empty() || !isLetterOrDigit(rest.front()))
        return false;
    // unreserved, sub-delims, and what parts a host, a port and a path
    return std::all_of(rest.begin(), rest.end(), [](char c) {
        return isLetterOrDigit(c) ||
               std::string_view("-._~!$&'()*+,;=:@/").find(c) != std::string_view::npos;
    });
}

LinkedArt linkedArtOf(const RecordSet& all, const std::vector<std::string>& impressions,
                      const LinkedArtChoice& choice) {
    LinkedWork work(all, choice);
    const RecordSet& records = work.records();
    std::vector<const Edition*> editions;
    std::vector<const Attachment*> pictures;
    for (const std::string& id : impressions) {
        const Edition* edition = records.find(records.find<Impression>(id)->edition);
        if (std::find(editions.begin(), editions.end(), edition) != editions.end())
            continue;
        editions.push_back(edition);
        const std::vector<const Attachment*> more = work.picturesOf(*edition);
        pictures.insert(pictures.end(), more.begin(), more.end());
    }
    Files files(work);
    addEditions(editions, work, files);
    for (const std::string& id : impressions) {
        const Impression& impression = *records.find<Impression>(id);
        files.add(LinkedKind::impression, id,
                  objectOf(impression, *records.find(impression.edition), work));
        const std::vector<const Attachment*> more = work.picturesOf(impression);
        pictures.insert(pictures.end(), more.begin(), more.end());
    }
    addPictures(pictures, work, files);
    addNamed(work, files);
    return {std::move(files.m_files), work.onlyInWords()};
}

}  // namespace rackbook
