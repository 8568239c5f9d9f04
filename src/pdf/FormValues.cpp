#include "pdf/FormValues.h"

#include <algorithm>

#include "base/Text.h"
#include "pdf/AnswerReading.h"
#include "pdf/FormValuesParser.h"
#include "pdf/GuardedReading.h"
#include "pdf/PdfText.h"

namespace rackbook {

namespace {

constexpr std::size_t mostText_MB = 4;

// Each part of a name may have an encoding of its own.
std::string nameOf(const std::string& parts, const std::string& path) {
    std::string name;
    AnswerTexts texts(parts);
    while (!texts.atEnd()) {
        const auto part = texts.next();
        if (!part)
            throw damagedPdf(path);
        name += (name.empty() ? "" : ".") + decodedPdfText(*part);
    }
    return normalised(name);
}

}  // namespace

std::vector<FormValue> formValuesIn(const std::string& answer, const std::string& path) {
    AnswerTexts texts(answer);
    const auto next = [&] {
        if (auto text = texts.next())
            return *std::move(text);
        throw damagedPdf(path);
    };
    std::vector<FormValue> values;
    while (!texts.atEnd()) {
        FormValue value;
        value.name = nameOf(next(), path);
        const std::string kind = next();
        const std::string bytes = next();
        value.isTick = kind == formTick;
        value.isOn = value.isTick && bytes == formOn;
        if (!value.isTick)
            value.text = normalised(decodedPdfText(bytes));
        values.push_back(std::move(value));
    }
    return values;
}

std::vector<FormValue> readFormValues(const std::string& path, ProcessLimits limits) {
    limits.output_MB = std::min(limits.output_MB, mostText_MB);
    const GuardedQuestion question = {
        path,    limits,        "Name the PDF of a bench sheet that was filled in.",
        "holds", "form fields", "Take the sheet as rackbook made it, and fill that in."};
    return formValuesIn(
        guardedAnswer(question,
                      [&](std::size_t mostBytes) { return formValuesAnswer(path, mostBytes); }),
        path);
}

}  // namespace rackbook
