#include "CheckedSheets.h"

#include "OutsideReader.h"
#include "SampleSheet.h"
#include "base/Edtf.h"
#include "base/Files.h"
#include "commands/SheetKinds.h"
#include "exchange/RecordFiles.h"
#include "pdf/PdfWriter.h"
#include "sheets/SheetTools.h"

namespace rackbook {

namespace {

RecordSet demoRecords() {
    const std::string root = RACKBOOK_SOURCE_DIR;
    RecordFileReader reader(root + "/schema");
    for (const std::string& file : filesBelow(root + "/demo-edition", ".json").paths)
        reader.read(file, readFile(file, 1 << 22));
    RecordSet records;
    for (IncomingRecord& incoming : reader.records())
        records.add(std::move(incoming.record));
    return records;
}

void add(std::vector<CheckedSheet>& sheets, const std::string& name, PageModel model,
         const PdfFonts& fonts) {
    std::string bytes = writePdf(model, fonts);
    std::string firstPart = writePdf(model, fonts, PdfLevel::a1b);
    sheets.push_back({name, std::move(model), std::move(bytes), std::move(firstPart)});
}

void addKind(std::vector<CheckedSheet>& sheets, const SheetKind& kind, const RecordSet& records,
             const std::string& code) {
    const SheetTemplate shipped = test::shippedTemplate(kind.name, kind.rules());
    const PdfFonts fonts(shipped.fonts());
    std::optional<Edition> edition;
    if (const Edition* found = records.find<Edition>(code))
        edition = *found;
    const CivilMinute asOf = EdtfDate::parse("2026-03-20").latest();
    add(sheets, kind.fileName(code, asOf),
        kind.make({records, edition, asOf, false, shipped, fonts, test::fixedClock}), fonts);
}

// Accents one over another, three scripts, ligatures that stay letters, odd spaces and signs.
PageModel hardWords(const PdfFonts& fonts) {
    return shortSheet(fonts,
                      "Přílišná žluť, Ångström, Łódź, Việt Nam được in, Čeština; Ω Ψυχή, Ελληνικά "
                      "γράμματα με τόνους; Жёлтый, Щит, Ґанок, Љубав; fi ffl ſt; 5 µm − 3 µm = "
                      "2 µm, ±0.5 °C, L* 38.4, ½ sheet, “quoted” ‘words’ – and – dashes — (100 %) "
                      "\\ {braces} [brackets] <angles> & more…");
}

std::vector<CheckedSheet> madeSheets() {
    const RecordSet records = demoRecords();
    std::vector<CheckedSheet> sheets;
    for (const SheetKind& kind : sheetKinds()) {
        if (!kind.needsEdition)
            addKind(sheets, kind, records, "");
        for (const char* code : {"EEL", "BRK", "FER"})
            if (kind.needsEdition)
                addKind(sheets, kind, records, code);
    }
    const PdfFonts fonts;
    add(sheets, "sample", sampleSheet(fonts), fonts);
    add(sheets, "hard-words", hardWords(fonts), fonts);
    return sheets;
}

}  // namespace

const std::vector<CheckedSheet>& checkedSheets() {
    static const std::vector<CheckedSheet> sheets = madeSheets();
    return sheets;
}

std::string fileOf(const CheckedSheet& sheet, PdfLevel level) {
    const bool isFirst = level == PdfLevel::a1b;
    return fileWith(isFirst ? sheet.firstPart : sheet.bytes,
                    sheet.name + (isFirst ? "-1b.pdf" : ".pdf"));
}

}  // namespace rackbook
