#include "sheets/Template.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "ErrorText.h"
#include "sheets/CommonLabels.h"

namespace rackbook {
namespace {

const TemplateRules rules = {
    "edition", {"identity", "paper", "layers"}, {"sheet", "footer"}, {{"labelWidth_mm", 20, 200}}};

using Members = Tree::Object;

Members goodMembers() {
    return {{"template", "edition"},
            {"language", "en"},
            {"paper", "Letter"},
            {"margins_mm", Members{{"top", 20}, {"right", 18.5}, {"bottom", 16}, {"left", 24}}},
            {"fonts", Members{{"text", Tree::Array{"Noto Serif", "Noto Sans Math"}},
                              {"figures", Tree::Array{"Noto Sans"}}}},
            {"baseSize_pt", 10},
            {"letterhead", Tree::Array{"Studio", "Lane 4"}},
            {"sections", Tree::Array{"paper", "identity"}},
            {"labelWidth_mm", 70}};
}

Members goodWords() {
    return {{"sheet", "Record"},
            {"footer", "As of {date}"},
            {"identity", "The edition"},
            {"paper", "Paper"},
            {"layers", "Layers"}};
}

// Every common label is its key; that of page numbers has to have one.
Members commonWords() {
    Members words;
    for (const std::string& key : commonLabels())
        words.emplace_back(key, key == "pageOf" ? "{page}/{pages}" : key);
    return words;
}

TemplateParts goodParts() {
    TemplateParts parts;
    parts.layouts = {{"my.json", goodMembers()}};
    parts.language = "en";
    parts.common = {"common.json", Members{{"language", "en"}, {"labels", commonWords()}}};
    parts.words = {"words.json", Members{{"language", "en"}, {"labels", goodWords()}}};
    return parts;
}

SheetTemplate readFrom(const Members& members) {
    TemplateParts parts = goodParts();
    parts.layouts[0].tree = members;
    return SheetTemplate::read(parts, rules);
}

// The message for the good template with one member replaced.
std::string refusal(const std::string& name, const Tree& value) {
    Members members = goodMembers();
    for (auto& [key, old] : members)
        if (key == name)
            old = value;
    return messageOf<InputError>([&] { readFrom(members); });
}

std::string refusalOf(const TemplateParts& parts) {
    return messageOf<InputError>([&] { SheetTemplate::read(parts, rules); });
}

// With a template of a studio on top, based on the good one.
TemplateParts partsWithOwn(const Members& own) {
    TemplateParts parts = goodParts();
    parts.layouts.insert(parts.layouts.begin(), {"own.json", own});
    return parts;
}

TEST(Template, ReadsEveryField) {
    const SheetTemplate read = readFrom(goodMembers());
    EXPECT_EQ(read.sheet(), "edition");
    EXPECT_EQ(read.language(), "en");
    EXPECT_EQ(read.fonts().text, (std::vector<std::string>{"Noto Serif", "Noto Sans Math"}));
    EXPECT_EQ(read.fonts().figures, (std::vector<std::string>{"Noto Sans"}));
    EXPECT_EQ(read.sections(), (std::vector<std::string>{"paper", "identity"}));
    EXPECT_EQ(read.label("paper"), "Paper");
    EXPECT_EQ(read.label("notRecorded"), "notRecorded");
    EXPECT_DOUBLE_EQ(read.number("labelWidth_mm"), 70);
    const FlowSetup setup = read.flowSetup();
    EXPECT_DOUBLE_EQ(setup.paper.height_mm, 279.4);
    EXPECT_DOUBLE_EQ(setup.margins.right_mm, 18.5);
    EXPECT_DOUBLE_EQ(setup.margins.left_mm, 24);
    EXPECT_DOUBLE_EQ(setup.baseSize_pt, 10);
    EXPECT_EQ(setup.letterhead, (std::vector<std::string>{"Studio", "Lane 4"}));
    EXPECT_EQ(setup.pageOf, "{page}/{pages}");
    EXPECT_EQ(setup.info.language, "en");
    EXPECT_EQ(setup.decimalSign, ".");
}

TEST(Template, ReadsA4) {
    Members members = goodMembers();
    members[2].second = "A4";
    EXPECT_DOUBLE_EQ(readFrom(members).flowSetup().paper.width_mm, 210);
}

TEST(Template, TakesFromItsBaseWhatItDoesNotChange) {
    const SheetTemplate read = SheetTemplate::read(
        partsWithOwn({{"basedOn", "my.json"},
                      {"margins_mm", Members{{"left", 30}}},
                      {"fonts", Members{{"figures", Tree::Array{"Noto Sans Mono"}}}},
                      {"sections", Tree::Array{"layers"}},
                      {"labelWidth_mm", 50.5},
                      {"labels", Members{{"sheet", "Sheet"}, {"notRecorded", "left open"}}}}),
        rules);
    EXPECT_DOUBLE_EQ(read.flowSetup().margins.left_mm, 30);
    EXPECT_DOUBLE_EQ(read.flowSetup().margins.top_mm, 20);
    EXPECT_EQ(read.fonts().text.front(), "Noto Serif");
    EXPECT_EQ(read.fonts().figures.front(), "Noto Sans Mono");
    EXPECT_EQ(read.sections(), (std::vector<std::string>{"layers"}));
    EXPECT_DOUBLE_EQ(read.number("labelWidth_mm"), 50.5);
    EXPECT_EQ(read.label("sheet"), "Sheet");
    EXPECT_EQ(read.label("notRecorded"), "left open");
    EXPECT_EQ(read.label("paper"), "Paper");
}

TEST(Template, LetsTheNearestOfAChainSpeak) {
    TemplateParts parts = partsWithOwn({{"basedOn", "my.json"},
                                        {"baseSize_pt", 12},
                                        {"labels", Members{{"sheet", "Mine"}, {"paper", "P"}}}});
    parts.layouts.insert(parts.layouts.begin(),
                         {"nearest.json", Members{{"basedOn", "own.json"},
                                                  {"labels", Members{{"sheet", "Nearest"}}}}});
    const SheetTemplate read = SheetTemplate::read(parts, rules);
    EXPECT_EQ(read.label("sheet"), "Nearest");
    EXPECT_EQ(read.label("paper"), "P");
    EXPECT_DOUBLE_EQ(read.flowSetup().baseSize_pt, 12);
}

// The good template is in English, and so are its labels; "own" says it is in German.
TEST(Template, UsesLabelsOfALayoutInItsOwnLanguageOnly) {
    TemplateParts parts =
        partsWithOwn({{"language", "de-AT"}, {"labels", Members{{"sheet", "Blatt"}}}});
    EXPECT_EQ(SheetTemplate::read(parts, rules).label("sheet"), "Record");
    Members bottom = goodMembers();
    bottom.emplace_back("labels", Members{{"paper", "Stock"}});
    parts.layouts[1].tree = bottom;
    EXPECT_EQ(SheetTemplate::read(parts, rules).label("paper"), "Stock");
    parts.language = "de-AT";
    parts.common.tree = Members{{"language", "de"}, {"labels", commonWords()}};
    parts.words.tree = Members{{"language", "de"}, {"labels", goodWords()}};
    EXPECT_EQ(SheetTemplate::read(parts, rules).label("sheet"), "Blatt");
    EXPECT_EQ(SheetTemplate::read(parts, rules).label("paper"), "Paper");
}

TEST(Template, AddsTheFontsOfALanguageBehindItsOwn) {
    TemplateParts parts = goodParts();
    parts.common.tree = Members{{"language", "en"},
                                {"fonts", Tree::Array{"IPAGothic", "Noto Sans"}},
                                {"labels", commonWords()}};
    const FontFamilies fonts = SheetTemplate::read(parts, rules).fonts();
    EXPECT_EQ(fonts.text,
              (std::vector<std::string>{"Noto Serif", "Noto Sans Math", "IPAGothic", "Noto Sans"}));
    EXPECT_EQ(fonts.figures, (std::vector<std::string>{"Noto Sans", "IPAGothic"}));
}

TEST(Template, RefusesUnknownFieldsWithTheNearestName) {
    Members members = goodMembers();
    members.emplace_back("leterhead", Tree::array());
    EXPECT_EQ(messageOf<InputError>([&] { readFrom(members); }),
              "my.json /leterhead: unknown field \"leterhead\". Write \"letterhead\" if that was "
              "meant.");
}

TEST(Template, RefusesUnknownFieldsWithAllNamesWhereNoneIsNear) {
    Members members = goodMembers();
    members.emplace_back("a/b", 1);
    EXPECT_EQ(messageOf<InputError>([&] { readFrom(members); }),
              "my.json /a~1b: unknown field \"a/b\". Known are: template, language, paper, "
              "margins_mm, fonts, baseSize_pt, letterhead, sections, labelWidth_mm, basedOn and "
              "labels.");
}

TEST(Template, RefusesFieldsGivenTwice) {
    Members members = goodMembers();
    members.emplace_back("paper", "A4");
    EXPECT_EQ(messageOf<InputError>([&] { readFrom(members); }),
              "my.json /paper: field \"paper\" is given twice. Leave one of them out.");
}

TEST(Template, RefusesMissingFields) {
    Members members = goodMembers();
    members.erase(members.begin() + 5);
    EXPECT_EQ(messageOf<InputError>([&] { readFrom(members); }),
              "my.json: the field \"baseSize_pt\" is missing. Add it; the templates that come with "
              "the program have it.");
}

TEST(Template, RefusesAFileThatIsNoObject) {
    EXPECT_EQ(messageOf<InputError>([&] {
                  TemplateParts parts = goodParts();
                  parts.layouts[0].tree = Tree::array();
                  SheetTemplate::read(parts, rules);
              }),
              "my.json: this is not an object. Write the members in braces.");
}

TEST(Template, RefusesATemplateForAnotherSheet) {
    EXPECT_EQ(refusal("template", "readiness"),
              "my.json /template: this is a template for \"readiness\", but one for \"edition\" is "
              "asked for. Choose a template whose field \"template\" reads \"edition\".");
}

TEST(Template, RefusesTextThatIsNoLanguageTag) {
    EXPECT_EQ(refusal("language", "English!"),
              "my.json /language: \"English!\" is not a language tag. Write a tag of BCP 47 such "
              "as \"en\" or \"pt-BR\".");
}

TEST(Template, RefusesUnknownPaper) {
    EXPECT_EQ(refusal("paper", "A5"),
              "my.json /paper: unknown paper \"A5\". Write \"A4\" if that was meant.");
}

TEST(Template, RefusesMarginsOutOfRange) {
    EXPECT_EQ(refusal("margins_mm", Members{{"top", 4.9}}),
              "my.json /margins_mm/top: this is not a number from 5 to 60. Write such a number, "
              "without a unit.");
    EXPECT_EQ(refusal("margins_mm", Members{{"top", "20 mm"}}),
              "my.json /margins_mm/top: this is not a number from 5 to 60. Write such a number, "
              "without a unit.");
    EXPECT_EQ(refusal("margins_mm", Members{{"top", 5}, {"right", 5}, {"bottom", 5}}),
              "my.json /margins_mm: the margin \"left\" is missing. Add it; the templates that "
              "come with the program have it.");
    EXPECT_EQ(refusal("margins_mm", Members{{"topp", 5}}),
              "my.json /margins_mm/topp: unknown margin \"topp\". Write \"top\" if that was "
              "meant.");
}

TEST(Template, RefusesMarginsThatLeaveTooLittleWidth) {
    EXPECT_EQ(
        refusal("margins_mm", Members{{"top", 5}, {"right", 60}, {"bottom", 5}, {"left", 60}}),
        "my.json /margins_mm: less than 100 mm of the page's width is left for text. Make the left "
        "or the right margin smaller.");
}

TEST(Template, RefusesFontsWithoutAName) {
    EXPECT_EQ(refusal("fonts", Members{{"text", Tree::array()}}),
              "my.json /fonts/text: a font family has no name. Write at least one family, for "
              "instance \"Noto Sans\".");
    EXPECT_EQ(refusal("fonts", Members{{"text", "Noto Sans"}}),
              "my.json /fonts/text: this is not a list. Write a list of texts in square brackets.");
}

TEST(Template, RefusesTypeSizesOutOfRange) {
    EXPECT_EQ(refusal("baseSize_pt", 14.5),
              "my.json /baseSize_pt: this is not a number from 7 to 14. Write such a number, "
              "without a unit.");
}

TEST(Template, RefusesLetterheadLinesThatAreNoText) {
    EXPECT_EQ(refusal("letterhead", Tree::Array{"Studio", 4}),
              "my.json /letterhead/1: this is not text. Write it in quotation marks.");
}

TEST(Template, RefusesUnknownSectionsWithTheNearestName) {
    EXPECT_EQ(refusal("sections", Tree::Array{"paper", "layer"}),
              "my.json /sections/1: unknown section \"layer\". Write \"layers\" if that was "
              "meant.");
}

TEST(Template, RefusesSectionsGivenTwiceOrNotAtAll) {
    EXPECT_EQ(refusal("sections", Tree::Array{"paper", "paper"}),
              "my.json /sections/1: section \"paper\" is given twice. Leave one of them out.");
    EXPECT_EQ(refusal("sections", Tree::array()),
              "my.json /sections: the list of sections is empty. Name at least one of: identity, "
              "paper or layers.");
}

TEST(Template, RefusesNumbersOfASheetOutOfRange) {
    EXPECT_EQ(refusal("labelWidth_mm", 19),
              "my.json /labelWidth_mm: this is not a number from 20 to 200. Write such a number, "
              "without a unit.");
}

TEST(Template, NamesTheFileThatIsWrongInAChain) {
    EXPECT_EQ(refusalOf(partsWithOwn({{"margins_mm", Members{{"left", 3}}}})),
              "own.json /margins_mm/left: this is not a number from 5 to 60. Write such a number, "
              "without a unit.");
    EXPECT_EQ(refusalOf(partsWithOwn({{"margins_mm", Members{{"left", 60}, {"right", 60}}}})),
              "own.json /margins_mm: less than 100 mm of the page's width is left for text. Make "
              "the left or the right margin smaller.");
    TemplateParts parts = partsWithOwn({});
    parts.layouts[1].tree = Members{{"language", "en"}};
    EXPECT_EQ(refusalOf(parts),
              "my.json: the field \"template\" is missing. Add it; the templates that come with "
              "the program have it.");
}

TEST(Template, RefusesUnknownLabelsOfItsOwn) {
    EXPECT_EQ(refusalOf(partsWithOwn({{"labels", Members{{"identty", "x"}}}})),
              "own.json /labels/identty: unknown label \"identty\". Write \"identity\" if that "
              "was meant.");
    EXPECT_EQ(refusalOf(partsWithOwn({{"labels", Members{{"sheet", 3}}}})),
              "own.json /labels/sheet: this is not text. Write it in quotation marks.");
    EXPECT_EQ(refusalOf(partsWithOwn({{"labels", Members{{"footer", "On {day}"}}}})),
              "own.json /labels/footer: nothing fills in {day} here. Known are: date.");
    EXPECT_EQ(refusalOf(partsWithOwn({{"labels", Members{{"sheet", "On {day}"}}}})),
              "own.json /labels/sheet: nothing fills in {day} here. Leave it out.");
}

// Words with one of them taken out.
Members without(Members words, const std::string& key) {
    words.erase(std::remove_if(words.begin(), words.end(),
                               [&](const auto& word) { return word.first == key; }),
                words.end());
    return words;
}

TEST(Template, RefusesUnknownAndMissingWords) {
    TemplateParts parts = goodParts();
    parts.words.tree = Members{{"language", "en"}, {"labels", without(goodWords(), "layers")}};
    EXPECT_EQ(refusalOf(parts),
              "words.json /labels: the label \"layers\" is missing. Add it; the words that come "
              "with the program have it.");
    parts = goodParts();
    parts.common.tree = Members{{"language", "en"}, {"labels", without(commonWords(), "season23")}};
    EXPECT_EQ(refusalOf(parts),
              "common.json /labels: the label \"season23\" is missing. Add it; the words that "
              "come with the program have it.");
    Members words = goodWords();
    words.emplace_back("notRecorded", "left open");
    parts = goodParts();
    parts.words.tree = Members{{"language", "en"}, {"labels", words}};
    EXPECT_EQ(refusalOf(parts),
              "words.json /labels/notRecorded: unknown label \"notRecorded\". Known are: sheet, "
              "footer, identity, paper and layers.");
}

TEST(Template, RefusesFilesOfWordsOfAnotherForm) {
    TemplateParts parts = goodParts();
    parts.words.tree = Members{{"language", "fr"}, {"labels", goodWords()}};
    EXPECT_EQ(refusalOf(parts),
              "words.json /language: these are words in \"fr\", but words in \"en\" are asked "
              "for. Put the file into the folder of its language, or correct the tag.");
    parts.words.tree = Members{{"language", "en"}};
    EXPECT_EQ(refusalOf(parts),
              "words.json: the field \"labels\" is missing. Add it; the words that come with the "
              "program have it.");
    parts.words.tree =
        Members{{"language", "en"}, {"labels", goodWords()}, {"fonts", Tree::array()}};
    EXPECT_EQ(refusalOf(parts),
              "words.json /fonts: unknown field \"fonts\". Known are: language and labels.");
    parts = goodParts();
    parts.common.tree =
        Members{{"language", "en"}, {"labels", commonWords()}, {"fonts", Tree::array()}};
    EXPECT_EQ(refusalOf(parts),
              "common.json /fonts: a font family has no name. Write at least one family, for "
              "instance \"Noto Sans\".");
}

TEST(Template, RefusesAPageLabelWithoutANumber) {
    EXPECT_EQ(refusalOf(partsWithOwn({{"labels", Members{{"pageOf", "Page"}}}})),
              "own.json /labels/pageOf: the page number is missing. Write {page} where it belongs, "
              "and {pages} for their count.");
}

TEST(Template, SaysWhichLabelABuilderAskedForInVain) {
    const SheetTemplate read = readFrom(goodMembers());
    EXPECT_EQ(messageOf<InputError>([&] { read.label("blocks"); }),
              "words.json /labels: the label \"blocks\" is missing. Add it; the words that come "
              "with the program have it.");
}

}  // namespace
}  // namespace rackbook
