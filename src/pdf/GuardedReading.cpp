#include "pdf/GuardedReading.h"

#include "base/Files.h"
#include "pdf/CarriedFiles.h"

namespace rackbook {

namespace {

constexpr const char* anotherCopy = "Get an undamaged copy of it.";

InputError tooLarge(const GuardedQuestion& question) {
    return InputError(question.path,
                      "it " + question.holds + " more than " +
                          std::to_string(question.limits.output_MB) + " MB of " + question.what,
                      question.tooMuchRemedy);
}

void requirePdf(const GuardedQuestion& question) {
    constexpr std::size_t headerWithin = 1024;  // as readers of PDF have it (ISO 32000-1, annex H)
    const std::string beginning = beginningOf(question.path, headerWithin);
    if (beginning.empty())
        readFile(question.path, headerWithin);  // says why, where it cannot be read
    if (beginning.find("%PDF-") == std::string::npos)
        throw InputError(question.path, "it is no PDF", question.noPdfRemedy);
}

std::string rawAnswer(const GuardedQuestion& question,
                      const std::function<std::string(std::size_t)>& work) {
    ProcessLimits withLengths = question.limits;
    ++withLengths.output_MB;
    ProcessOutcome outcome =
        runGuarded([&] { return work(question.limits.output_MB << 20); }, withLengths);
    switch (outcome.end) {
        case ProcessEnd::finished:
            return std::move(outcome.output);
        case ProcessEnd::outOfMemory:
            throw InputError(question.path,
                             "reading it takes more than " +
                                 std::to_string(question.limits.memory_MB) + " MB of memory",
                             anotherCopy);
        case ProcessEnd::outOfTime:
            throw InputError(
                question.path,
                "reading it takes longer than " + std::to_string(question.limits.time_s) + " s",
                anotherCopy);
        case ProcessEnd::tooMuchOutput:
            throw tooLarge(question);
        case ProcessEnd::failed:
            break;
    }
    throw damagedPdf(question.path);
}

}  // namespace

InputError damagedPdf(const std::string& path) {
    return InputError(path, "the PDF is damaged", anotherCopy);
}

std::string guardedAnswer(const GuardedQuestion& question,
                          const std::function<std::string(std::size_t)>& work) {
    requirePdf(question);
    std::string answer = rawAnswer(question, work);
    AnswerTexts texts(answer);
    const std::string word = texts.next().value_or("");
    if (word == answerEncrypted)
        throw InputError(question.path, "it is encrypted",
                         "Save it without a password, then read that.");
    if (word == answerTooLarge)
        throw tooLarge(question);
    if (word == answerTooMany)
        throw InputError(question.path,
                         "it " + question.holds + " more than " + std::to_string(mostCarriedFiles) +
                             " " + question.what,
                         question.tooMuchRemedy);
    if (word != answerFound)
        throw damagedPdf(question.path);
    std::string start;
    appendText(start, word);
    return answer.substr(start.size());
}

}  // namespace rackbook
