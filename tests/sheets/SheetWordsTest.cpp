#include "sheets/SheetWords.h"

#include <gtest/gtest.h>

#include "SheetTools.h"
#include "sheets/EditionSheet.h"
#include "sheets/LotText.h"
#include "sheets/RuleSource.h"

namespace rackbook {
namespace {

std::string dateWords(const char* written) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    return SheetWords(shipped).tableDate(EdtfDate::parse(written));
}

TEST(SheetWords, PrintsGoodDatesAsTheyAre) {
    for (const char* date : {"1998", "2026-03", "2026-03-04", "-0044", "Y17000"})
        EXPECT_EQ(dateWords(date), date);
    EXPECT_EQ(dateWords("2026-03-04T09:30"), "2026-03-04");
}

// The notation (ISO 8601-2) stays in the record; a sheet is read by people.
TEST(SheetWords, ReadsBadlyKnownDatesOutAndShowsNoNotation) {
    EXPECT_EQ(dateWords("1998~"), "about 1998");
    EXPECT_EQ(dateWords("2004-06?"), "2004-06, uncertain");
    EXPECT_EQ(dateWords("2011%"), "about 2011, uncertain");
    EXPECT_EQ(dateWords("201X"), "between 2010 and 2019");
    EXPECT_EQ(dateWords("1985-04-XX"), "between 1985-04-01 and 1985-04-30");
    EXPECT_EQ(dateWords("2001-21"), "spring 2001");
    EXPECT_EQ(dateWords("2001-24~"), "about winter 2001");
    EXPECT_EQ(dateWords("1998/1999~"), "from 1998 to about 1999");
    EXPECT_EQ(dateWords("2019/.."), "from 2019 on");
    EXPECT_EQ(dateWords("2019/"), "from 2019, end not known");
    EXPECT_EQ(dateWords("../2019"), "until 2019");
    EXPECT_EQ(dateWords("/2019"), "until 2019, beginning not known");
}

std::string proseDate(const char* written, const std::string& language) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules(), language);
    return SheetWords(shipped).date(EdtfDate::parse(written));
}

// Days, months and years as running text has them (the long form of dates in Unicode CLDR without
// the day of the week, from memory; French writes the first of a month as an ordinal).
TEST(SheetWords, WritesDatesInRunningTextAsTheLanguageDoes) {
    EXPECT_EQ(proseDate("2026-03-20", "en"), "20 March 2026");
    EXPECT_EQ(proseDate("2026-03-20", "de"), "20. März 2026");
    EXPECT_EQ(proseDate("2026-03-20", "fr"), "20 mars 2026");
    EXPECT_EQ(proseDate("2026-03-20", "es"), "20 de marzo de 2026");
    EXPECT_EQ(proseDate("2026-03-20", "ja"), "2026年3月20日");
    EXPECT_EQ(proseDate("2026-01-01", "fr"), "1er janvier 2026");
    EXPECT_EQ(proseDate("2026-01-01", "de-AT"), "1. Jänner 2026");
    EXPECT_EQ(proseDate("2026-12", "en"), "December 2026");
    EXPECT_EQ(proseDate("2026-12", "es"), "diciembre de 2026");
    EXPECT_EQ(proseDate("2026-12", "ja"), "2026年12月");
    EXPECT_EQ(proseDate("1998", "de"), "1998");
    EXPECT_EQ(proseDate("1998", "ja"), "1998年");
    EXPECT_EQ(proseDate("2026-03-04T09:30", "en"), "4 March 2026");
    for (const char* rare : {"-0044", "Y17000"})
        EXPECT_EQ(proseDate(rare, "en"), rare);
}

TEST(SheetWords, WritesBadlyKnownDatesInRunningText) {
    EXPECT_EQ(proseDate("1998~", "en"), "about 1998");
    EXPECT_EQ(proseDate("2004-06?", "de"), "Juni 2004, unsicher");
    EXPECT_EQ(proseDate("2011%", "ja"), "2011年頃（不確か）");
    EXPECT_EQ(proseDate("201X", "en"), "between 2010 and 2019");
    EXPECT_EQ(proseDate("1985-04-XX", "fr"), "entre 1er avril 1985 et 30 avril 1985");
    EXPECT_EQ(proseDate("2001-24~", "en"), "about winter 2001");
    EXPECT_EQ(proseDate("2001-22", "ja"), "2001年夏");
    EXPECT_EQ(proseDate("2026-03-04/2026-03-06", "en"), "from 4 March 2026 to 6 March 2026");
    EXPECT_EQ(proseDate("1998/1999~", "es"), "1998 – hacia 1999");
    EXPECT_EQ(proseDate("2019/..", "en"), "from 2019 on");
    EXPECT_EQ(proseDate("/2019", "de"), "bis 2019, Beginn nicht bekannt");
}

