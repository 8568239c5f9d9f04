// PDFs with a form that come back filled in. The program parses them in a guarded process; here
// they are parsed in this one, so that a fuzzer sees where it gets to. The PDF library may crash:
// that is what the guard is for (libFuzzer: -fork=1 -ignore_crashes=1); what it gives must be
// whole.
#include <fcntl.h>
#include <unistd.h>

#include <bitset>
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

// The PDF library leaves files open where it gives up on one; after some thousands no file could be
// opened any more, and every later input would only be refused.
class FilesLeftOpen {
public:
    FilesLeftOpen() : m_before(openFiles()) {}
    FilesLeftOpen(const FilesLeftOpen&) = delete;
    FilesLeftOpen& operator=(const FilesLeftOpen&) = delete;

    ~FilesLeftOpen() {
        const OpenFiles opened = openFiles() & ~m_before;
        for (std::size_t file = 0; file < opened.size(); ++file)
            if (opened[file])
                close(static_cast<int>(file));
    }

private:
    using OpenFiles = std::bitset<64>;

    static OpenFiles openFiles() {
        OpenFiles open;
        for (std::size_t file = 0; file < open.size(); ++file)
            open[file] = fcntl(static_cast<int>(file), F_GETFD) != -1;
        return open;
    }

    OpenFiles m_before;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const std::string path = nameOfFile();
    const FilesLeftOpen filesLeftOpen;
    std::ofstream file(path, std::ios::binary);
    file.write(reinterpret_cast<const char*>(data), static_cast<std::streamsize>(size));
    file.close();
    fuzz::require(file.good(), "the input is in a file");
    constexpr std::size_t mostBytes = 4 << 20;
    tolerateThrow([&] { requireWhole(formValuesAnswer(path, mostBytes), formValuesIn); });
    tolerateThrow([&] { requireWhole(carriedFilesAnswer(path, mostBytes), carriedFilesIn); });
    unlink(path.c_str());
    return 0;
}
