// What the process that parses PDFs from outside may answer once such a file has taken it over.
#include <algorithm>

#include "Fuzz.h"
#include "base/Text.h"
#include "pdf/AnswerReading.h"

using namespace rackbook;

namespace {

void requireText(const std::string& text) {
    fuzz::require(!invalidUtf8At(text), "text of a PDF is UTF-8");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string answer(fuzz::textOf(data, size));
    fuzz::tolerateRefusal([&] {
        for (const FormValue& value : formValuesIn(answer, "form.pdf")) {
            requireText(value.name);
            requireText(value.text);
            fuzz::require(normalised(value.text) == value.text, "text of a form is normalised");
            fuzz::require(!value.isTick || value.text.empty(), "a tick has no text");
        }
    });
    fuzz::tolerateRefusal([&] {
        const CarriedFiles carried = carriedFilesIn(answer, "sheet.pdf");
        requireText(carried.title);
        for (const AssociatedFile& file : carried.files)
            fuzz::require(file.name.find('/') == std::string::npos && file.name != "..",
                          "a file inside names no folder");
    });
    return 0;
}
