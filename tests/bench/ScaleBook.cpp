#include "ScaleBook.h"

#include <chrono>
#include <stdexcept>
#include <utility>

#include "Generator.h"
#include "exchange/RecordCodec.h"
#include "store/Intake.h"

namespace rackbook {

namespace {

using Clock = std::chrono::steady_clock;

constexpr std::size_t recordsAtOnce = 50000;

void count(const Record& record, ScaleBookFigures& figures) {
    ++figures.records;
    if (const Move* move = std::get_if<Move>(&record)) {
        ++figures.moves;
        figures.printMoves += move->impressions.size();
    } else if (const Pull* pull = std::get_if<Pull>(&record)) {
        figures.printPulls += pull->impressions.size();
    }
}

void takeAll(BookFile& book, std::vector<Entry>& entries) {
    IntakeTerms terms;
    terms.recordedBy = "bench";
    terms.recordedAt = "2026-01-01T00:00:00Z";
    const IntakeResult result = take(book, entries, terms);
    if (!result.problems.empty())
        throw std::runtime_error("a generated record was refused: " + result.problems.front().what +
                                 " " + result.problems.front().value);
    entries.clear();
}

}  // namespace

ScaleBookFigures writeScaleBook(const std::string& path, const std::string& schemaFolder,
                                int impressions) {
    ScaleBookFigures figures;
    const Clock::time_point start = Clock::now();
    BookFile book = BookFile::create({path, schemaFolder, 5});
    GeneratedStudio studio(impressions, 1, StudioLife::years);
    std::vector<Entry> entries;
    for (std::vector<Record> some = studio.next(); !some.empty(); some = studio.next()) {
        for (Record& record : some) {
            count(record, figures);
            std::string payload = encodeRecord(record);
            entries.push_back({std::move(record), std::move(payload), std::nullopt});
        }
        if (entries.size() >= recordsAtOnce)
            takeAll(book, entries);
    }
    takeAll(book, entries);
    figures.seconds = std::chrono::duration<double>(Clock::now() - start).count();
    return figures;
}

}  // namespace rackbook
