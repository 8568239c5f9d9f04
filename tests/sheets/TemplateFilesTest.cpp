#include "sheets/TemplateFiles.h"

#include <gtest/gtest.h>

#include <map>

#include "ErrorText.h"

namespace rackbook {
namespace {

using Members = Tree::Object;
using Files = std::map<std::string, Tree>;

// The language of each file of words is its folder, so that a test sees which one was taken.
Files shippedFiles() {
    Files files;
    files["/shipped/edition.json"] = Members{{"template", "edition"}, {"language", "en"}};
    for (const char* language : {"de", "en", "pt-BR"})
        for (const char* name : {"common", "edition"})
            files[std::string("/shipped/words/") + language + "/" + name + ".json"] =
                Members{{"language", language}};
    return files;
}

TemplateSource sourceOf(const Files& files) {
    TemplateSource source;
    source.shipped = "/shipped";
    source.read = [files](const std::string& file) { return files.at(file); };
    source.exists = [files](const std::string& file) { return files.count(file) > 0; };
    source.foldersWith = [files](const std::string& folder, const std::string& file) {
        std::vector<std::string> names;
        for (const auto& [path, tree] : files) {
            const std::size_t slash = path.rfind('/');
            if (path.rfind(folder + "/", 0) == 0 && path.substr(slash + 1) == file)
                names.push_back(path.substr(folder.size() + 1, slash - folder.size() - 1));
        }
        return names;
    };
    return source;
}

TemplateParts gathered(const Files& files, const TemplateWish& wish) {
    return gatherTemplate(sourceOf(files), wish);
}

TemplateWish wishFor(const std::string& file) {
    TemplateWish wish;
    wish.sheet = "edition";
    wish.file = file;
    return wish;
}

TemplateWish wishIn(const std::string& language) {
    TemplateWish wish;
    wish.sheet = "edition";
    wish.language = language;
    return wish;
}

std::vector<std::string> namesOf(const TemplateParts& parts) {
    std::vector<std::string> names;
    for (const TemplateFile& layout : parts.layouts)
        names.push_back(layout.name);
    return names;
}

TEST(TemplateFiles, TakesTheShippedOneWithoutAWish) {
    TemplateWish wish;
    wish.sheet = "edition";
    const TemplateParts parts = gathered(shippedFiles(), wish);
    EXPECT_EQ(namesOf(parts), (std::vector<std::string>{"/shipped/edition.json"}));
    EXPECT_EQ(parts.language, "en");
    EXPECT_EQ(parts.words.name, "/shipped/words/en/edition.json");
    EXPECT_EQ(parts.common.name, "/shipped/words/en/common.json");
}

TEST(TemplateFiles, FollowsWhatATemplateIsBasedOn) {
    Files files = shippedFiles();
    files["home/mine.json"] = Members{{"basedOn", "../shared/wide.json"}};
    files["home/../shared/wide.json"] = Members{{"basedOn", "edition.json"}, {"language", "de"}};
    const TemplateParts parts = gathered(files, wishFor("home/mine.json"));
    EXPECT_EQ(namesOf(parts),
              (std::vector<std::string>{"home/mine.json", "home/../shared/wide.json",
                                        "/shipped/edition.json"}));
    EXPECT_EQ(parts.language, "de");
    EXPECT_EQ(parts.words.name, "/shipped/words/de/edition.json");
}

TEST(TemplateFiles, PrefersAFileBesideToAShippedOneOfThatName) {
    Files files = shippedFiles();
    files["home/mine.json"] = Members{{"basedOn", "edition.json"}};
    files["home/edition.json"] = Members{{"basedOn", "edition.json"}};
    EXPECT_EQ(
        namesOf(gathered(files, wishFor("home/mine.json"))),
        (std::vector<std::string>{"home/mine.json", "home/edition.json", "/shipped/edition.json"}));
}

TEST(TemplateFiles, NamesTheLoopOfAChain) {
    Files files = shippedFiles();
    files["home/first.json"] = Members{{"basedOn", "a.json"}};
    files["home/a.json"] = Members{{"basedOn", "b.json"}};
    files["home/b.json"] = Members{{"basedOn", "./a.json"}};
    EXPECT_EQ(messageOf<InputError>([&] { gathered(files, wishFor("home/first.json")); }),
              "home/b.json /basedOn: the templates are based on one another in a circle: "
              "home/a.json → home/b.json → home/./a.json. Let one of them stand on its own, or on "
              "a template that comes with the program.");
    files["home/self.json"] = Members{{"basedOn", "self.json"}};
    EXPECT_EQ(messageOf<InputError>([&] { gathered(files, wishFor("home/self.json")); }),
              "home/self.json /basedOn: the templates are based on one another in a circle: "
              "home/self.json → home/self.json. Let one of them stand on its own, or on a template "
              "that comes with the program.");
}

// From 1 to the shipped one.
Files chainOf(int count) {
    Files files = shippedFiles();
    for (int i = 1; i < count; ++i)
        files["home/" + std::to_string(i) + ".json"] =
            Members{{"basedOn", i + 1 < count ? std::to_string(i + 1) + ".json" : "edition.json"}};
    return files;
}

TEST(TemplateFiles, RefusesAChainOfMoreThanSixteen) {
    EXPECT_EQ(gathered(chainOf(16), wishFor("home/1.json")).layouts.size(), 16u);
    EXPECT_EQ(messageOf<InputError>([&] { gathered(chainOf(17), wishFor("home/1.json")); }),
              "home/16.json /basedOn: more than 16 templates are based on one another. Base it on "
              "one that stands nearer to the end of the chain.");
}

TEST(TemplateFiles, RefusesABaseThatIsNotThere) {
    Files files = shippedFiles();
    files["home/mine.json"] = Members{{"basedOn", "editon.json"}};
    EXPECT_EQ(messageOf<InputError>([&] { gathered(files, wishFor("home/mine.json")); }),
              "home/mine.json /basedOn: there is no template home/editon.json. Name a file beside "
              "this one, or one that comes with the program.");
    files["home/mine.json"] = Members{{"basedOn", 3}};
    EXPECT_EQ(messageOf<InputError>([&] { gathered(files, wishFor("home/mine.json")); }),
              "home/mine.json /basedOn: this is not text. Write it in quotation marks.");
}

// RFC 4647, section 3.4: subtags are taken away from the right until something fits.
TEST(TemplateFiles, LooksLanguagesUpByTheirTags) {
    const TemplateParts austrian = gathered(shippedFiles(), wishIn("de-AT"));
    EXPECT_EQ(austrian.language, "de-AT");
    EXPECT_EQ(austrian.words.name, "/shipped/words/de/edition.json");
    EXPECT_EQ(gathered(shippedFiles(), wishIn("DE")).words.name, "/shipped/words/de/edition.json");
    EXPECT_EQ(gathered(shippedFiles(), wishIn("pt-BR")).words.name,
              "/shipped/words/pt-BR/edition.json");
}

TEST(TemplateFiles, RefusesLanguagesWithoutWords) {
    for (const char* language : {"pt", "den", "nl", "", "../de"})
        EXPECT_EQ(messageOf<UsageError>([&] { gathered(shippedFiles(), wishIn(language)); }),
                  "there are no words for this sheet in \"" + std::string(language) +
                      "\". There are words in de, en and pt-BR.");
    Files files = shippedFiles();
    files["home/mine.json"] = Members{{"basedOn", "edition.json"}, {"language", "nl"}};
    EXPECT_EQ(messageOf<InputError>([&] { gathered(files, wishFor("home/mine.json")); }),
              "home/mine.json: there are no words for this sheet in \"nl\". There are words in de, "
              "en and pt-BR.");
}

TEST(TemplateFiles, FindsWordsBesideAStudiosTemplate) {
    Files files = shippedFiles();
    files["home/mine.json"] = Members{{"basedOn", "edition.json"}, {"language", "nl"}};
    files["home/words/nl/edition.json"] = Members{{"language", "nl"}};
    files["home/words/nl/common.json"] = Members{{"language", "nl"}};
    files["home/words/de/edition.json"] = Members{{"language", "de"}};
    TemplateWish wish = wishFor("home/mine.json");
    EXPECT_EQ(gathered(files, wish).words.name, "home/words/nl/edition.json");
    wish.language = "de";
    EXPECT_EQ(gathered(files, wish).words.name, "home/words/de/edition.json");
    EXPECT_EQ(gathered(files, wish).common.name, "/shipped/words/de/common.json");
}

TEST(TemplateFiles, PutsThePaperThatWasAskedForOnTop) {
    TemplateWish wish = wishIn("en");
    wish.paper = "Letter";
    const TemplateParts parts = gathered(shippedFiles(), wish);
    ASSERT_EQ(parts.layouts.size(), 2u);
    EXPECT_EQ(*parts.layouts[0].tree.find("paper")->asText(), "Letter");
}

}  // namespace
}  // namespace rackbook
