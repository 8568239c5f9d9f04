// Reads the sources themselves: who includes whom, and who knows which library.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "support/Paths.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

using Names = std::set<std::string>;

// Which rooms the headers of a room may come from, besides its own.
const std::map<std::string, Names> arrows = {
    {"base", {}},
    {"records", {"base"}},
    {"calc", {"base", "records"}},
    {"checks", {"base", "records", "calc"}},
    {"store", {"base", "records"}},
    {"exchange", {"base", "records"}},
    {"sheets", {"base", "records", "calc"}},
    {"pdf", {"base", "sheets"}},
    {"cli", {"base"}},
    {"commands",
     {"base", "records", "calc", "checks", "store", "exchange", "sheets", "pdf", "cli"}},
    {"", {"base", "cli", "commands"}},  // main.cpp
};

// Qt Core is for the .cpp files of these rooms, in sheets/ of one alone.
const std::map<std::string, std::string> qtKeepers = {{"base", ""},
                                                      {"store", ""},
                                                      {"exchange", ""},
                                                      {"cli", ""},
                                                      {"commands", ""},
                                                      {"", ""},
                                                      {"sheets", "sheets/SheetLocale.cpp"}};

// Libraries that one room keeps to itself, by how their headers begin.
// lcms2 has two: it makes the output profile of sheets and reads measurement files.
const std::multimap<std::string, std::string> keepers = {
    {"sqlite3", "store"},     {"nlohmann/", "exchange"}, {"valijson/", "exchange"},
    {"podofo/", "pdf"},       {"fontconfig/", "pdf"},    {"lcms2", "pdf"},
    {"lcms2", "exchange"},    {"libical/", "exchange"},  {"nlopt", "calc"},
    {"qrcodegen/", "sheets"}, {"ft2build.h", "pdf"},     {"png.h", "pdf"},
    {"png.h", "exchange"},    {"iconv.h", "exchange"},
};

bool mayInclude(const std::string& room, const std::string& header) {
    bool isKept = false;
    for (const auto& [beginning, keeper] : keepers) {
        if (header.rfind(beginning, 0) != 0)
            continue;
        if (keeper == room)
            return true;
        isKept = true;
    }
    return !isKept;
}

struct Source {
    std::string room;
    std::string name;  // below src/
    bool isHeader = false;
    std::string text;
    std::vector<std::string> own;        // included with quotes
    std::vector<std::string> libraries;  // included with angle brackets
};

Source readSource(const std::filesystem::path& path) {
    Source source;
    source.name = std::filesystem::relative(path, test::sourcePath("src")).string();
    const std::size_t slash = source.name.find('/');
    source.room = slash == std::string::npos ? "" : source.name.substr(0, slash);
    source.isHeader = path.extension() == ".h";
    source.text = test::bytesOf(path.string());
    std::istringstream lines(source.text);
    static const std::regex include("^\\s*#\\s*include\\s*([<\"])([^>\"]+)[>\"].*");
    std::smatch match;
    for (std::string line; std::getline(lines, line);)
        if (std::regex_match(line, match, include))
            (match[1] == "<" ? source.libraries : source.own).push_back(match[2]);
    return source;
}

const std::vector<Source>& sources() {
    static const std::vector<Source> all = [] {
        std::vector<Source> found;
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(test::sourcePath("src")))
            if (entry.path().extension() == ".h" || entry.path().extension() == ".cpp")
                found.push_back(readSource(entry.path()));
        return found;
    }();
    return all;
}

bool startsWith(const std::string& text, const std::string& beginning) {
    return text.compare(0, beginning.size(), beginning) == 0;
}

TEST(Rooms, AreAllKnown) {
    ASSERT_GT(sources().size(), 50u);
    for (const auto& entry : std::filesystem::directory_iterator(test::sourcePath("src")))
        if (entry.is_directory()) {
            EXPECT_EQ(arrows.count(entry.path().filename().string()), 1u) << entry.path();
        }
    for (const Source& source : sources()) {
        EXPECT_EQ(arrows.count(source.room), 1u) << source.name;
        EXPECT_LE(std::count(source.name.begin(), source.name.end(), '/'), 1) << source.name;
        if (source.room.empty()) {
            EXPECT_EQ(source.name, "main.cpp");
        }
    }
}

TEST(Rooms, IncludeOnlyWhatTheirArrowsAllow) {
    for (const Source& source : sources())
        for (const std::string& header : source.own) {
            const std::size_t slash = header.find('/');
            ASSERT_NE(slash, std::string::npos)
                << source.name << " includes " << header << " without its room";
            const std::string room = header.substr(0, slash);
            EXPECT_TRUE(room == source.room || arrows.at(source.room).count(room) == 1)
                << source.name << " includes " << header;
            EXPECT_TRUE(std::filesystem::exists(test::sourcePath("src/" + header)))
                << source.name << " includes " << header;
        }
}

// The arrows must not go in circles, or they would mean nothing.
TEST(Rooms, StandInAnOrder) {
    Names placed;
    for (std::size_t round = 0; round < arrows.size(); ++round)
        for (const auto& [room, below] : arrows)
            if (std::includes(placed.begin(), placed.end(), below.begin(), below.end()))
                placed.insert(room);
    EXPECT_EQ(placed.size(), arrows.size());
}

TEST(Rooms, KeepTheirLibrariesToThemselves) {
    for (const Source& source : sources())
        for (const std::string& header : source.libraries)
            EXPECT_TRUE(mayInclude(source.room, header)) << source.name << " includes " << header;
}

TEST(Rooms, UseQtOnlyWhereTheyMay) {
    for (const Source& source : sources())
        for (const std::string& header : source.libraries) {
            if (header[0] != 'Q')
                continue;
            const auto keeper = qtKeepers.find(source.room);
            ASSERT_NE(keeper, qtKeepers.end()) << source.name << " includes " << header;
            EXPECT_TRUE(keeper->second.empty() || keeper->second == source.name)
                << source.name << " includes " << header;
        }
}

