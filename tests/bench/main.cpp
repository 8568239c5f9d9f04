// Prints what the main work costs, beside the bare engine doing the same: colour first, then a long
// PDF, then books of several sizes. Usage: rackbookBench [IMPRESSIONS …]; without arguments 1,000,
// 10,000 and 100,000; "writing" for the PDFs alone; "scale FOLDER IMPRESSIONS …" for the program
// itself on books of those sizes, which are kept in the folder. Figures are wall-clock seconds on
// this machine; ratios are what carries over.

#include <sys/resource.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include "BareEngine.h"
#include "CertificateBench.h"
#include "ColourBench.h"
#include "Generator.h"
#include "LightBench.h"
#include "ScaleBench.h"
#include "ScaleBook.h"
#include "SheetBench.h"
#include "base/Files.h"
#include "calc/MixLedger.h"
#include "calc/Readiness.h"
#include "exchange/RecordCodec.h"
#include "exchange/RecordFiles.h"
#include "pdf/PdfWriter.h"
#include "records/HouseRules.h"
#include "sheets/EditionSheet.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/SheetTools.h"
#include "store/HistoryQuery.h"
#include "store/Intake.h"
#include "store/RecordReader.h"

namespace {

using namespace rackbook;
using Clock = std::chrono::steady_clock;

double secondsSince(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

const std::string schemaFolder = std::string(RACKBOOK_SOURCE_DIR) + "/schema";

void line(const char* what, double seconds, double perSecond, const char* unit) {
    std::printf("  %-44s %9.3f s  %12.0f %s\n", what, seconds, perSecond, unit);
}

void ratio(const char* what, double value) {
    std::printf("  %-44s %9.2f\n", what, value);
}

std::vector<Entry> entriesFrom(RecordFileReader& reader) {
    std::vector<Entry> entries;
    entries.reserve(reader.records().size());
    for (IncomingRecord& incoming : reader.records())
        entries.push_back({std::move(incoming.record), std::move(incoming.payload), std::nullopt});
    return entries;
}

IntakeTerms benchTerms() {
    IntakeTerms terms;
    terms.recordedBy = "bench";
    terms.recordedAt = "2026-01-01T00:00:00Z";
    return terms;
}

void measureIntake(const std::string& folder, std::string text) {
    const std::string path = folder + "/measured.rackbook";
    const Clock::time_point start = Clock::now();
    RecordFileReader reader(schemaFolder);
    reader.read("generated.json", std::move(text));
    const double readSeconds = secondsSince(start);
    BookFile book = BookFile::create({path, schemaFolder, 5});
    const std::vector<Entry> entries = entriesFrom(reader);
    const IntakeResult result = take(book, entries, benchTerms());
    const double seconds = secondsSince(start);
    if (!reader.findings().empty() || !result.problems.empty()) {
        std::fprintf(stderr, "the generated records were refused\n");
        std::exit(1);
    }
    std::vector<std::string> steps;
    for (int version = 1; version <= bookVersion; ++version)
        steps.push_back(schemaFolder + "/sql/000" + std::to_string(version) + ".sql");
    const BareFigures bare = bareInsert(path, steps, folder + "/bare.rackbook");
    const auto rows = static_cast<double>(bare.rows);
    line("intake: read and validate", readSeconds,
         static_cast<double>(entries.size()) / readSeconds, "records/s");
    line("intake: all of it", seconds, rows / seconds, "rows/s");
    line("bare engine: the same rows", bare.seconds, rows / bare.seconds, "rows/s");
    ratio("intake's rate as a share of the bare engine's", bare.seconds / seconds);
}

// Of a book that lies there already, in this process.
void measureReadiness(const std::string& path) {
    const LightFigures figures = measuredLight(path, schemaFolder);
    const auto rows = static_cast<double>(figures.impressions);
    const double seconds = figures.loadSeconds + figures.learnSeconds + figures.judgeSeconds;
    std::printf("  %zu impressions, %zu moves of one each\n", figures.impressions, figures.moves);
    line("readiness with light: load, learn, judge", seconds, rows / seconds, "impressions/s");
    line("readiness: of that, loading", figures.loadSeconds,
         static_cast<double>(figures.scannedRows) / figures.loadSeconds, "rows/s");
    line("readiness: of that, learning from looks", figures.learnSeconds,
         rows / figures.learnSeconds, "impressions/s");
    line("bare engine: scan of the same rows", figures.bareScanSeconds,
         static_cast<double>(figures.scannedRows) / figures.bareScanSeconds, "rows/s");
    line("the sun's year", figures.solarTableSeconds, 365 / figures.solarTableSeconds, "days/s");
    ratio("readiness against the bare scan", seconds / figures.bareScanSeconds);
    ratio("the same less the sun's year",
          (seconds - figures.solarTableSeconds) / figures.bareScanSeconds);
    std::printf("  %-44s %9.0f MB\n", "its highest memory", figures.highestMemory_MB);
    std::fflush(stdout);
}

// In a process of its own, so that the memory is its own.
void measureReadinessApart(const std::string& folder) {
    const std::string command = "'" + QCoreApplication::applicationFilePath().toStdString() +
                                "' readiness '" + folder + "/measured.rackbook'";
    std::fflush(stdout);
    if (std::system(command.c_str()) != 0) {
        std::fprintf(stderr, "the readiness check could not be measured\n");
        std::exit(1);
    }
}

// What was laid down in every pull, by lot.
void measureComposition(const std::string& folder) {
    const std::string path = folder + "/measured.rackbook";
    const BookFile book = BookFile::openToRead({path, schemaFolder, 5});
    double best = 1e9;
    double bestLoad = 0;
    std::size_t events = 0;
    std::size_t parts = 0;
    BareFigures bare;
    bare.seconds = 1e9;
    for (int round = 0; round < 3; ++round) {
        const BareFigures scan = bareScan(path, inkHistoryQueries());
        if (scan.seconds < bare.seconds)
            bare = scan;
        const Clock::time_point start = Clock::now();
        const History history = inkHistoryIn(book);
        const double loaded = secondsSince(start);
        const MixLedger ledger(ledgerByLot(history));
        parts = 0;
        for (std::size_t pull = 0; pull < history.pulls.size(); ++pull)
            parts += ledger.atPull(pull).parts.size();
        const double seconds = secondsSince(start);
        events = history.weighings.size() + history.pulls.size();
        if (seconds < best) {
            best = seconds;
            bestLoad = loaded;
        }
    }
    std::printf("  %zu weighings and pulls, %zu parts laid down\n", events, parts);
    line("composition of every pull", best, static_cast<double>(events) / best, "events/s");
    line("composition: of that, loading", bestLoad, static_cast<double>(bare.rows) / bestLoad,
         "rows/s");
    line("bare engine: scan of the same rows", bare.seconds,
         static_cast<double>(bare.rows) / bare.seconds, "rows/s");
    ratio("composition against the bare scan", best / bare.seconds);
}

// As rackbook sheet makes them: all records read, facts, layout, PDF.
void measureSheets(const std::string& folder) {
    const BookFile book = BookFile::openToRead({folder + "/measured.rackbook", schemaFolder, 5});
    const CivilMinute asOf = EdtfDate::parse("2026-06-01").latest();
    const std::string created = "2026-06-01T00:00:00Z";
    Clock::time_point start = Clock::now();
    const RecordSet records = everythingIn(book);
    const double readSeconds = secondsSince(start);
    start = Clock::now();
    const SheetTemplate ofEdition = test::shippedTemplate("edition", editionSheetRules());
    const PdfFonts fonts(ofEdition.fonts());
    const PageModel edition = editionSheet(
        editionFactsOf(records, records.of<Edition>().front(), asOf), ofEdition, fonts, created);
    const std::size_t editionBytes = writePdf(edition, fonts).size();
    const double editionSeconds = secondsSince(start);
    start = Clock::now();
    const SheetTemplate ofBook = test::shippedTemplate("readiness", readinessSheetRules());
    ReadinessQuestion question;
    question.asOf = asOf;
    const PageModel readiness =
        readinessSheet(readinessFactsOf(records, question), ofBook, fonts, created);
    const std::size_t readinessBytes = writePdf(readiness, fonts).size();
    const double readinessSeconds = secondsSince(start);
    line("sheets: reading all records", readSeconds, 1 / readSeconds, "books/s");
    line("edition sheet, one edition", editionSeconds,
         static_cast<double>(edition.pages.size()) / editionSeconds, "pages/s");
    line("readiness sheet, the whole book", readinessSeconds,
         static_cast<double>(readiness.pages.size()) / readinessSeconds, "pages/s");
    std::printf("  %zu pages in %zu kB, %zu pages in %zu kB\n", edition.pages.size(),
                editionBytes / 1000, readiness.pages.size(), readinessBytes / 1000);
}

// One move of twenty sheets, as rackbook hang records it: open, check, record, close.
void measureDailyVerb(const std::string& folder) {
    constexpr int times = 20;
    const std::string path = folder + "/measured.rackbook";
    std::vector<Ref<Impression>> sheets;
    {
        const BookFile book = BookFile::openToRead({path, schemaFolder, 5});
        const History history = historyIn(book, {"E1", std::nullopt});
        for (const ImpressionLabel& label : labelsOf(book, history))
            if (sheets.size() < 20)
                sheets.push_back({label.id});
    }
    const Clock::time_point start = Clock::now();
    for (int i = 0; i < times; ++i) {
        Move move;
        move.id = "daily-" + std::to_string(i);
        move.impressions = sheets;
        move.to.id = "rack";
        move.at = EdtfDate::parse("2026-05-01");
        move.why = MoveWhy::hang;
        RecordFileReader reader(schemaFolder);
        reader.add(move, "bench");
        BookFile book = BookFile::openToWrite({path, schemaFolder, 5});
        take(book, entriesFrom(reader), benchTerms());
    }
    const double seconds = secondsSince(start) / times;
    const BareFigures bare = bareDailyInsert(folder + "/bare.rackbook", times);
    line("daily verb: one move of 20 sheets", seconds, 1 / seconds, "verbs/s");
    line("bare engine: the same rows", bare.seconds / times, times / bare.seconds, "verbs/s");
    ratio("daily verb against the bare engine", seconds / (bare.seconds / times));
}

// The same whatever the book holds.
void measureColour() {
    const ColourFigures figures = measuredColour();
    const auto drawdowns = static_cast<double>(figures.drawdowns);
    const auto films = static_cast<double>(figures.films);
    const double oneFilm = figures.filmSeconds / films;
    std::printf("colour: 12 invented inks\n");
    line("match: one colour, at most 4 inks at once", figures.matchSeconds,
         1 / figures.matchSeconds, "colours/s");
    line("characterise: 4 drawdowns of each lot", figures.learnSeconds,
         drawdowns / figures.learnSeconds, "drawdowns/s");
    line("bare engine: films of 36 bands", figures.filmSeconds, 1 / oneFilm, "films/s");
    ratio("match, in bare films", figures.matchSeconds / oneFilm);
    ratio("characterise, in bare films for a drawdown", figures.learnSeconds / drawdowns / oneFilm);
    std::printf("\n");
    std::fflush(stdout);
}

void measureWriting() {
    const SheetFigures figures = measuredSheets(1000);
    const auto pages = static_cast<double>(figures.pages);
    std::printf("a tagged document of %zu pages, 60 lines and a picture on each\n", figures.pages);
    line("written as PDF", figures.writeSeconds, pages / figures.writeSeconds, "pages/s");
    line("cairo: the same, without tags", figures.otherSeconds, pages / figures.otherSeconds,
         "pages/s");
    ratio("our time against cairo's", figures.writeSeconds / figures.otherSeconds);
    std::printf("  %zu kB, cairo's %zu kB\n\n", figures.bytes / 1000, figures.otherBytes / 1000);
    std::fflush(stdout);
}

void measureCertificates() {
    const CertificateFigures figures = measuredCertificates(1000);
    const double seconds = figures.factsSeconds + figures.setSeconds + figures.writeSeconds;
    const auto certificates = static_cast<double>(figures.certificates);
    std::printf("%zu certificates of one edition in one file, %zu pages\n", figures.certificates,
                figures.pages);
    line("certificates: from records to bytes", seconds, certificates / seconds, "certificates/s");
    line("certificates: of that, facts", figures.factsSeconds, certificates / figures.factsSeconds,
         "certificates/s");
    line("certificates: of that, records and pages", figures.setSeconds,
         certificates / figures.setSeconds, "certificates/s");
    line("certificates: of that, written as PDF", figures.writeSeconds,
         certificates / figures.writeSeconds, "certificates/s");
    line("cairo: the same pages, nothing inside", figures.otherSeconds,
         certificates / figures.otherSeconds, "certificates/s");
    ratio("our time against cairo's", seconds / figures.otherSeconds);
    std::printf("  %zu kB, cairo's %zu kB\n\n", figures.bytes / 1000, figures.otherBytes / 1000);
    std::fflush(stdout);
}

void measure(int impressions) {
    QTemporaryDir folder;
    const std::string path = folder.path().toStdString();
    std::vector<std::string> payloads;
    for (const Record& record : generatedRecords(impressions, 1))
        payloads.push_back(encodeRecord(record));
    std::string text = recordFileText(payloads);
    std::printf("%d impressions: %zu records, %.1f MB of JSON\n", impressions, payloads.size(),
                static_cast<double>(text.size()) / 1e6);
    payloads.clear();
    measureIntake(path, std::move(text));
    measureReadinessApart(path);
    measureComposition(path);
    measureSheets(path);
    measureDailyVerb(path);
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    std::printf("  %-44s %9.0f MB\n\n", "highest memory so far",
                static_cast<double>(usage.ru_maxrss) / 1024);
    std::fflush(stdout);
}

void makeScaleBook(int impressions, const std::string& path) {
    const ScaleBookFigures figures = writeScaleBook(path, schemaFolder, impressions);
    std::printf("  %zu records, %zu moves with %zu prints, %zu prints pulled: %.1f s\n",
                figures.records, figures.moves, figures.printMoves, figures.printPulls,
                figures.seconds);
}

void measureScaleOf(const std::vector<std::string>& words) {
    ScaleBenchTerms terms{
        RACKBOOK_PROGRAM, QCoreApplication::applicationFilePath().toStdString(), words[1], {}};
    for (std::size_t i = 2; i < words.size(); ++i)
        terms.impressions.push_back(std::atoi(words[i].c_str()));
    measureScale(terms);
}

// Whether the words asked for one part alone.
bool ranPart(const std::vector<std::string>& words) {
    const std::string part = words.empty() ? std::string() : words.front();
    if (words.size() == 2 && part == "readiness")
        measureReadiness(words[1]);
    else if (words.size() >= 3 && part == "scale")
        measureScaleOf(words);
    else if (words.size() == 3 && part == "scale-book")
        makeScaleBook(std::atoi(words[1].c_str()), words[2]);
    else if (words.size() == 3 && part == "scale-bare")
        runBare(words[1], words[2]);
    else if (words.size() == 1 && part == "writing") {
        measureWriting();
        measureCertificates();
    } else
        return false;
    return true;
}

}  // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    if (ranPart({argv + 1, argv + argc}))
        return 0;
    std::vector<int> sizes;
    for (int i = 1; i < argc; ++i)
        sizes.push_back(std::atoi(argv[i]));
    if (sizes.empty())
        sizes = {1000, 10000, 100000};
    measureColour();
    measureWriting();
    measureCertificates();
    for (const int size : sizes)
        measure(size);
    return 0;
}
