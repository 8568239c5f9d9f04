#include "pdf/ModelCheck.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "RichSheet.h"
#include "pdf/PdfWriter.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

std::string refusal(const std::function<void(PageModel&)>& spoil) {
    static const PdfFonts fonts;
    PageModel model = richSheet();
    spoil(model);
    return messageOf<RenderError>([&] { checkModel(model, fonts); });
}

std::string fault(const std::string& what) {
    return "page model: " + what + ". Report this fault of the program.";
}

Page& first(PageModel& model) {
    return model.pages.front();
}

void setBytes(PictureFile& picture, std::string bytes) {
    picture.bytes = std::make_shared<const std::string>(std::move(bytes));
}

TEST(ModelCheck, LetsASoundModelPass) {
    EXPECT_EQ(refusal([](PageModel&) {}), "");
}

TEST(ModelCheck, RefusesWhatCannotBeDrawn) {
    constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();
    constexpr double infinite = std::numeric_limits<double>::infinity();
    EXPECT_EQ(refusal([](PageModel& m) { first(m).curves[0].points.resize(1); }),
              fault("a curve has fewer than two points"));
    EXPECT_EQ(refusal([](PageModel& m) { first(m).fills[0].boxes.clear(); }),
              fault("a fill has no boxes"));
    const std::string noNumber = fault("a measure is not a finite number");
    EXPECT_EQ(refusal([](PageModel& m) { first(m).curves[0].points[1].y_mm = notANumber; }),
              noNumber);
    EXPECT_EQ(refusal([](PageModel& m) { first(m).curves[0].dash_mm = infinite; }), noNumber);
    EXPECT_EQ(refusal([](PageModel& m) { first(m).fills[0].boxes[1].width_mm = notANumber; }),
              noNumber);
    EXPECT_EQ(refusal([](PageModel& m) { first(m).pictures[0].box.x_mm = -infinite; }), noNumber);
    EXPECT_EQ(refusal([](PageModel& m) { first(m).pictures[0].box.height_mm = 0; }),
              fault("the place of a picture has no size"));
}

TEST(ModelCheck, RefusesWhatIsNotThere) {
    EXPECT_EQ(refusal([](PageModel& m) { first(m).pictures[0].file = 2; }),
              fault("a page shows a picture that the sheet lacks"));
    const std::string noElementThere =
        fault("a thing belongs to an element that the structure lacks");
    EXPECT_EQ(refusal([](PageModel& m) { first(m).texts[0].element = 99; }), noElementThere);
    EXPECT_EQ(refusal([](PageModel& m) { first(m).rules[0].element = -2; }), noElementThere);
    EXPECT_EQ(refusal([](PageModel& m) { m.structure.clear(); }), noElementThere);
    EXPECT_EQ(refusal([](PageModel& m) { m.structure[1].parent = 1; }),
              fault("an element of the structure stands before its parent"));
    EXPECT_EQ(refusal([](PageModel& m) { m.structure[1].columns = 0; }),
              fault("a cell reaches across no column"));
}

TEST(ModelCheck, RefusesPicturesWithoutWords) {
    EXPECT_EQ(
        refusal([](PageModel& m) {
            m.structure[static_cast<std::size_t>(first(m).pictures[0].element)].alternate.clear();
        }),
        "picture 1: no words say what it shows. Give it a caption.");
}

TEST(ModelCheck, RefusesPictureFilesThatCannotBeDrawn) {
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[0].width_px = 32; }),
              "picture 1: it has 48 × 32 pixels, not 32 × 32. Give the file that the sheet was "
              "laid out with.");
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[1].orientation = 9; }),
              fault("the orientation of a picture is not 1 to 8"));
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[1].mediaType = "image/gif"; }),
              "picture 2: \"image/gif\" is no kind that can be drawn. Give a JPEG or PNG file.");
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[0] = samplePicture("transparent.png"); }),
              "picture 1: it has transparency. Save it without.");
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[0] = samplePicture("deep.png"); }),
              "picture 1: its samples have 16 bits. Save it with 8 bits a channel.");
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[0].mediaType = "image/png"; }),
              "picture 1: the PNG file cannot be read: Not a PNG file. Give an undamaged copy.");
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[1].mediaType = "image/jpeg"; }),
              "picture 2: it is no JPEG file. Give a JPEG or PNG file.");
    EXPECT_EQ(refusal([](PageModel& m) { m.pictures[0].bytes.reset(); }),
              "picture 1: it has no bytes. Report this fault of the program.");
}

// Bytes of the frame header (ITU-T T.81, B.2.2): FF C0, length, precision, lines, samples a line,
// components.
TEST(ModelCheck, RefusesJpegsThatPdfLacks) {
    const auto withByte = [](std::size_t after, char byte) {
        return refusal([&](PageModel& m) {
            std::string bytes = *m.pictures[0].bytes;
            bytes[bytes.find("\xFF\xC0") + after] = byte;
            setBytes(m.pictures[0], bytes);
        });
    };
    EXPECT_EQ(withByte(1, '\xC9'),
              "picture 1: its coding is one that PDF lacks. Save it as a baseline or progressive "
              "JPEG.");
    EXPECT_EQ(withByte(1, '\xC2'), "");
    EXPECT_EQ(withByte(4, 12),
              "picture 1: its samples have other than 8 bits. Save it with 8 bits a channel.");
    EXPECT_EQ(withByte(9, 4), "picture 1: it is neither grey nor RGB. Save it as grey or RGB.");
}

TEST(ModelCheck, RefusesJpegsCutShortAnywhereBeforeTheirPicture) {
    const std::string whole = *samplePicture("rgb.jpg").bytes;
    const std::size_t frame = whole.find("\xFF\xC0");
    for (std::size_t length = 2; length < frame + 10; ++length) {
        const std::string message =
            refusal([&](PageModel& m) { setBytes(m.pictures[0], whole.substr(0, length)); });
        ASSERT_EQ(message, "picture 1: the JPEG file is damaged. Give an undamaged copy.")
            << length;
    }
}

// The heading is sound, so that only drawing finds the damage.
TEST(ModelCheck, LeavesDamagedPngPixelsToTheDrawing) {
    const PdfFonts fonts;
    PageModel model = richSheet();
    std::string bytes = *model.pictures[1].bytes;
    const std::size_t pixels = bytes.find("IDAT");
    setBytes(model.pictures[1], bytes.substr(0, pixels + 8));
    EXPECT_EQ(messageOf<RenderError>([&] { checkModel(model, fonts); }), "");
    const std::string message = messageOf<RenderError>([&] { writePdf(model, fonts); });
    EXPECT_EQ(message.rfind("picture 2: the PNG file cannot be read: ", 0), 0u) << message;
}

TEST(ModelCheck, RefusesFilesInsideWithoutGoodNames) {
    for (const char* name : {"", "a/b", "a\\b", "..", "a\nb", "a\xFF"})
        EXPECT_NE(refusal([&](PageModel& m) {
                      m.files[0].name = name;
                  }).find("is no file name. Name it without folders and control characters."),
                  std::string::npos)
            << name;
    EXPECT_EQ(refusal([](PageModel& m) { m.files[1].name = m.files[0].name; }),
              "file inside the sheet: \"harbour.json\" is the name of two files. Give each file a "
              "name of its own.");
    for (const char* type : {"", "json", "/json", "application/", "a b/c", "a/b/c"})
        EXPECT_EQ(refusal([&](PageModel& m) { m.files[0].mediaType = type; }),
                  fault("\"" + std::string(type) + "\" is no media type"));
}

}  // namespace
}  // namespace rackbook