TEST(Rooms, NameNoTypesOfOtherRoomsLibraries) {
    const std::map<std::string, std::string> words = {{"sqlite3_", "store"},
                                                      {"nlohmann::", "exchange"},
                                                      {"valijson::", "exchange"},
                                                      {"PoDoFo::", "pdf"}};
    for (const Source& source : sources())
        for (const auto& [word, keeper] : words)
            if (source.room != keeper) {
                EXPECT_EQ(source.text.find(word), std::string::npos)
                    << source.name << " speaks of " << word;
            }
}

// A header that shows a library may be included only inside its own room, and says so.
TEST(Rooms, ShowNoLibraryInHeadersThatOthersInclude) {
    Names showing;
    bool grown = true;
    const auto shows = [&](const Source& source) {
        const bool itself = std::any_of(
            source.libraries.begin(), source.libraries.end(), [](const std::string& header) {
                const bool isQt = header[0] == 'Q';
                return isQt || std::any_of(keepers.begin(), keepers.end(), [&](const auto& keeper) {
                           return startsWith(header, keeper.first);
                       });
            });
        return itself || std::any_of(source.own.begin(), source.own.end(),
                                     [&](const std::string& h) { return showing.count(h) == 1; });
    };
    while (grown) {
        grown = false;
        for (const Source& source : sources())
            if (source.isHeader && shows(source))
                grown = showing.insert(source.name).second || grown;
    }
    EXPECT_EQ(showing.count("exchange/JsonText.h"), 1u) << "the search itself must find something";
    for (const Source& source : sources()) {
        if (showing.count(source.name) == 1) {
            EXPECT_NE(source.text.find("Private to " + source.room + "/"), std::string::npos)
                << source.name;
        }
        for (const std::string& header : source.own)
            if (showing.count(header) == 1) {
                EXPECT_EQ(header.substr(0, header.find('/')), source.room)
                    << source.name << " includes " << header;
            }
    }
}

TEST(Rooms, LeaveHeadersThatArePrivateToTheirRoom) {
    Names isPrivate;
    for (const Source& source : sources())
        if (source.isHeader &&
            std::regex_search(source.text, std::regex("Private to(\\s|//)+" + source.room + "/")))
            isPrivate.insert(source.name);
    EXPECT_EQ(isPrivate.count("store/Sqlite.h"), 1u);
    for (const Source& source : sources())
        for (const std::string& header : source.own)
            if (isPrivate.count(header) == 1) {
                EXPECT_EQ(header.substr(0, header.find('/')), source.room)
                    << source.name << " includes " << header;
            }
}

// They are to be read, tested and used with nothing but the standard library.
TEST(Rooms, KeepHeadersOfRecordsAndBaseFreeOfLibraries) {
    for (const Source& source : sources()) {
        if (source.room != "records" && (source.room != "base" || !source.isHeader))
            continue;
        for (const std::string& header : source.libraries)
            EXPECT_EQ(header.find_first_of("/.ABCDEFGHIJKLMNOPQRSTUVWXYZ"), std::string::npos)
                << source.name << " includes " << header;
    }
}

TEST(Sources, OpenNoWholeNamespaceOfTheLibrary) {
    for (const Source& source : sources()) {
        EXPECT_EQ(source.text.find("using namespace std"), std::string::npos) << source.name;
        if (source.isHeader) {
            EXPECT_EQ(source.text.find("using namespace"), std::string::npos) << source.name;
        }
    }
}

TEST(Sources, GuardTheirHeadersAndBeginWithTheirOwn) {
    for (const Source& source : sources()) {
        if (source.isHeader) {
            EXPECT_NE(source.text.find("#pragma once"), std::string::npos) << source.name;
            EXPECT_TRUE(startsWith(source.text, "// "))
                << source.name << " does not say its purpose";
            continue;
        }
        const std::string header =
            source.name.substr(0, source.name.size() - std::string("cpp").size()) + "h";
        if (!std::filesystem::exists(test::sourcePath("src/" + header)))
            continue;
        const std::size_t first = source.text.find("#include");
        ASSERT_NE(first, std::string::npos) << source.name;
        EXPECT_EQ(source.text.find("#include \"" + header + "\""), first) << source.name;
    }
}

// All rooms share one namespace, so two types of one name would be one type to the linker.
TEST(Sources, GiveEachTypeInAHeaderANameOfItsOwn) {
    const std::regex definition("\\n(?:class|struct|enum class) ([A-Z][A-Za-z]*)(?: : | \\{)");
    std::map<std::string, std::string> homes;
    for (const Source& source : sources()) {
        if (!source.isHeader)
            continue;
        for (std::sregex_iterator match(source.text.begin(), source.text.end(), definition), end;
             match != end; ++match) {
            const auto [home, fresh] = homes.emplace((*match)[1].str(), source.name);
            EXPECT_TRUE(fresh) << (*match)[1].str() << " stands in " << home->second << " and "
                               << source.name;
        }
    }
    EXPECT_GT(homes.size(), 50u);
}

// Rooms of the library throw; only cli/, commands/ and main.cpp speak to the person.
TEST(Sources, PrintNothingFromTheLibrary) {
    const Names speaking = {"cli", "commands", ""};
    for (const Source& source : sources()) {
        if (speaking.count(source.room) == 1)
            continue;
        for (const char* word : {"std::cout", "std::cerr", "std::printf", "fprintf(stderr"})
            EXPECT_EQ(source.text.find(word), std::string::npos) << source.name << " uses " << word;
    }
}

}  // namespace
}  // namespace rackbook
