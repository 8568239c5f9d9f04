#include "exchange/LinkedEdition.h"

#include "base/Sha256.h"
#include "base/Text.h"
#include "exchange/LinkedPictures.h"
#include "records/Designation.h"

namespace rackbook {

namespace {

std::string declaredSize(const Edition& edition) {
    std::vector<std::string> parts;
    if (edition.declaredNumbered)
        parts.push_back(std::to_string(*edition.declaredNumbered) + " numbered");
    for (const DeclaredProofs& proofs : edition.declaredProofs)
        parts.push_back(std::to_string(proofs.count) + " " +
                        designationWords(proofs.designationKind));
    if (edition.declaredTotal)
        parts.push_back(std::to_string(*edition.declaredTotal) + " in all");
    return joined(parts, ", ");
}

std::string promiseWords(const Edition& edition) {
    static constexpr const char* words[] = {"are kept", "are cut away", "are cancelled",
                                            "are effaced", "are destroyed"};
    return std::string("The blocks ") +
           words[static_cast<std::size_t>(*edition.promisedMatrixFate)] + " by promise" +
           (edition.promisedBy ? ", by " + edition.promisedBy->text() : "");
}

void addDeclared(const Edition& edition, Tree& statements) {
    if (edition.statement)
        statements.add(linkedStatement(*edition.statement, linkedTerms::editionStatement,
                                       "statement of the edition"));
    if (const std::string size = declaredSize(edition); !size.empty())
        statements.add(
            linkedStatement(size, linkedTerms::editionStatement, "size as it was declared"));
    if (edition.year)
        statements.add(linkedStatement("Printed " + edition.year->text() + ", as declared",
                                       linkedTerms::note, "year of printing"));
    if (edition.promisedMatrixFate)
        statements.add(linkedStatement(promiseWords(edition), linkedTerms::note,
                                       "what was promised of the blocks"));
}

Tree publicationOf(const Ref<Party>& publisher, LinkedWork& work) {
    Tree publication = Tree::object().set("type", "Activity").set("_label", "publication");
    Tree statements = Tree::array();
    work.addActor(publication, statements, publisher, "publisher");
    setUnlessEmpty(publication, "referred_to_by", std::move(statements));
    return publication;
}

}  // namespace

Tree setOf(const Edition& edition, const LinkedWork& work) {
    Tree set = work.headOf(LinkedKind::edition, edition.id, "Edition: " + edition.title);
    set.set("identified_by", Tree::array()
                                 .add(linkedName(edition.title))
                                 .add(linkedIdentifier(edition.code, "code of the edition"))
                                 .add(linkedIdentifier(edition.id, "id of the record")));
    Tree statements = Tree::array();
    addDeclared(edition, statements);
    statements.add(work.originOf(RecordKind::edition, edition.id));
    set.set("referred_to_by", std::move(statements));
    setUnlessEmpty(set, "representation", representations(work.picturesOf(edition), work));
    return set;
}

Tree imageOf(const Edition& edition, LinkedWork& work) {
    Tree image = work.headOf(LinkedKind::image, edition.id, "Image: " + edition.title);
    image.set("identified_by", Tree::array()
                                   .add(linkedName(edition.title))
                                   .add(linkedIdentifier(edition.id, "id of the record")));
    image.set("referred_to_by", Tree::array().add(work.originOf(RecordKind::edition, edition.id)));
    Tree creation = Tree::object().set("type", "Creation").set("_label", "making of the image");
    Tree statements = Tree::array();
    work.addActor(creation, statements, edition.maker, "maker");
    setUnlessEmpty(creation, "referred_to_by", std::move(statements));
    image.set("created_by", std::move(creation));
    if (edition.publisher)
        image.set("used_for", Tree::array().add(publicationOf(*edition.publisher, work)));
    return image;
}

std::string processId(const Edition& edition) {
    return sha256(edition.process).substr(0, 16);
}

Tree processOf(const Edition& edition, const LinkedWork& work) {
    Tree process = work.headOf(LinkedKind::process, processId(edition), edition.process);
    process.set("identified_by", Tree::array().add(linkedName(edition.process)));
    return process;
}

std::string inscriptionId(const Edition& edition, std::size_t position) {
    return edition.id + "." + std::to_string(position + 1);
}

Tree textOf(const Edition& edition, std::size_t position, const LinkedWork& work) {
    const Inscription& inscription = edition.inscriptions[position];
    Tree text = work.headOf(LinkedKind::inscription, inscriptionId(edition, position),
                            "Inscription: " + inscription.text);
    text.set("classified_as", classifiedAs(linkedTerms::inscription));
    text.set("identified_by",
             Tree::array().add(linkedIdentifier(edition.id, "id of the record of the edition")));
    Tree statements = Tree::array();
    if (!inscription.where.empty())
        statements.add(
            linkedStatement(inscription.where, linkedTerms::description, "where it stands"));
    if (!inscription.medium.empty())
        statements.add(linkedStatement(inscription.medium, linkedTerms::materialStatement,
                                       "what it is written with"));
    statements.add(work.originOf(RecordKind::edition, edition.id));
    text.set("referred_to_by", std::move(statements));
    text.set("content", inscription.text);
    text.set("format", "text/plain");
    return text;
}

Tree inscriptionsOn(const Edition& edition, const LinkedWork& work) {
    Tree references = Tree::array();
    for (std::size_t i = 0; i < edition.inscriptions.size(); ++i)
        references.add(work.uris().reference(LinkedKind::inscription, inscriptionId(edition, i),
                                             "Inscription: " + edition.inscriptions[i].text));
    return references;
}

bool isInscribed(const Impression& impression) {
    return impression.signedOn || impression.designation;
}

}  // namespace rackbook
