// Values of forms from outside: whatever encoding they come in, and whatever is wrong with the
// file.
#include "pdf/FormValues.h"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <sstream>

#include "CheckedSheets.h"
#include "CraftedPdf.h"
#include "FormTools.h"
#include "OutsideReader.h"
#include "base/Text.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

ProcessLimits quick() {
    ProcessLimits limits;
    limits.time_s = 1;
    return limits;
}

std::map<std::string, FormValue> valuesIn(const std::string& bytes) {
    std::map<std::string, FormValue> values;
    for (FormValue& value : readFormValues(fileWith(bytes, "form.pdf"), quick()))
        EXPECT_TRUE(values.emplace(value.name, value).second) << value.name;
    return values;
}

std::string refusal(const std::string& bytes, const ProcessLimits& limits = quick()) {
    const std::string path = fileWith(bytes, "hostile.pdf");
    const std::string message = messageOf<InputError>([&] { readFormValues(path, limits); });
    EXPECT_EQ(message.substr(0, path.size() + 2), path + ": ");
    return message.substr(std::min(message.size(), path.size() + 2));
}

const CheckedSheet& benchSheet() {
    for (const CheckedSheet& sheet : checkedSheets())
        if (sheet.name == "EEL-L9-bench")
            return sheet;
    throw std::runtime_error("there is no bench sheet among the sheets");
}

// One field whose value is written so.
std::string formWith(const std::string& value) {
    return craftedPdf({"<< /Type /Catalog /AcroForm << /Fields [2 0 R] >> >>",
                       "<< /FT /Tx /T (a) /V " + value + " >>"});
}

std::string textOfValue(const std::string& value) {
    return valuesIn(formWith(value)).at("a").text;
}

TEST(FormValues, AreThoseThatTheSheetWasMadeWith) {
    const std::map<std::string, FormValue> values = valuesIn(benchSheet().bytes);
    EXPECT_EQ(values.size(), benchSheet().model.form.size());
    for (const FormField& field : benchSheet().model.form) {
        ASSERT_EQ(values.count(field.name), 1u) << field.name;
        const FormValue& value = values.at(field.name);
        EXPECT_EQ(value.isTick, field.kind == FormField::Kind::tick) << field.name;
        EXPECT_EQ(value.text, field.value) << field.name;
        EXPECT_FALSE(value.isOn) << field.name;
    }
}

// mupdf 1.21 writes the file anew and sets appearances.
TEST(FormValues, AreThoseThatAnotherProgramFilledIn) {
    const std::map<std::string, FormValue> values =
        valuesIn(filledByMupdf(benchSheet().bytes, {{"pull.day", "2026-03-28"},
                                                    {"pull.start", "18:30"},
                                                    {"pull.temperature_C", "19,5"},
                                                    {"pull.note", "Žluť, Ψυχή, Щит.\\nSecond."},
                                                    {"move.to", "An own place"},
                                                    {"sheet.all.printed", "on"}}));
    EXPECT_EQ(values.at("pull.day").text, "2026-03-28");
    EXPECT_EQ(values.at("pull.temperature_C").text, "19,5");
    EXPECT_EQ(values.at("pull.note").text, "Žluť, Ψυχή, Щит.\nSecond.");
    EXPECT_EQ(values.at("move.to").text, "An own place");
    EXPECT_TRUE(values.at("sheet.all.printed").isOn);
    EXPECT_EQ(values.at("pull.end").text, "");
}

// ISO 32000-1, 7.3.4 and 7.9.2.2.
TEST(FormValues, ComeInAnyEncoding) {
    const std::vector<std::pair<const char*, const char*>> rows = {
        {"(19.5)", "19.5"},
        {"(\\061\\71,5)", "19,5"},
        {"<31 392C\n35>", "19,5"},
        {"<313>", "10"},
        {"(M\\374ller)", "Müller"},
        {"(\\200\\240\\226)", "•€Œ"},
        {"(\\(a\\) (b) \\\\)", "(a) (b) \\"},
        {"(cut \\\nshort)", "cut short"},
        {"(\\376\\377\\000M\\000\\374)", "Mü"},
        {"<FEFF03A803C5D83DDE00>", "Ψυ😀"},
        {"<FFFE A803 C503>", "Ψυ"},
        {"<EFBBBF CEA8 CF85>", "Ψυ"},
        {"<FEFF001B0065006E001B0041>", "A"},
        {"<FEFF0041030A>", "Å"},
        {"(a\\r\\nb\\rc\\nd)", "a\nb\nc\nd"},
        {"(a\r\nb\rc)", "a\nb\nc"},
        {"<FEFF0061000D000A0062>", "a\nb"},
        {"[(chosen)]", "chosen"},
        {"/Named", "Named"},
        {"7", ""},
        {"null", ""},
        {"<FEFFD800>", "\xEF\xBF\xBD"},
        {"<FEFFDC000041>",
         "\xEF\xBF\xBD"
         "A"},
        {"<EFBBBF80>", "\xEF\xBF\xBD"}};
    for (const auto& [written, meant] : rows)
        EXPECT_EQ(textOfValue(written), meant) << written;
}

