#include "exchange/LinkedObjects.h"

#include "base/Numbers.h"
#include "exchange/LinkedEdition.h"
#include "exchange/LinkedPictures.h"
#include "exchange/LinkedProduction.h"
#include "records/Designation.h"

namespace rackbook {

namespace {

Tree dimensionsOf(const std::optional<double>& height_mm, const std::optional<double>& width_mm) {
    Tree dimensions = Tree::array();
    if (height_mm)
        dimensions.add(linkedLength(*height_mm, linkedTerms::height));
    if (width_mm)
        dimensions.add(linkedLength(*width_mm, linkedTerms::width));
    return dimensions;
}

std::string sizeWords(const char* what, const std::optional<double>& height_mm,
                      const std::optional<double>& width_mm) {
    if (!height_mm || !width_mm)
        return {};
    return std::string(what) + " " + formatShortest(*height_mm) + " × " +
           formatShortest(*width_mm) + " mm";
}

void addSizeStatement(const Edition& edition, Tree& statements) {
    std::string words = sizeWords("Image", edition.imageHeight_mm, edition.imageWidth_mm);
    const std::string sheet =
        sizeWords(words.empty() ? "Sheet" : "sheet", edition.sheetHeight_mm, edition.sheetWidth_mm);
    words += (words.empty() || sheet.empty() ? "" : "; ") + sheet;
    if (!words.empty())
        statements.add(linkedStatement(
            words + " (height × width), as the edition states it for all its sheets",
            linkedTerms::dimensionStatement, "sizes"));
}

std::string designationStatement(const Impression& impression) {
    std::string words = *impression.designation;
    if (impression.designationKind)
        words += std::string(" (") + designationWords(*impression.designationKind) + ")";
    return words;
}

void addFate(const Impression& impression, Tree& statements) {
    if (impression.fate != ImpressionFate::spoiled)
        return;
    statements.add(linkedStatement(
        impression.fateOn ? "Spoiled, " + impression.fateOn->text() : std::string("Spoiled"),
        linkedTerms::note, "what became of it"));
}

Tree statementsAbout(const Impression& impression, const Edition& edition) {
    Tree statements = Tree::array();
    if (impression.designation)
        statements.add(linkedStatement(designationStatement(impression),
                                       linkedTerms::editionStatement, "designation"));
    if (edition.paper)
        statements.add(linkedStatement("Ink on paper: " + *edition.paper,
                                       linkedTerms::materialStatement, "materials"));
    addSizeStatement(edition, statements);
    if (impression.signedOn)
        statements.add(linkedStatement("Signed, " + impression.signedOn->text(), linkedTerms::note,
                                       "when it was signed"));
    addFate(impression, statements);
    return statements;
}

Tree identifiersOf(const Impression& impression, const Edition& edition) {
    Tree names = Tree::array();
    names.add(linkedName(edition.title));
    if (impression.designation)
        names.add(linkedIdentifier(*impression.designation, "designation"));
    names.add(linkedIdentifier(std::to_string(impression.workingNumber), "working number"));
    names.add(linkedIdentifier(impression.id, "id of the record"));
    return names;
}

Tree printClasses() {
    Tree print = linkedTerm(linkedTerms::print);
    print.set("classified_as", classifiedAs(linkedTerms::typeOfWork));
    return Tree::array().add(std::move(print)).add(linkedTerm(linkedTerms::workOfArt));
}

Tree materialsOf(const Impression& impression, const Edition& edition, const LinkedWork& work) {
    Tree materials = Tree::array();
    if (edition.paper)
        materials.add(linkedTerm(linkedTerms::paper, "Material"));
    if (!work.pullsOf(impression).empty())
        materials.add(linkedTerm(linkedTerms::ink, "Material"));
    return materials;
}

// The image area is a part that has a size of its own.
Tree imageArea(const Edition& edition) {
    Tree parts = Tree::array();
    Tree dimensions = dimensionsOf(edition.imageHeight_mm, edition.imageWidth_mm);
    if (dimensions.asArray()->empty())
        return parts;
    Tree part = Tree::object().set("type", "HumanMadeObject").set("_label", "image area");
    part.set("dimension", std::move(dimensions));
    return parts.add(std::move(part));
}

void addWhereabouts(const Impression& impression, Tree& object, Tree& statements,
                    LinkedWork& work) {
    if (impression.holder) {
        if (std::optional<Tree> holder = work.actor(*impression.holder))
            object.set("current_custodian", Tree::array().add(std::move(*holder)));
        else if (const Party* party = work.records().find(impression.holder))
            statements.add(linkedStatement("holder: " + party->name, linkedTerms::note, "holder"));
    }
    if (const Place* place = work.placeOf(impression))
        object.set("current_location", work.place(*place));
}

std::string fateWords(const Block& block) {
    static constexpr const char* words[] = {"", "Cut away while printing",
                                            "Cancelled: marked so that it prints no more",
                                            "Effaced", ""};
    std::string text = words[static_cast<std::size_t>(block.fate)];
    if (!text.empty() && block.fateOn)
        text += ", " + block.fateOn->text();
    return text;
}

}  // namespace

std::string titleOf(const Impression& impression, const Edition& edition) {
    return edition.title + ", " +
           (impression.designation ? *impression.designation
                                   : "working number " + std::to_string(impression.workingNumber));
}

Tree objectOf(const Impression& impression, const Edition& edition, LinkedWork& work) {
    Tree object = work.headOf(LinkedKind::impression, impression.id, titleOf(impression, edition));
    object.set("classified_as", printClasses());
    object.set("identified_by", identifiersOf(impression, edition));
    Tree statements = statementsAbout(impression, edition);
    addWhereabouts(impression, object, statements, work);
    statements.add(work.originOf(RecordKind::impression, impression.id));
    object.set("referred_to_by", std::move(statements));
    object.set("member_of", Tree::array().add(work.uris().reference(LinkedKind::edition, edition.id,
                                                                    edition.title)));
    setUnlessEmpty(object, "representation", representations(work.picturesOf(impression), work));
    setUnlessEmpty(object, "dimension",
                   dimensionsOf(edition.sheetHeight_mm, edition.sheetWidth_mm));
    setUnlessEmpty(object, "made_of", materialsOf(impression, edition, work));
    setUnlessEmpty(object, "part", imageArea(edition));
    object.set("shows", Tree::array().add(
                            work.uris().reference(LinkedKind::image, edition.id, edition.title)));
    if (isInscribed(impression))
        setUnlessEmpty(object, "carries", inscriptionsOn(edition, work));
    object.set("produced_by", productionOf(impression, edition, work));
    if (impression.fate == ImpressionFate::destroyed)
        object.set("destroyed_by", destructionOf(impression.fateOn, work));
    return object;
}

Tree objectOf(const Block& block, const LinkedWork& work) {
    Tree object = work.headOf(LinkedKind::block, block.id, block.name);
    object.set("identified_by", Tree::array()
                                    .add(linkedName(block.name))
                                    .add(linkedIdentifier(block.id, "id of the record")));
    Tree statements = Tree::array();
    if (const Edition* edition = work.records().find(block.edition))
        statements.add(
            linkedStatement("For the edition " + edition->title + " (" + edition->code + ")",
                            linkedTerms::note, "edition"));
    if (block.role)
        statements.add(linkedStatement(*block.role, linkedTerms::description, "kind of block"));
    if (block.material)
        statements.add(
            linkedStatement(*block.material, linkedTerms::materialStatement, "material"));
    if (const std::string fate = fateWords(block); !fate.empty())
        statements.add(linkedStatement(fate, linkedTerms::note, "what became of it"));
    statements.add(work.originOf(RecordKind::block, block.id));
    object.set("referred_to_by", std::move(statements));
    if (std::optional<Tree> production = productionOf(block, work))
        object.set("produced_by", std::move(*production));
    if (block.fate == MatrixFate::destroyed)
        object.set("destroyed_by", destructionOf(block.fateOn, work));
    return object;
}

}  // namespace rackbook
