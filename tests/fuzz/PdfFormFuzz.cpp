// PDFs with a form that come back filled in. The program parses them in a guarded process; here
// they are parsed in this one, so that a fuzzer sees where it gets to. The PDF library may crash:
// that is what the guard is for (libFuzzer: -fork=1 -ignore_crashes=1); what it gives must be
// whole.
#include <unistd.h>

#include <exception>
#include <fstream>

#include "Fuzz.h"
#include "pdf/AnswerReading.h"
#include "pdf/CarriedFilesAnswer.h"
#include "pdf/CarriedFilesParser.h"
#include "pdf/FormValuesParser.h"

using namespace rackbook;

namespace {

// In memory, where a system has it: a million of them are written.
std::string nameOfFile() {
    const std::string folder = access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp";
    return folder + "/rackbook-fuzz-" + std::to_string(getpid()) + ".pdf";
}

template <class Reader>
void requireWhole(const std::string& answer, Reader read) {
    AnswerTexts texts(answer);
    const auto word = texts.next();
    fuzz::require(word.has_value(), "an answer begins with a word");
    if (*word != answerFound)
        return fuzz::require(texts.atEnd(), "nothing follows a refusal");
    constexpr std::size_t lengthBytes = 8;
    fuzz::tolerateRefusal([&] { read(answer.substr(lengthBytes + word->size()), "form.pdf"); });
}

// The guard takes whatever is thrown for a damaged file, or one that wants too much memory.
template <class Work>
void tolerateThrow(Work&& work) {
    try {
        work();
    } catch (const std::exception&) {
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const std::string path = nameOfFile();
    std::ofstream(path, std::ios::binary)
        .write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
    constexpr std::size_t mostBytes = 4 << 20;
    tolerateThrow([&] { requireWhole(formValuesAnswer(path, mostBytes), formValuesIn); });
    tolerateThrow([&] { requireWhole(carriedFilesAnswer(path, mostBytes), carriedFilesIn); });
    unlink(path.c_str());
    return 0;
}
