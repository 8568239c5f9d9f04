#include "commands/SheetSubject.h"

#include "base/Error.h"
#include "commands/BookAccess.h"
#include "commands/RecordNamed.h"
#include "commands/SheetSelection.h"
#include "records/Pull.h"

namespace rackbook {

namespace {

struct Form {
    SubjectKind kind;
    const char* word;
    const char* about;
};

constexpr Form forms[] = {
    {SubjectKind::book, "", "the whole book"},
    {SubjectKind::edition, "CODE", "one edition"},
    {SubjectKind::anyEdition, "CODE", "one edition, or the whole book"},
    {SubjectKind::impressions, "SHEETS", "impressions of one edition"},
    {SubjectKind::layer, "LAYER", "one layer"},
    {SubjectKind::ink, "INK", "a mix, or the ink of a layer or a pull"},
    {SubjectKind::transfer, "TRANSFER", "one transfer"},
    {SubjectKind::place, "PLACE", "one place"},
};

const Form& formOf(SubjectKind kind) {
    return forms[static_cast<std::size_t>(kind)];
}

void addLayer(const BookFile& book, SheetSubject& subject, Layer layer) {
    subject.edition = recordNamed<Edition>(book, layer.edition.id);
    subject.layer = std::move(layer);
}

void addInk(const BookFile& book, SheetSubject& subject) {
    if (std::optional<Layer> layer = findIn<Layer>(book, subject.words))
        return addLayer(book, subject, std::move(*layer));
    if (const std::optional<Pull> pull = findIn<Pull>(book, subject.words))
        return addLayer(book, subject, recordNamed<Layer>(book, pull->layer.id));
    subject.mix = recordNamed<Mix>(book, subject.words);
}

void addImpressions(const BookFile& book, SheetSubject& subject) {
    SheetSelection selection = sheetsNamed(book, subject.words);
    if (selection.editionId.empty())
        throw UsageError("the sheets " + subject.words + " belong to several editions",
                         "Name those of one edition.");
    subject.edition = recordNamed<Edition>(book, selection.editionId);
    subject.impressions = std::move(selection.sheets);
}

}  // namespace

const char* subjectForm(SubjectKind kind) {
    return formOf(kind).word;
}

SheetSubject subjectNamed(const BookFile& book, SubjectKind kind, const std::string& sheet,
                          const std::optional<std::string>& words) {
    const Form& form = formOf(kind);
    SheetSubject subject;
    if (!words) {
        if (kind == SubjectKind::book || kind == SubjectKind::anyEdition)
            return subject;
        throw UsageError("the sheet \"" + sheet + "\" is about " + form.about,
                         "Name it: rackbook sheet " + sheet + " " + form.word + ".");
    }
    subject.words = *words;
    switch (kind) {
        case SubjectKind::book:
            throw UsageError("the sheet \"" + sheet + "\" is about the whole book",
                             "Leave \"" + *words + "\" out.");
        case SubjectKind::edition:
        case SubjectKind::anyEdition:
            subject.edition = editionNamed(book, *words);
            break;
        case SubjectKind::impressions:
            addImpressions(book, subject);
            break;
        case SubjectKind::layer:
            addLayer(book, subject, recordNamed<Layer>(book, *words));
            break;
        case SubjectKind::ink:
            addInk(book, subject);
            break;
        case SubjectKind::transfer:
            subject.transfer = recordNamed<Transfer>(book, *words);
            break;
        case SubjectKind::place:
            subject.place = recordNamed<Place>(book, *words);
            break;
    }
    return subject;
}

}  // namespace rackbook