TEST(SheetWords, WritesDatesAfterVerbsAsTheLanguageDoes) {
    const auto when = [](const char* written, const char* language) {
        const SheetTemplate shipped =
            test::shippedTemplate("edition", editionSheetRules(), language);
        return SheetWords(shipped).when(EdtfDate::parse(written));
    };
    EXPECT_EQ(when("2026-02-21", "en"), "21 February 2026");
    EXPECT_EQ(when("2026-02-21", "de"), "am 21. Februar 2026");
    EXPECT_EQ(when("2026-02-21", "fr"), "le 21 février 2026");
    EXPECT_EQ(when("2026-02-21T09:30", "es"), "el 21 de febrero de 2026");
    EXPECT_EQ(when("2026-02", "fr"), "en février 2026");
    EXPECT_EQ(when("1998~", "fr"), "vers 1998");
    EXPECT_EQ(when("2001-22", "de"), "Sommer 2001");
}

TEST(SheetWords, SaysSpansInYearsWhereTheyAreWholeYears) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    const SheetWords words(shipped);
    const auto span = [&](const char* first, const char* last) {
        return words.span(EdtfDate::parse(first).earliest(), EdtfDate::parse(last).latest());
    };
    EXPECT_EQ(span("2026-02-21", "2026-02-21"), "21 February 2026");
    EXPECT_EQ(span("1990", "1999"), "between 1990 and 1999");
    EXPECT_EQ(span("1998~", "1998~"), "about 1998");
    EXPECT_EQ(span("1998", "1998"), "1998");
    EXPECT_EQ(span("2026-02-21", "2026-02-23"), "between 21 February 2026 and 23 February 2026");
    EXPECT_EQ(words.span(beginningOfTime, EdtfDate::parse("1998").latest()),
              "until 31 December 1998");
    EXPECT_EQ(words.span(beginningOfTime, endOfTime), "not known");
}

// Plural rules of Unicode CLDR 41 for cardinal numbers: English and German have one form for the
// 1 without decimals, French one for all from 0 to below 2, Spanish one for 1.
TEST(SheetWords, CountsOneAsTheLanguageDoes) {
    const auto days = [](const char* shown, const char* language) {
        const SheetTemplate shipped =
            test::shippedTemplate("edition", editionSheetRules(), language);
        return SheetWords(shipped).withUnit("days", shown);
    };
    EXPECT_EQ(days("1", "en"), "1 day");
    EXPECT_EQ(days("0", "en"), "0 days");
    EXPECT_EQ(days("1–2", "en"), "1–2 days");
    EXPECT_EQ(days("1", "de"), "1 Tag");
    EXPECT_EQ(days("1", "es"), "1 día");
    EXPECT_EQ(days("21", "es"), "21 días");
    EXPECT_EQ(days("0", "fr"), "0 jour");
    EXPECT_EQ(days("1,5", "fr"), "1,5 jour");
    EXPECT_EQ(days("2", "fr"), "2 jours");
    EXPECT_EQ(days("0,5–12", "fr"), "0,5–12 jours");
    EXPECT_EQ(days("1", "ja"), "1日");
}

TEST(SheetWords, BeginsHeadingsWithACapital) {
    EXPECT_EQ(asHeading("kept"), "Kept");
    EXPECT_EQ(asHeading("à sortir"), "À sortir");
    EXPECT_EQ(asHeading("÷"), "÷");
    EXPECT_EQ(asHeading("乾燥"), "乾燥");
    EXPECT_EQ(asHeading(""), "");
}

TEST(SheetWords, NamesMetalsAndSourcesInTheLanguage) {
    const SheetTemplate german = test::shippedTemplate("edition", editionSheetRules(), "de");
    const SheetWords words(german);
    EXPECT_EQ(metalText("manganese", words), "Mangan");
    EXPECT_EQ(metalText("Zirconium", words), "Zirkonium");
    EXPECT_EQ(metalText("unobtainium", words), "unobtainium");
    EXPECT_EQ(sourceText(HouseRules().rule("lightDays"), words), "allgemeine Praxis, ohne Quelle");
    HouseRule own;
    own.rule = "lightDays";
    own.value = 10;
    own.origin = Origin::studioRule;
    own.source = "from the teacher";
    EXPECT_EQ(sourceText(HouseRules({own}).rule("lightDays"), words), "from the teacher");
    own.source.reset();
    EXPECT_EQ(sourceText(HouseRules({own}).rule("lightDays"), words), "Werkstattregel");
    for (const std::string& rule : rulesWithSources())
        EXPECT_EQ(sourceText(HouseRules().rule(rule), words).find("common practice"),
                  std::string::npos)
            << rule;
}