// A stream may hold what is long (ISO 32000-1, 12.7.4.3).
TEST(FormValues, MayStandInAStream) {
    const std::string form =
        craftedPdf({"<< /Type /Catalog /AcroForm << /Fields [2 0 R] >> >>",
                    "<< /FT /Tx /T (a) /V 3 0 R >>", craftedStream("", "long words")});
    EXPECT_EQ(valuesIn(form).at("a").text, "long words");
}

// Bytes of PDFDocEncoding, each behind a letter in a field that is called by its number.
std::string everyByteFrom(int first) {
    const char* hex = "0123456789ABCDEF";
    std::string list;
    std::vector<std::string> objects = {"", "<< /Type /Pages /Kids [] /Count 0 >>"};
    for (int byte = first; byte < 0x100; ++byte) {
        list += std::to_string(objects.size() + 1) + " 0 R ";
        objects.push_back("<< /FT /Tx /T (" + std::to_string(byte) + ") /V <78" +
                          std::string{hex[byte >> 4], hex[byte & 15]} + "> >>");
    }
    objects[0] = "<< /Type /Catalog /Pages 2 0 R /AcroForm << /Fields [" + list + "] >> >>";
    return craftedPdf(objects);
}

// As mupdf reads them.
TEST(FormValues, HaveTheCharactersOfPdfDocEncoding) {
    const std::string form = everyByteFrom(0x20);
    std::map<std::string, FormValue> values = valuesIn(form);
    const std::string script = fileWith(
        "var fields = new PDFDocument(scriptArgs[0]).getTrailer().get('Root').get('AcroForm')"
        ".get('Fields');\n"
        "for (var i = 0; i < fields.length; ++i)\n"
        "    print(fields.get(i).get('T').asString() + '\\t' + "
        "fields.get(i).get('V').asString());\n",
        "values.js");
    std::istringstream lines(
        readWith("mutool run " + script + " " + fileWith(form, "bytes.pdf")).output);
    std::string line;
    int compared = 0;
    while (std::getline(lines, line)) {
        const std::string name = line.substr(0, line.find('\t'));
        ASSERT_EQ(values.count(name), 1u) << line;
        const bool isUndefined = name == "127" || name == "159" || name == "173";
        EXPECT_EQ(values.at(name).text,
                  isUndefined ? "x\xEF\xBF\xBD" : line.substr(line.find('\t') + 1))
            << name;
        ++compared;
    }
    EXPECT_EQ(compared, 0x100 - 0x20);
}

// ISO 32000-1, annex D.2, octal 030 to 037: breve, caron, circumflex, dot accent, double acute,
// ogonek, ring, small tilde. mupdf leaves them out.
TEST(FormValues, HaveTheAccentsOfPdfDocEncoding) {
    const std::map<std::string, FormValue> values = valuesIn(everyByteFrom(0x18));
    const std::u32string accents = U"˘ˇˆ˙˝˛˚˜";
    for (std::size_t i = 0; i < accents.size(); ++i)
        EXPECT_EQ(codePoints(values.at(std::to_string(0x18 + i)).text),
                  std::u32string(U"x") + accents[i]);
}

TEST(FormValues, AreFoundUpAndDownTheTree) {
    const std::map<std::string, FormValue> values = valuesIn(craftedPdf(
        {"<< /Type /Catalog /AcroForm << /Fields [2 0 R 6 0 R 8 0 R] >> >>",
         "<< /T (pull) /FT /Tx /V (above) /Kids [3 0 R 4 0 R] >>", "<< /T (day) /Parent 2 0 R >>",
         "<< /T <FEFF0065> /V (own) /Kids [5 0 R] >>", "<< /Subtype /Widget /AS /Off >>",
         "<< /T (x) /FT /Btn /AS /Yes >>", "<< >>", "<< /T (y) /FT /Btn /V /Off /AS /on >>"}));
    EXPECT_EQ(values.at("pull.day").text, "above");
    EXPECT_EQ(values.at("pull.e").text, "own");
    EXPECT_TRUE(values.at("x").isOn);
    EXPECT_FALSE(values.at("y").isOn) << "the value goes before what is shown";
    EXPECT_EQ(values.size(), 4u);
}

TEST(FormValues, AreNoneWhereThereIsNoForm) {
    for (const CheckedSheet& sheet : checkedSheets())
        if (sheet.model.form.empty()) {
            EXPECT_TRUE(readFormValues(fileOf(sheet)).empty()) << sheet.name;
        }
    for (const char* form : {"[]", "<< /Fields 3 >>", "<< /Fields [9 0 R 4 (x) [1]] >>", "7"})
        EXPECT_TRUE(
            valuesIn(craftedPdf({std::string("<< /Type /Catalog /AcroForm ") + form + " >>"}))
                .empty())
            << form;
}

