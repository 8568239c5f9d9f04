// The form of a bench sheet, object by object as qpdf tells it.
#include <gtest/gtest.h>

#include <set>

#include "CheckedSheets.h"
#include "FormTools.h"
#include "OutsideReader.h"
#include "RichSheet.h"
#include "archival/Twin.h"
#include "archival/UnicodeMap.h"
#include "pdf/PdfWriter.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

using nlohmann::json;

const CheckedSheet& benchSheet() {
    for (const CheckedSheet& sheet : checkedSheets())
        if (sheet.name == "EEL-L9-bench")
            return sheet;
    throw std::runtime_error("there is no bench sheet among the sheets");
}

class Form : public testing::Test {
protected:
    const json& form() const { return m_file.at(m_file.catalog(), "/AcroForm"); }
    const json& fieldOf(const std::string& name) const {
        return m_file.resolved(m_reference[name] = m_fields.at(name));
    }

    const CheckedSheet& m_sheet = benchSheet();
    PdfJson m_file{m_sheet.bytes};
    std::map<std::string, std::string> m_fields = fieldsIn(m_file);
    mutable std::map<std::string, json> m_reference;  // what resolved() refers to
};

TEST_F(Form, HasTheFieldsOfTheModel) {
    ASSERT_GT(m_sheet.model.form.size(), 60u);
    EXPECT_EQ(m_fields.size(), m_sheet.model.form.size());
    static const std::map<FormField::Kind, std::pair<const char*, int>> kinds = {
        {FormField::Kind::text, {"/Tx", 0}},
        {FormField::Kind::lines, {"/Tx", 4096}},
        {FormField::Kind::choice, {"/Ch", 393216}},
        {FormField::Kind::tick, {"/Btn", 0}}};
    for (const FormField& field : m_sheet.model.form) {
        const json& made = fieldOf(field.name);
        const json& flags = m_file.at(made, "/Ff");
        EXPECT_EQ(m_file.at(made, "/FT"), kinds.at(field.kind).first) << field.name;
        EXPECT_EQ(flags.is_null() ? 0 : flags.get<int>(), kinds.at(field.kind).second);
        EXPECT_EQ(textOf(m_file.at(made, "/TU")), field.tooltip);
        const json& value = m_file.at(made, "/V");
        if (field.kind == FormField::Kind::tick)
            EXPECT_EQ(value, "/Off") << field.name;
        else
            EXPECT_EQ(textOf(value), field.value) << field.name;
        EXPECT_EQ(m_file.at(made, "/Opt").size(), field.choices.size()) << field.name;
        EXPECT_EQ(m_file.at(made, "/F"), 4) << field.name;
    }
}

// In points from the lower left corner of the page.
TEST_F(Form, StandsWhereTheBoxesAre) {
    constexpr double tolerance_pt = 0.01;
    for (const FormField& field : m_sheet.model.form) {
        const json& made = fieldOf(field.name);
        const json& edges = m_file.at(made, "/Rect");
        const double height_mm = m_sheet.model.paper.height_mm;
        const double meant_mm[] = {field.box.x_mm, height_mm - field.box.y_mm - field.box.height_mm,
                                   field.box.x_mm + field.box.width_mm, height_mm - field.box.y_mm};
        for (std::size_t i = 0; i < 4; ++i)
            EXPECT_NEAR(edges[i].get<double>(), meant_mm[i] * 72 / 25.4, tolerance_pt)
                << field.name;
        EXPECT_EQ(m_file.raw(made, "/P"), m_file.pages()[field.page]) << field.name;
    }
}

TEST_F(Form, DoesNothingByItself) {
    EXPECT_TRUE(m_file.at(form(), "/NeedAppearances").is_null());
    EXPECT_TRUE(m_file.at(form(), "/XFA").is_null());
    for (const auto& [reference, object] : m_file.objects())
        for (const char* action : {"/A", "/AA", "/JS", "/OpenAction"})
            if (object.value.is_object() && m_file.at(object.value, "/Type") != "/StructElem") {
                EXPECT_FALSE(object.value.contains(action)) << reference << " " << action;
            }
    for (const std::string& page : m_file.pages())
        EXPECT_EQ(m_file.at(page, "/Tabs"), "/S");
}

TEST_F(Form, ShowsWhatStandsInIt) {
    int prefilled = 0;
    for (const FormField& field : m_sheet.model.form) {
        const json& normal = m_file.at(m_file.at(fieldOf(field.name), "/AP"), "/N");
        if (field.kind == FormField::Kind::tick) {
            for (const char* state : {"/Off", "/on"})
                EXPECT_NE(m_file.stream(m_file.raw(normal, state)), nullptr) << field.name;
            continue;
        }
        const PdfJson::Object* look =
            m_file.stream(m_file.raw(m_file.at(fieldOf(field.name), "/AP"), "/N"));
        ASSERT_NE(look, nullptr) << field.name;
        EXPECT_EQ(look->data.find("Tj") != std::string::npos, !field.value.empty()) << field.name;
        prefilled += field.value.empty() ? 0 : 1;
    }
    EXPECT_GE(prefilled, 4);
}

