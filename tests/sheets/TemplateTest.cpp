#include "sheets/Template.h"

#include <gtest/gtest.h>

#include "ErrorText.h"

namespace rackbook {
namespace {

const TemplateRules rules = {
    "edition", {"identity", "paper", "layers"}, {"identity", "pageOf", "paper"}};

using Members = Tree::Object;

Members goodMembers() {
    return {
        {"template", "edition"},
        {"language", "en"},
        {"paper", "Letter"},
        {"margins_mm", Members{{"top", 20}, {"right", 18.5}, {"bottom", 16}, {"left", 24}}},
        {"fonts", Members{{"text", Tree::Array{"Noto Serif", "Noto Sans Math"}},
                          {"figures", Tree::Array{"Noto Sans"}}}},
        {"baseSize_pt", 10},
        {"letterhead", Tree::Array{"Studio", "Lane 4"}},
        {"sections", Tree::Array{"paper", "identity"}},
        {"labels",
         Members{{"identity", "The edition"}, {"pageOf", "{page}/{pages}"}, {"paper", "Paper"}}}};
}

SheetTemplate readFrom(const Members& members) {
    return SheetTemplate::read(Tree(members), "my.json", rules);
}

// The message for the good template with one member replaced.
std::string refusal(const std::string& name, const Tree& value) {
    Members members = goodMembers();
    for (auto& [key, old] : members)
        if (key == name)
            old = value;
    return messageOf<InputError>([&] { readFrom(members); });
}

TEST(Template, ReadsEveryField) {
    const SheetTemplate read = readFrom(goodMembers());
    EXPECT_EQ(read.sheet(), "edition");
    EXPECT_EQ(read.language(), "en");
    EXPECT_EQ(read.fonts().text, (std::vector<std::string>{"Noto Serif", "Noto Sans Math"}));
    EXPECT_EQ(read.fonts().figures, (std::vector<std::string>{"Noto Sans"}));
    EXPECT_EQ(read.sections(), (std::vector<std::string>{"paper", "identity"}));
    EXPECT_EQ(read.label("paper"), "Paper");
    const FlowSetup setup = read.flowSetup();
    EXPECT_DOUBLE_EQ(setup.paper.height_mm, 279.4);
    EXPECT_DOUBLE_EQ(setup.margins.right_mm, 18.5);
    EXPECT_DOUBLE_EQ(setup.margins.left_mm, 24);
    EXPECT_DOUBLE_EQ(setup.baseSize_pt, 10);
    EXPECT_EQ(setup.letterhead, (std::vector<std::string>{"Studio", "Lane 4"}));
    EXPECT_EQ(setup.pageOf, "{page}/{pages}");
    EXPECT_EQ(setup.info.language, "en");
}

TEST(Template, ReadsA4) {
    Members members = goodMembers();
    members[2].second = "A4";
    EXPECT_DOUBLE_EQ(readFrom(members).flowSetup().paper.width_mm, 210);
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
              "margins_mm, fonts, baseSize_pt, letterhead, sections and labels.");
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
    EXPECT_EQ(messageOf<InputError>([&] { SheetTemplate::read(Tree::array(), "my.json", rules); }),
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
              "my.json /sections/0: section \"paper\" is given twice. Leave one of them out.");
    EXPECT_EQ(refusal("sections", Tree::array()),
              "my.json /sections: the list of sections is empty. Name at least one of: identity, "
              "paper or layers.");
}

TEST(Template, RefusesUnknownAndMissingLabels) {
    EXPECT_EQ(refusal("labels", Members{{"identty", "x"}}),
              "my.json /labels/identty: unknown label \"identty\". Write \"identity\" if that was "
              "meant.");
    EXPECT_EQ(refusal("labels", Members{{"identity", "x"}, {"pageOf", "{page}"}}),
              "my.json /labels: the label \"paper\" is missing. Add it; the templates that come "
              "with the program have it.");
}

TEST(Template, RefusesAPageLabelWithoutANumber) {
    EXPECT_EQ(refusal("labels", Members{{"pageOf", "Page"}}),
              "my.json /labels/pageOf: the page number is missing. Write {page} where it belongs, "
              "and {pages} for their count.");
}

TEST(Template, SaysWhichLabelABuilderAskedForInVain) {
    const SheetTemplate read = readFrom(goodMembers());
    EXPECT_EQ(messageOf<InputError>([&] { read.label("layers"); }),
              "my.json /labels: the label \"layers\" is missing. Add it; the templates that come "
              "with the program have it.");
}

}  // namespace
}  // namespace rackbook
