#include "CheckedSheets.h"

#include "OutsideReader.h"
#include "RichSheet.h"
#include "SampleSheet.h"
#include "base/Edtf.h"
#include "base/Files.h"
#include "commands/Sheet.h"
#include "commands/SheetKinds.h"
#include "exchange/RecordFiles.h"
#include "exchange/SheetRecords.h"
#include "pdf/PdfWriter.h"
#include "sheets/JoinedModels.h"
#include "sheets/SheetTools.h"
#include "support/DemoRecords.h"

namespace rackbook {

namespace {

void add(std::vector<CheckedSheet>& sheets, const std::string& name, PageModel model,
         const PdfFonts& fonts) {
    std::string bytes = writePdf(model, fonts);
    std::string firstPart = writePdf(model, fonts, PdfLevel::a1b);
    sheets.push_back({name, std::move(model), std::move(bytes), std::move(firstPart)});
}

template <class R>
std::optional<R> firstOf(const RecordSet& records) {
    const std::vector<R>& all = records.of<R>();
    return all.empty() ? std::nullopt : std::optional<R>(all.front());
}

SheetSubject aboutEdition(const RecordSet& records, const std::string& code) {
    SheetSubject subject;
    subject.words = code;
    if (const Edition* found = records.find<Edition>(code))
        subject.edition = *found;
    return subject;
}

// What a kind is tried on: each of the three editions, or the first record that it can be about.
std::vector<SheetSubject> subjectsFor(SubjectKind kind, const RecordSet& records) {
    SheetSubject subject;
    subject.words = "first";
    switch (kind) {
        case SubjectKind::book:
            subject.words.clear();
            return {subject};
        case SubjectKind::anyEdition:
            return {SheetSubject(), aboutEdition(records, "EEL")};
        case SubjectKind::edition:
            return {aboutEdition(records, "EEL"), aboutEdition(records, "BRK"),
                    aboutEdition(records, "FER")};
        case SubjectKind::impressions:
            subject = aboutEdition(records, "EEL");
            for (const Impression& impression : records.of<Impression>())
                if (impression.edition.id == "EEL")
                    subject.impressions.push_back(impression);
            return {subject};
        case SubjectKind::layer:
            subject.layer = firstOf<Layer>(records);
            return {subject};
        case SubjectKind::ink:
            subject.words = "EEL/L4";
            subject.layer = *records.find<Layer>("EEL/L4");
            subject.edition = *records.find<Edition>("EEL");
            return {subject};
        case SubjectKind::transfer:
            subject.transfer = firstOf<Transfer>(records);
            return {subject};
        case SubjectKind::place:
            subject.place = firstOf<Place>(records);
            return {subject};
    }
    return {};
}

// A photograph of the demonstration book.
std::optional<PictureFile> demoPicture(const Attachment& attachment) {
    const std::string file = std::string(RACKBOOK_SOURCE_DIR) + "/demo-edition/attachments/" +
                             attachment.sha256 + ".jpg";
    if (!fileExists(file) || !attachment.width_px || !attachment.height_px)
        return std::nullopt;
    return PictureFile{
        attachment.mediaType, std::make_shared<const std::string>(readFile(file, 1 << 22)),
        *attachment.width_px, *attachment.height_px, attachment.orientation.value_or(1)};
}

// None but the balance, of which the book has two.
Arguments argumentsFor(const SheetKind& kind) {
    std::vector<std::string> words = {kind.name};
    for (const std::string& option : kind.options)
        if (option == "balance")
            words.push_back("--balance=kitchen-balance");
    return parseArguments(sheetCommand().spec, words);
}

AssociatedFile recordBehind(const SheetRecords& behind, const SheetKind& kind,
                            const SheetAbout& about) {
    return {recordName(kind, about), "application/json", "The records behind the sheet",
            behind.textFor({kind.name, "2026-03-20", "en", about})};
}

PageModel modelOf(const SheetKind& kind, const RecordSet& records, const SheetSubject& subject,
                  const SheetTemplate& shipped, const PdfFonts& fonts) {
    const CivilMinute asOf = EdtfDate::parse("2026-03-20").latest();
    const SheetIndexes indexes(records);
    const SheetRecords behind(indexes, kind.depth, asOf);
    const Arguments arguments = argumentsFor(kind);
    const SheetRequest request = {
        records,
        subject,
        asOf,
        false,
        shipped,
        fonts,
        test::fixedClock,
        arguments,
        demoPicture,
        [&](const SheetAbout& about) { return recordBehind(behind, kind, about); },
        [] {}};
    std::vector<PageModel> documents = kind.make(request);
    for (PageModel& document : documents)
        if (document.files.empty())
            document.files.push_back(recordBehind(behind, kind, aboutSubject(subject)));
    return joinedModels(std::move(documents));
}

void addKind(std::vector<CheckedSheet>& sheets, const SheetKind& kind, const RecordSet& records,
             const SheetSubject& subject) {
    const SheetTemplate shipped = test::shippedTemplate(kind.name, kind.rules());
    const PdfFonts fonts(shipped.fonts());
    add(sheets, (subject.words.empty() ? "" : fitForFile(subject.words) + "-") + kind.name,
        modelOf(kind, records, subject, shipped, fonts), fonts);
}

// Accents one over another, three scripts, ligatures that stay letters, odd spaces and signs.
PageModel hardWords(const PdfFonts& fonts) {
    return shortSheet(fonts,
                      "Přílišná žluť, Ångström, Łódź, Việt Nam được in, Čeština; Ω Ψυχή, Ελληνικά "
                      "γράμματα με τόνους; Жёлтый, Щит, Ґанок, Љубав; fi ffl ſt; 5 µm − 3 µm = "
                      "2 µm, ±0.5 °C, L* 38.4, ½ sheet, “quoted” ‘words’ – and – dashes — (100 %) "
                      "\\ {braces} [brackets] <angles> & more…");
}

// A layer that is still to be printed, so that its form lists impressions.
void addBenchSheet(std::vector<CheckedSheet>& sheets, RecordSet records) {
    Layer layer = *records.find<Layer>("EEL/L8");
    layer.id = "EEL/L9";
    layer.ordinal = 9;
    records.add(layer);
    SheetSubject subject;
    subject.words = layer.id;
    subject.layer = layer;
    addKind(sheets, sheetKindNamed("bench"), records, subject);
}

std::vector<CheckedSheet> madeSheets() {
    const RecordSet records = test::demoRecords();
    std::vector<CheckedSheet> sheets;
    for (const SheetKind& kind : sheetKinds())
        for (const SheetSubject& subject : subjectsFor(kind.subject, records))
            addKind(sheets, kind, records, subject);
    addBenchSheet(sheets, records);
    const PdfFonts fonts;
    add(sheets, "sample", sampleSheet(fonts), fonts);
    add(sheets, "hard-words", hardWords(fonts), fonts);
    add(sheets, "rich", richSheet(), fonts);
    return sheets;
}

}  // namespace

const std::vector<CheckedSheet>& checkedSheets() {
    static const std::vector<CheckedSheet> sheets = madeSheets();
    return sheets;
}

void forEachDemoSheet(const std::string& language,
                      const std::function<void(const PageModel&, const SheetTemplate&,
                                               const TemplateRules&)>& check) {
    const RecordSet records = test::demoRecords();
    for (const SheetKind& kind : sheetKinds()) {
        const TemplateRules rules = kind.rules();
        const SheetTemplate shipped = test::shippedTemplate(kind.name, rules, language);
        const PdfFonts fonts(shipped.fonts());
        for (const SheetSubject& subject : subjectsFor(kind.subject, records))
            check(modelOf(kind, records, subject, shipped, fonts), shipped, rules);
    }
}

std::string fileOf(const CheckedSheet& sheet, PdfLevel level) {
    const bool isFirst = level == PdfLevel::a1b;
    return fileWith(isFirst ? sheet.firstPart : sheet.bytes,
                    sheet.name + (isFirst ? "-1b.pdf" : ".pdf"));
}

}  // namespace rackbook
