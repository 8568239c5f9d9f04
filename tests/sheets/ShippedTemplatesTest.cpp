// The templates and words that come with the program, file by file.
#include <gtest/gtest.h>

#include <set>

#include "SheetTools.h"
#include "sheets/BenchSheet.h"
#include "sheets/CertificateSheet.h"
#include "sheets/CommonLabels.h"
#include "sheets/DrawerLabels.h"
#include "sheets/DrawerSheet.h"
#include "sheets/EditionSheet.h"
#include "sheets/LabelMarks.h"
#include "sheets/LedgerSheet.h"
#include "sheets/MixBookSheet.h"
#include "sheets/ReadinessSheet.h"
#include "sheets/RecipeSheet.h"
#include "sheets/SleeveLabels.h"
#include "sheets/StockSheet.h"
#include "sheets/TransferSheet.h"

namespace rackbook {
namespace {

// A new kind of sheet is a row here.
std::vector<TemplateRules> allRules() {
    return {editionSheetRules(), readinessSheetRules(), certificateSheetRules(),
            ledgerSheetRules(),  transferSheetRules(),  drawerSheetRules(),
            drawerLabelsRules(), sleeveLabelsRules(),   benchSheetRules(),
            recipeSheetRules(),  mixBookSheetRules(),   stockSheetRules()};
}

const std::vector<std::string> languages = {"de", "en", "es", "fr", "ja"};

Tree words(const std::string& language, const std::string& name) {
    const std::string file =
        std::string(RACKBOOK_TEMPLATES) + "/words/" + language + "/" + name + ".json";
    return treeFromJson(readFile(file, 1 << 20), file);
}

std::vector<std::string> names() {
    std::vector<std::string> all = {"common"};
    for (const TemplateRules& rules : allRules())
        all.push_back(rules.sheet);
    return all;
}

TEST(ShippedTemplates, AreWholeInEveryLanguage) {
    for (const TemplateRules& rules : allRules())
        for (const std::string& language : languages) {
            const SheetTemplate read = test::shippedTemplate(rules.sheet, rules, language);
            EXPECT_EQ(read.sections(), rules.sections) << rules.sheet;
            EXPECT_EQ(read.fonts().text.front(), FontFamilies{}.text.front());
            EXPECT_EQ(read.language(), language);
            for (const std::string& section : rules.sections)
                EXPECT_FALSE(read.label(section).empty()) << section;
        }
}

// Keys of a sheet must not hide common ones, and none may be asked for twice.
TEST(ShippedTemplates, AskForEachLabelOnce) {
    for (const TemplateRules& rules : allRules()) {
        std::set<std::string> seen(commonLabels().begin(), commonLabels().end());
        EXPECT_EQ(seen.size(), commonLabels().size());
        for (const std::vector<std::string>* keys : {&rules.labels, &rules.sections})
            for (const std::string& key : *keys)
                EXPECT_TRUE(seen.insert(key).second) << rules.sheet << " " << key;
    }
}

TEST(ShippedTemplates, NameTheirLabelsAfterTheirSections) {
    // Those of the form are of the whole file: no page shows them.
    const std::set<std::string> whole = {"sheet",           "subtitle",  "footer",    "atGallery",
                                         "atHolder",        "form.date", "form.time", "form.number",
                                         "form.impression", "form.every"};
    for (const TemplateRules& rules : allRules()) {
        const std::set<std::string> sections(rules.sections.begin(), rules.sections.end());
        for (const std::string& key : rules.labels)
            EXPECT_TRUE(whole.count(key) == 1 || sections.count(key.substr(0, key.find('.'))) == 1)
                << rules.sheet << " " << key;
    }
}

TEST(ShippedTemplates, FillInTheSameInEveryLanguage) {
    for (const std::string& name : names()) {
        const Tree english = words("en", name);
        for (const std::string& language : languages) {
            const Tree other = words(language, name);
            EXPECT_EQ(other.find("labels")->asObject()->size(),
                      english.find("labels")->asObject()->size());
            for (const auto& [key, label] : *english.find("labels")->asObject()) {
                const Tree* translated = other.find("labels")->find(key);
                ASSERT_NE(translated, nullptr) << language << " " << name << " " << key;
                EXPECT_EQ(marksIn(*translated->asText()), marksIn(*label.asText()))
                    << language << " " << name << " " << key;
            }
        }
    }
}

}  // namespace
}  // namespace rackbook
