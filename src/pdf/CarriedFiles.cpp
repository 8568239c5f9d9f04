#include "pdf/CarriedFiles.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "pdf/CarriedFilesAnswer.h"
#include "pdf/CarriedFilesParser.h"
#include "pdf/FileNames.h"
#include "pdf/PdfMetadata.h"

namespace rackbook {

namespace {

constexpr const char* anotherCopy = "Get an undamaged copy of it.";

InputError damaged(const std::string& path) {
    return InputError(path, "the PDF is damaged", anotherCopy);
}

InputError tooLarge(const std::string& path, const ProcessLimits& limits) {
    return InputError(path,
                      "it carries more than " + std::to_string(limits.output_MB) + " MB of files",
                      "Take the files out with a PDF program that you trust.");
}

void requirePdf(const std::string& path) {
    constexpr std::size_t headerWithin = 1024;  // as readers of PDF have it (ISO 32000-1, annex H)
    const std::string beginning = beginningOf(path, headerWithin);
    if (beginning.empty())
        readFile(path, headerWithin);  // says why, where it cannot be read
    if (beginning.find("%PDF-") == std::string::npos)
        throw InputError(path, "it is no PDF", "Name a PDF that Rackbook made.");
}

std::string answerOf(const std::string& path, const ProcessLimits& limits) {
    const auto work = [&] { return carriedFilesAnswer(path, limits.output_MB << 20); };
    ProcessLimits withLengths = limits;
    ++withLengths.output_MB;
    ProcessOutcome outcome = runGuarded(work, withLengths);
    switch (outcome.end) {
        case ProcessEnd::finished:
            return std::move(outcome.output);
        case ProcessEnd::outOfMemory:
            throw InputError(
                path,
                "reading it takes more than " + std::to_string(limits.memory_MB) + " MB of memory",
                anotherCopy);
        case ProcessEnd::outOfTime:
            throw InputError(path,
                             "reading it takes longer than " + std::to_string(limits.time_s) + " s",
                             anotherCopy);
        case ProcessEnd::tooMuchOutput:
            throw tooLarge(path, limits);
        case ProcessEnd::failed:
            break;
    }
    throw damaged(path);
}

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

CarriedFiles decoded(AnswerTexts texts, const std::string& path) {
    const auto next = [&] {
        if (auto text = texts.next())
            return *std::move(text);
        throw damaged(path);
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
            throw damaged(path);
        carried.files.push_back(std::move(file));
    }
    if (!isCleanText(carried.title))
        throw damaged(path);
    return carried;
}

}  // namespace

CarriedFiles readCarriedFiles(const std::string& path, const ProcessLimits& limits) {
    requirePdf(path);
    const std::string answer = answerOf(path, limits);
    AnswerTexts texts(answer);
    const std::string word = texts.next().value_or("");
    if (word == answerEncrypted)
        throw InputError(path, "it is encrypted", "Save it without a password, then read that.");
    if (word == answerTooLarge)
        throw tooLarge(path, limits);
    if (word != answerFound)
        throw damaged(path);
    CarriedFiles carried = decoded(texts, path);
    if (carried.files.empty())
        throw InputError(path, "there is no record inside",
                         "Name a PDF that Rackbook made with its record inside.");
    return carried;
}

}  // namespace rackbook
