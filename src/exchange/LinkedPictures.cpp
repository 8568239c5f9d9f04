#include "exchange/LinkedPictures.h"

namespace rackbook {

namespace {

std::string labelOf(const Attachment& picture) {
    return picture.caption.value_or("File " + picture.id);
}

}  // namespace

Tree pictureOf(const Attachment& picture, const LinkedWork& work) {
    Tree digital = work.headOf(LinkedKind::picture, picture.id, labelOf(picture));
    Tree names = Tree::array();
    if (picture.caption)
        names.add(linkedName(*picture.caption));
    names.add(linkedHash(picture.sha256, "SHA-256 of the bytes of the file"));
    names.add(linkedIdentifier(picture.id, "id of the record"));
    digital.set("identified_by", std::move(names));
    Tree statements = Tree::array();
    if (picture.width_px && picture.height_px)
        statements.add(linkedStatement(std::to_string(*picture.width_px) + " × " +
                                           std::to_string(*picture.height_px) +
                                           " pixels (width × height)",
                                       linkedTerms::dimensionStatement, "size"));
    statements.add(work.originOf(RecordKind::attachment, picture.id));
    digital.set("referred_to_by", std::move(statements));
    digital.set("format", picture.mediaType);
    if (picture.takenOn) {
        Tree creation = Tree::object().set("type", "Creation").set("_label", "taking");
        creation.set("timespan", linkedSpan(*picture.takenOn, work.timeZone()));
        digital.set("created_by", std::move(creation));
    }
    return digital;
}

Tree representations(const std::vector<const Attachment*>& pictures, const LinkedWork& work) {
    Tree items = Tree::array();
    for (const Attachment* picture : pictures) {
        Tree item = Tree::object().set("type", "VisualItem").set("_label", labelOf(*picture));
        item.set("digitally_shown_by", Tree::array().add(work.uris().reference(
                                           LinkedKind::picture, picture->id, labelOf(*picture))));
        items.add(std::move(item));
    }
    return items;
}

}  // namespace rackbook