TEST(SheetWords, KeepsIsoDatesInTablesOfEveryLanguage) {
    const SheetTemplate german = test::shippedTemplate("edition", editionSheetRules(), "de");
    const SheetWords words(german);
    EXPECT_EQ(words.tableDate(EdtfDate::parse("2026-03-20")), "2026-03-20");
    EXPECT_EQ(words.tableDate(EdtfDate::parse("1998~")), "um 1998");
    EXPECT_EQ(words.tableDateOrNotRecorded(std::nullopt), "ohne Angabe");
}

TEST(SheetWords, WritesFiguresAsTheLanguageDoes) {
    const SheetTemplate english = test::shippedTemplate("edition", editionSheetRules());
    const SheetTemplate german = test::shippedTemplate("edition", editionSheetRules(), "de");
    const SheetWords en(english);
    const SheetWords de(german);
    EXPECT_EQ(en.figure(-5.25, 1), "−5.3");
    EXPECT_EQ(de.figure(-5.25, 1), "−5,3");
    EXPECT_EQ(de.shortFigure(0.125), "0,125");
    EXPECT_EQ(de.count(12345), "12.345");
    EXPECT_EQ(en.signedCount(1), "+1");
    EXPECT_EQ(en.signedCount(0), "0");
    EXPECT_EQ(en.signedCount(-7), "−7");
    EXPECT_EQ(de.percent(0.1234, 1), "12,3");
    EXPECT_EQ(de.percentRange({0.25, 0.3, 0.5}, 1), "25,0–50,0");
    EXPECT_EQ(de.withUnit("percent", "12"), "12\u00A0%");
    EXPECT_EQ(de.size(300, 420.5, LengthUnit::mm), "300 × 420,5\u00A0mm");
    EXPECT_EQ(de.size(std::nullopt, 420, LengthUnit::mm), "ohne Angabe");
}

TEST(SheetWords, JoinsWordsAsTheLanguageDoes) {
    const SheetTemplate english = test::shippedTemplate("edition", editionSheetRules());
    const SheetTemplate japanese = test::shippedTemplate("edition", editionSheetRules(), "ja");
    const SheetWords en(english);
    const SheetWords ja(japanese);
    EXPECT_EQ(en.listed({}), "");
    EXPECT_EQ(en.listed({"a"}), "a");
    EXPECT_EQ(en.listed({"a", "b", "c"}), "a, b and c");
    EXPECT_EQ(en.inRow({"a", "b", "c"}), "a, b, c");
    EXPECT_EQ(en.apart({"a", "b"}), "a; b");
    EXPECT_EQ(en.labelled("a", "b"), "a: b");
    EXPECT_EQ(en.sentences({"A.", "B."}), "A. B.");
    EXPECT_EQ(ja.listed({"青", "緑"}), "青、緑");
    EXPECT_EQ(ja.sentences({"青。", "緑。"}), "青。緑。");
}

TEST(SheetWords, FillsEveryMarkOnce) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    const SheetWords words(shipped);
    EXPECT_EQ(words.filled("layers.stateOf", {{"block", "{state}"}, {"state", "3"}}),
              "{state}, state 3");
}

TEST(SheetWords, WritesRangesWithDashes) {
    EXPECT_EQ(numberRanges({1, 2, 3, 5}), "1–3, 5");
    EXPECT_EQ(shortWords("Ochre; dull"), "Ochre");
    EXPECT_EQ(shortWords("Ochre, dull"), "Ochre, dull");
}

// Halves go away from nothing, as on paper; no double holds 9.85 or 20.35, and 3 × 6.75 + 0.1 is a
// hair below the latter.
TEST(SheetWords, RoundsHalvesAsOnPaper) {
    const SheetTemplate shipped = test::shippedTemplate("edition", editionSheetRules());
    const SheetWords words(shipped);
    EXPECT_EQ(words.figure(55.25, 1), "55.3");
    EXPECT_EQ(words.figure(9.85, 1), "9.9");
    EXPECT_EQ(words.figure(3 * 6.75 + 0.1, 1), "20.4");
    EXPECT_EQ(words.figure(0.5, 0), "1");
    EXPECT_EQ(words.figure(-0.25, 1), "−0.3");
    EXPECT_EQ(words.figure(9.849, 1), "9.8");
    EXPECT_EQ(words.figure(0, 1), "0.0");
    EXPECT_EQ(words.figure(1e15, 0), "1,000,000,000,000,000");
    EXPECT_EQ(words.percent(0.00125, 2), "0.13");
}

}  // namespace
}  // namespace rackbook