TEST(FormValues, RefuseWhatCannotBeRead) {
    EXPECT_EQ(refusal("no"), "it is no PDF. Name the PDF of a bench sheet that was filled in.");
    const std::string path = fileWith(benchSheet().bytes, "open.pdf");
    for (const char* how : {"'' owner 256", "user owner 128", "user owner 40"}) {
        const std::string locked = path + ".locked";
        ASSERT_EQ(readWith("qpdf --allow-weak-crypto --encrypt " + std::string(how) + " -- " +
                           path + " " + locked)
                      .exitCode,
                  0);
        EXPECT_EQ(messageOf<InputError>([&] { readFormValues(locked, quick()); }),
                  locked + ": it is encrypted. Save it without a password, then read that.");
    }
    const std::string& whole = benchSheet().bytes;
    for (std::size_t part = 1; part < 20; ++part)
        EXPECT_EQ(refusal(whole.substr(0, whole.size() * part / 20)),
                  "the PDF is damaged. Get an undamaged copy of it.")
            << part;
}

TEST(FormValues, EndATreeThatComesBackToItself) {
    EXPECT_TRUE(valuesIn(craftedPdf({"<< /Type /Catalog /AcroForm << /Fields [2 0 R 2 0 R] >> >>",
                                     "<< /T (a) /FT /Tx /Kids [2 0 R 3 0 R] >>",
                                     "<< /T (b) /Kids [2 0 R] >>"}))
                    .empty());
    std::vector<std::string> rings = {"<< /Type /Catalog /AcroForm << /Fields [2 0 R] >> >>"};
    for (int i = 2; i < 300; ++i)
        rings.push_back("<< /T (a) /FT /Tx /Kids [" + std::to_string(i + 1) + " 0 R 2 0 R] >>");
    rings.push_back("<< /T (a) /FT /Tx /Kids [2 0 R] >>");
    EXPECT_TRUE(valuesIn(craftedPdf(rings)).empty());
}

TEST(FormValues, RefuseMoreThanIsAllowed) {
    const std::string tooMuch =
        "it holds more than 4 MB of form fields. Take the sheet as "
        "rackbook made it, and fill that in.";
    EXPECT_EQ(refusal(craftedPdf({"<< /Type /Catalog /AcroForm << /Fields [2 0 R] >> >>",
                                  "<< /FT /Tx /T (a) /V 3 0 R >>",
                                  craftedStream("", std::string(5 << 20, 'x'))}),
                      ProcessLimits()),
              tooMuch);
    EXPECT_EQ(refusal(craftedPdf({"<< /Type /Catalog /AcroForm << /Fields [2 0 R] >> >>",
                                  "<< /FT /Tx /T (a) /V 3 0 R >>",
                                  craftedStream("/Filter /FlateDecode", zerosDeflated(100))}),
                      ProcessLimits()),
              tooMuch);
    std::string list;
    std::vector<std::string> many = {""};
    for (int i = 2; i < 10'010; ++i) {
        list += std::to_string(i) + " 0 R ";
        many.push_back("<< /FT /Tx /T (f" + std::to_string(i) + ") >>");
    }
    many[0] = "<< /Type /Catalog /AcroForm << /Fields [" + list + "] >> >>";
    EXPECT_EQ(refusal(craftedPdf(many), ProcessLimits()), tooMuch);
}

// A value that one field inherits a thousand times.
TEST(FormValues, CountWhatIsInherited) {
    std::string list;
    std::vector<std::string> objects = {"<< /Type /Catalog /AcroForm << /Fields [2 0 R] >> >>", ""};
    for (int i = 3; i < 1003; ++i) {
        list += std::to_string(i) + " 0 R ";
        objects.push_back("<< /T (f" + std::to_string(i) + ") >>");
    }
    objects[1] = "<< /T (a) /FT /Tx /V (" + std::string(10'000, 'x') + ") /Kids [" + list + "] >>";
    EXPECT_NE(refusal(craftedPdf(objects)).find("more than 4 MB"), std::string::npos);
}

TEST(FormValues, OutliveRandomDamage) {
    const std::string& whole = benchSheet().bytes;
    std::mt19937 random(20260328);
    int refused = 0;
    for (int round = 0; round < 150; ++round) {
        std::string bytes = whole;
        for (std::size_t i = 0; i < 1 + random() % 30; ++i)
            bytes[bytes.size() - 1 - random() % (bytes.size() / (round % 2 == 0 ? 1 : 4))] =
                static_cast<char>(random() & 0xFF);
        const std::string path = fileWith(bytes, "damaged.pdf");
        try {
            readFormValues(path, quick());
        } catch (const InputError& error) {
            EXPECT_EQ(std::string(error.what()).substr(0, path.size() + 2), path + ": ");
            ++refused;
        }
    }
    EXPECT_GT(refused, 5);
    EXPECT_LT(refused, 150);
}

}  // namespace
}  // namespace rackbook