// The font that programs set typed text in has its letters inside the file.
TEST_F(Form, TakesLatinGreekAndCyrillic) {
    const json& fonts = m_file.at(m_file.at(form(), "/DR"), "/Font");
    ASSERT_EQ(fonts.size(), 1u);
    const std::string name = fonts.begin().key();
    EXPECT_NE(textOf(m_file.at(fieldOf("pull.day"), "/DA")).find(name + " "), std::string::npos);
    const json& font = m_file.at(m_file.at(form(), "/DR"), "/Font").begin().value();
    const PdfJson::Object* map = m_file.stream(m_file.raw(font, "/ToUnicode"));
    ASSERT_NE(map, nullptr);
    std::set<char32_t> known;
    for (const auto& [code, text] : unicodeMapIn(map->data))
        if (text.size() == 2)
            known.insert(codeIn(text));
    const std::u32string wanted = U"Az09 äßÅñçŁłŐőžŸĦ€£§°µ½–—„“”’…ΑΩαωάϊΐЀЯяёҐґЉљЎў";
    for (const char32_t c : wanted)
        EXPECT_EQ(known.count(c), 1u) << std::hex << static_cast<unsigned>(c);
}

TEST_F(Form, IsTheSameForTheSameFacts) {
    const PdfFonts fonts;
    EXPECT_EQ(writePdf(m_sheet.model, fonts), m_sheet.bytes);
}

TEST_F(Form, IsDrawnByOthersWhenFilledIn) {
    const std::string filled = filledByMupdf(m_sheet.bytes, {{"pull.day", "28/3/2026"},
                                                             {"pull.start", "18:30"},
                                                             {"sheet.all.printed", "on"},
                                                             {"pull.note", "Ψυχή, Щит."}});
    const std::string path = fileWith(filled, "filled.pdf");
    const ToolRun check = readWith("qpdf --check " + path);
    EXPECT_EQ(check.exitCode, 0) << check.output;
    const ToolRun text = readWith("pdftotext -raw -enc UTF-8 " + path + " -");
    for (const char* words : {"28/3/2026", "18:30", "Ψυχή", "Щит"})
        EXPECT_NE(text.output.find(words), std::string::npos) << words;
}

TEST_F(Form, WantsASoundModel) {
    const PdfFonts fonts;
    const auto refused = [&](const std::function<void(PageModel&)>& change) {
        PageModel model = m_sheet.model;
        change(model);
        return messageOf<RenderError>([&] { writePdf(model, fonts); });
    };
    EXPECT_NE(refused([](PageModel& m) { m.form[1].name = m.form[0].name; }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form[0].tooltip.clear(); }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form[0].page = 99; }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form[0].box.width_mm = 0; }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form[0].element = noElement; }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form[0].element = m.form[1].element; }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form.pop_back(); }), "");
    EXPECT_NE(refused([](PageModel& m) { m.form[0].value = "\xF0\x9F\x98\x80"; }), "");
}

// ISO 19005-3, 6.3 and 6.4, and the tags of fields.
TEST_F(Form, BrokenTwinsAreFound) {
    const std::string text = m_fields.at("pull.day");
    const std::string tick = m_fields.at("sheet.all.printed");
    expectEachFound(
        m_sheet.bytes,
        {{"no appearance", "6.3.3", [&](Twin& t) { t.object(text).erase("/AP"); }},
         {"states for a text", "6.3.3",
          [&](Twin& t) { t.object(text)["/AP"] = t.object(tick)["/AP"]; }},
         {"one look for a tick", "6.3.3",
          [&](Twin& t) { t.object(tick)["/AP"] = t.object(text)["/AP"]; }},
         {"state without a look", "32000-1, 12.5.5",
          [&](Twin& t) { t.object(tick)["/AS"] = "/other"; }},
         {"not printed", "6.3.2", [&](Twin& t) { t.object(text)["/F"] = 0; }},
         {"hidden", "6.3.2", [&](Twin& t) { t.object(text)["/F"] = 6; }},
         {"action", "6.4.1",
          [&](Twin& t) {
              t.object(text)["/A"] = {{"/S", "/URI"}, {"/URI", "u:urn:a"}};
          }},
         {"action above", "6.4.1",
          [&](Twin& t) {
              t.object(t.object(text)["/Parent"])["/A"] = {{"/S", "/URI"}, {"/URI", "u:urn:a"}};
          }},
         {"actions", "6.5.2", [&](Twin& t) { t.object(text)["/AA"] = json::object(); }},
         {"appearances wanted", "6.4.1",
          [](Twin& t) { t.object(t.catalog()["/AcroForm"])["/NeedAppearances"] = true; }},
         {"form of XML", "6.4.2",
          [](Twin& t) { t.object(t.catalog()["/AcroForm"])["/XFA"] = json::array(); }},
         {"pages of XML", "6.4.2", [](Twin& t) { t.catalog()["/NeedsRendering"] = true; }},
         {"point in a name", "32000-1, 12.7.3.2", [&](Twin& t) { t.object(text)["/T"] = "u:a.b"; }},
         {"no kind", "32000-1, 12.7.3.1", [&](Twin& t) { t.object(text).erase("/FT"); }},
         {"other parent", "32000-1, 14.7.4.4",
          [&](Twin& t) { t.object(text)["/StructParent"] = t.object(tick)["/StructParent"]; }}});
}

TEST_F(Form, BrokenTagsOfFieldsAreFound) {
    std::string tag;
    for (const auto& [reference, object] : m_file.objects())
        if (object.value.is_object() && m_file.at(object.value, "/S") == "/Form" && tag.empty())
            tag = reference;
    ASSERT_NE(tag, "");
    expectEachFound(
        m_sheet.bytes,
        {{"no tag", "32000-1, 14.7.4.3", [&](Twin& t) { t.object(tag).erase("/K"); }},
         {"another tag", "32000-1, 14.8.4.5", [&](Twin& t) { t.object(tag)["/S"] = "/P"; }}});
}

}  // namespace
}  // namespace rackbook
