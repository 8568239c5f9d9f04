#include "pdf/CarriedFiles.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Text.h"
#include "pdf/AnswerReading.h"
#include "pdf/CarriedFilesAnswer.h"
#include "pdf/CarriedFilesParser.h"
#include "pdf/FileNames.h"
#include "pdf/GuardedReading.h"
#include "pdf/PdfMetadata.h"

namespace rackbook {

namespace {

// "2026-03-04T08:30:00Z" from "D:20260304083000Z" or from the same with a shift (ISO 32000-1,
// 7.9.4). Dates that say less give nothing.
std::string writtenOut(const std::string& date) {
    if (date.rfind("D:", 0) != 0 || date.size() < 17)
        return {};
    const auto part = [&](std::size_t at, std::size_t length) { return date.substr(at, length); };
    const std::string clock = part(2, 4) + "-" + part(6, 2) + "-" + part(8, 2) + "T" + part(10, 2) +
                              ":" + part(12, 2) + ":" + part(14, 2);
    std::string shift = part(16, std::string::npos);
    shift.erase(std::remove(shift.begin(), shift.end(), '\''), shift.end());
    if (shift == "Z" || shift == "Z0000" || shift == "+0000")
        shift = "Z";
    else if (shift.size() == 5)
        shift.insert(3, ":");
    try {
        pdfDate(clock + shift);  // knows what a date looks like
        return clock + shift;
    } catch (const RenderError&) {
        return {};
    }
}

bool isCleanText(const std::string& text) {
    return !invalidUtf8At(text) && !controlCharacterIn(text);
}

}  // namespace

CarriedFiles carriedFilesIn(const std::string& answer, const std::string& path) {
    AnswerTexts texts(answer);
    const auto next = [&] {
        if (auto text = texts.next())
            return *std::move(text);
        throw damagedPdf(path);
    };
    CarriedFiles carried;
    carried.title = next();
    carried.created = writtenOut(next());
    while (!texts.atEnd()) {
        AssociatedFile file;
        file.name = next();
        file.mediaType = next();
        file.description = next();
        file.bytes = next();
        if (!isPlainFileName(file.name) || !isCleanText(file.mediaType) ||
            !isCleanText(file.description))
            throw damagedPdf(path);
        carried.files.push_back(std::move(file));
    }
    if (!isCleanText(carried.title))
        throw damagedPdf(path);
    return carried;
}

CarriedFiles readCarriedFiles(const std::string& path, const ProcessLimits& limits) {
    const GuardedQuestion question = {
        path,      limits,  "Name a PDF that Rackbook made.",
        "carries", "files", "Take the files out with a PDF program that you trust."};
    const std::string answer = guardedAnswer(
        question, [&](std::size_t mostBytes) { return carriedFilesAnswer(path, mostBytes); });
    CarriedFiles carried = carriedFilesIn(answer, path);
    if (carried.files.empty())
        throw InputError(path, "there is no record inside",
                         "Name a PDF that Rackbook made with its record inside.");
    return carried;
}

}  // namespace rackbook
