// What the makers of resources share: the records, found by what they name, and what was named on
// the way. Private to exchange/.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "exchange/LinkedArt.h"
#include "exchange/LinkedParts.h"
#include "exchange/LinkedUris.h"

namespace rackbook {

class LinkedWork {
public:
    // Without what is private. Both must outlive it.
    LinkedWork(const RecordSet& records, const LinkedArtChoice& choice);

    const RecordSet& records() const { return m_records; }
    const LinkedUris& uris() const { return m_uris; }
    const std::string& timeZone() const { return m_studio.timeZone; }
    bool namesHolders() const { return m_choice.namesHolders; }

    // In the order of layers, then of time.
    std::vector<const Pull*> pullsOf(const Impression& impression) const;
    std::vector<const Attachment*> picturesOf(const Impression& impression) const;
    std::vector<const Attachment*> picturesOf(const Edition& edition) const;
    // Where it lies by its latest move; nothing where it had left again.
    const Place* placeOf(const Impression& impression) const;
    // Colour Index generic names of what was weighed into the ink until then, sorted; of what was
    // certainly added later none.
    std::set<std::string> pigmentsOf(const Mix& mix, const EdtfDate& until) const;

    // @context, id, type and _label.
    Tree headOf(LinkedKind kind, const std::string& id, const std::string& label) const;
    // That it was made from the book, of which record, and when.
    Tree originOf(RecordKind kind, const std::string& id) const;

    // The party as a person or a group, and remembers it; nothing where neither is known.
    std::optional<Tree> actor(const Ref<Party>& party);
    // Says who carried the activity out; in a statement where that is no known person or group.
    void addActor(Tree& activity, Tree& statements, const Ref<Party>& party,
                  const std::string& role);
    // The place as a reference, and remembers it.
    Tree place(const Place& place);

    const std::set<std::string>& personsNamed() const { return m_personsNamed; }
    const std::set<std::string>& groupsNamed() const { return m_groupsNamed; }
    const std::set<std::string>& placesNamed() const { return m_placesNamed; }
    // Parties of which neither is known, by id.
    const std::set<std::string>& onlyInWords() const { return m_onlyInWords; }

private:
    template <class R>
    using ById = std::map<std::string, std::vector<const R*>>;

    void index();
    void addPigments(const std::string& mix, const EdtfDate& until, std::set<std::string>& seen,
                     std::set<std::string>& pigments) const;

    const LinkedArtChoice& m_choice;
    RecordSet m_records;
    Book m_studio;
    LinkedUris m_uris;
    ById<Pull> m_pulls;
    ById<Move> m_moves;
    ById<Attachment> m_ofImpression;
    ById<Attachment> m_ofEdition;
    ById<Weighing> m_weighings;
    std::set<std::string> m_personsNamed;
    std::set<std::string> m_groupsNamed;
    std::set<std::string> m_placesNamed;
    std::set<std::string> m_onlyInWords;
};

}  // namespace rackbook
