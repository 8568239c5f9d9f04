// Runs a fuzz target over its corpus and over changes of it that are the same every time: what a
// plain build can do without a fuzzer's feedback. Arguments: folder, how many changes of each file.
#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <vector>

#include "Fuzz.h"

namespace {

using Bytes = std::vector<std::uint8_t>;

Bytes changed(const Bytes& bytes, const Bytes& other, std::mt19937& random) {
    static const std::string sharp[] = {"\xff", "\0",    "\"", "{",  "[",
                                        "-",    "e9999", "..", "\r", "\xC3"};
    Bytes made = bytes;
    const auto at = [&](std::size_t size) {
        return size == 0 ? 0 : std::uniform_int_distribution<std::size_t>(0, size - 1)(random);
    };
    for (std::size_t i = 0; i <= at(4); ++i) {
        const auto where = made.begin() + static_cast<std::ptrdiff_t>(at(made.size() + 1));
        switch (at(5)) {
            case 0:
                if (where != made.end())
                    *where ^= static_cast<std::uint8_t>(1u << at(8));
                break;
            case 1:
                made.erase(where,
                           where + static_cast<std::ptrdiff_t>(std::min<std::size_t>(
                                       at(16), static_cast<std::size_t>(made.end() - where))));
                break;
            case 2: {
                const std::string& word = sharp[at(std::size(sharp))];
                made.insert(where, word.begin(), word.end());
                break;
            }
            case 3: {
                const std::size_t from = at(other.size());
                const std::size_t count = std::min<std::size_t>(at(64), other.size() - from);
                const auto begin = other.begin() + static_cast<std::ptrdiff_t>(from);
                made.insert(where, begin, begin + static_cast<std::ptrdiff_t>(count));
                break;
            }
            default:
                made.resize(static_cast<std::size_t>(where - made.begin()));
        }
    }
    return made;
}

}  // namespace

int main(int count, char** words) {
    if (count != 3) {
        std::fprintf(stderr, "usage: %s CORPUS CHANGES\n", words[0]);
        return 2;
    }
    std::vector<Bytes> corpus;
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(words[1]))
        paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    for (const std::filesystem::path& path : paths) {
        std::ifstream file(path, std::ios::binary);
        corpus.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    if (corpus.empty()) {
        std::fprintf(stderr, "%s: nothing is in it\n", words[1]);
        return 2;
    }
    const long changes = std::atol(words[2]);
    std::mt19937 random(1);
    long runs = 0;
    for (const Bytes& bytes : corpus) {
        LLVMFuzzerTestOneInput(bytes.data(), bytes.size());
        for (long i = 0; i < changes; ++i, ++runs) {
            const Bytes& other = corpus[static_cast<std::size_t>(random()) % corpus.size()];
            const Bytes made = changed(bytes, other, random);
            LLVMFuzzerTestOneInput(made.data(), made.size());
        }
    }
    std::printf("%zu files, %ld changes\n", corpus.size(), runs);
    std::fflush(stdout);
}
