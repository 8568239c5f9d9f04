#include "CertificateBench.h"

#include <algorithm>
#include <chrono>

#include "CairoPages.h"
#include "LongPicture.h"
#include "base/Sha256.h"
#include "exchange/SheetRecords.h"
#include "pdf/PdfWriter.h"
#include "sheets/CertificateSheet.h"
#include "sheets/JoinedModels.h"
#include "sheets/SheetTools.h"
#include "support/Build.h"

namespace rackbook {

namespace {

using Clock = std::chrono::steady_clock;

double secondsSince(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

constexpr int layers = 8;
constexpr CivilMinute firstDay = 20454;  // 2026-01-01, from 1970-01-01

std::string dayText(int day) {
    return formatDay((firstDay + day) * minutesPerDay);
}

void addStudio(build::Book& book) {
    book.add(Book{}, [](Book& r) {
        r.id = "book";
        r.studio = "An invented studio";
        r.timeZone = "Europe/Copenhagen";
        r.latitude_deg = 56;
        r.longitude_deg = 10;
    });
    book.lot("clear", LotKind::base).lot("cobalt", LotKind::drier).lot("ochre", LotKind::ink);
    book.place("window", PlaceKind::rack, LightKind::daylight);
    book.place("drawer", PlaceKind::drawer, LightKind::dark);
}

// Printed in two halves, a day apart.
void addLayer(build::Book& book, int layer, int sheets) {
    book.layer("E", layer);
    for (int half = 0; half < 2; ++half) {
        const std::string portion = "portion-" + std::to_string(layer * 2 + half);
        const std::string day = dayText(layer * 7 + half);
        book.mix(portion, MixPurpose::portion);
        book.addLot(portion, "ochre", 4, day + "T08:00");
        book.addLot(portion, "clear", 94, day + "T08:01");
        book.addLot(portion, "cobalt", 2, day + "T08:02");
        const std::vector<std::string> ids =
            build::impressionIds("E", half * sheets / 2 + 1, half == 0 ? sheets / 2 : sheets);
        book.pull("E-layer" + std::to_string(layer), day + "T10:00", ids,
                  [&](Pull& r) { r.portion = Ref<Mix>{portion}; });
        book.move("window", day + "T17:00", ids);
    }
}

RecordSet recordsOf(int sheets) {
    build::Book book;
    addStudio(book);
    book.edition("E", [&](Edition& r) { r.declaredNumbered = sheets; });
    for (int number = 1; number <= sheets; ++number)
        book.signedImpression("E", number, std::to_string(number) + "/" + std::to_string(sheets),
                              DesignationKind::numbered, dayText(100));
    for (int layer = 1; layer <= layers; ++layer)
        addLayer(book, layer, sheets);
    const std::vector<std::string> all = build::impressionIds("E", 1, sheets);
    book.look(dayText(80), all, Touch::dry, LookColour::returning);
    book.look(dayText(90), all, Touch::dry, LookColour::trueColour);
    book.add(Attachment{}, [](Attachment& r) {
        r.id = "photograph";
        r.mediaType = "image/jpeg";
        r.edition = Ref<Edition>{"E"};
    });
    return std::move(book.records);
}

void measureRound(const RecordSet& records, CertificateFigures& figures) {
    const CivilMinute asOf = EdtfDate::parse("2026-06-01").latest();
    const SheetTemplate shipped = test::shippedTemplate("certificate", certificateSheetRules());
    const PdfFonts fonts(shipped.fonts());
    Clock::time_point start = Clock::now();
    const CertificateFacts facts =
        certificateFactsOf(records, records.of<Edition>().front(), records.of<Impression>(), asOf,
                           false, [](const Attachment&) { return std::optional(longPicture()); });
    const double factsSeconds = secondsSince(start);
    start = Clock::now();
    SheetDepth depth;
    depth.light = true;
    depth.transfers = depth.photographs = true;
    const SheetIndexes indexes(records);
    const SheetRecords behind(indexes, depth, asOf);
    std::vector<PageModel> documents;
    for (const CertificateImpression& own : facts.impressions) {
        SheetAbout about;
        about.edition = "E";
        about.impressions = {own.impression.id};
        AssociatedFile file{own.impression.id + "-certificate.json", "application/json", "Records",
                            behind.textFor({"certificate", "2026-06-01", "en", about})};
        documents.push_back(certificateSheet(facts, own, {file.name, sha256(file.bytes)}, shipped,
                                             fonts, "2026-06-01T00:00:00Z"));
        documents.back().files.push_back(std::move(file));
    }
    const double setSeconds = secondsSince(start);
    start = Clock::now();
    const PageModel model = joinedModels(std::move(documents));
    figures.bytes = writePdf(model, fonts).size();
    const double writeSeconds = secondsSince(start);
    start = Clock::now();
    figures.otherBytes = writtenByCairo(model).size();
    const double otherSeconds = secondsSince(start);
    figures.pages = model.pages.size();
    figures.factsSeconds = std::min(figures.factsSeconds, factsSeconds);
    figures.setSeconds = std::min(figures.setSeconds, setSeconds);
    figures.writeSeconds = std::min(figures.writeSeconds, writeSeconds);
    figures.otherSeconds = std::min(figures.otherSeconds, otherSeconds);
}

}  // namespace

CertificateFigures measuredCertificates(int certificates) {
    const RecordSet records = recordsOf(certificates);
    CertificateFigures figures;
    figures.certificates = static_cast<std::size_t>(certificates);
    figures.factsSeconds = figures.setSeconds = figures.writeSeconds = figures.otherSeconds = 1e9;
    for (int round = 0; round < 3; ++round)
        measureRound(records, figures);
    return figures;
}

}  // namespace rackbook
