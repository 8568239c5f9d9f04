// PDFs from outside, broken and hostile: always a clean refusal, in bounded time.
#include "pdf/CarriedFiles.h"

#include <gtest/gtest.h>

#include <chrono>
#include <random>

#include "CraftedPdf.h"
#include "OutsideReader.h"
#include "RichSheet.h"
#include "pdf/PdfWriter.h"
#include "sheets/ErrorText.h"

namespace rackbook {
namespace {

std::string soundFile() {
    const PdfFonts fonts;
    return writePdf(richSheet(), fonts);
}

// Short, so that the tests are.
ProcessLimits quick() {
    ProcessLimits limits;
    limits.time_s = 1;
    return limits;
}

std::string refusalAt(const std::string& path, const ProcessLimits& limits = quick()) {
    return messageOf<InputError>([&] { readCarriedFiles(path, limits); });
}

// Without the path.
std::string refusal(const std::string& bytes, const ProcessLimits& limits = quick()) {
    const std::string path = fileWith(bytes, "hostile.pdf");
    const std::string message = refusalAt(path, limits);
    EXPECT_EQ(message.substr(0, path.size() + 2), path + ": ");
    return message.substr(std::min(message.size(), path.size() + 2));
}

const std::string damaged = "the PDF is damaged. Get an undamaged copy of it.";

std::string carrying(const std::string& specification, const std::string& stream) {
    return craftedPdf({"<< /Type /Catalog /AF [2 0 R] >>", specification, stream});
}

constexpr const char* plainSpecification =
    "<< /Type /Filespec /F (a.json) /UF (a.json) /EF << /F 3 0 R >> >>";

TEST(CarriedFiles, AreReadFromACraftedFileThatIsSound) {
    const std::string path =
        fileWith(carrying(plainSpecification, craftedStream("", "{}")), "sound.pdf");
    const CarriedFiles carried = readCarriedFiles(path);
    EXPECT_EQ(carried.title, "");
    EXPECT_EQ(carried.created, "");
    ASSERT_EQ(carried.files.size(), 1u);
    EXPECT_EQ(carried.files[0].bytes, "{}");
}

TEST(CarriedFiles, RefuseWhatIsNoPdf) {
    const std::string noPdf = "it is no PDF. Name a PDF that Rackbook made.";
    EXPECT_EQ(refusal(""), noPdf);
    EXPECT_EQ(refusal("{\"edition\": 1}"), noPdf);
    EXPECT_EQ(refusal(std::string(2000, ' ') + "%PDF-1.7"), noPdf);
    EXPECT_EQ(refusal("%PDF-1.7\n"), damaged);
    EXPECT_NE(refusalAt("/nowhere/a.pdf").find("/nowhere/a.pdf: it cannot be read"),
              std::string::npos);
    EXPECT_EQ(refusalAt("/"), "/: it is a folder. Name a file.");
}

TEST(CarriedFiles, SayWhereThereAreNone) {
    const std::string none =
        "there is no record inside. Name a PDF that Rackbook made with its record inside.";
    PageModel model = emptySheet();
    const PdfFonts fonts;
    EXPECT_EQ(refusal(writePdf(model, fonts)), none);
    EXPECT_EQ(refusal(craftedPdf({"<< /Type /Catalog /AF [] >>"})), none);
    EXPECT_EQ(refusal(craftedPdf({"<< /Type /Catalog /AF [2 0 R 9 0 R 7 (x)] >>", "<< /EF 3 >>"})),
              none);
    EXPECT_EQ(refusal(craftedPdf({"<< /Type /Catalog /Names [1 0 R] >>"})), none);
}

TEST(CarriedFiles, RefuseEncryptedFiles) {
    const std::string path = fileWith(soundFile(), "open.pdf");
    const std::string encrypted = "it is encrypted. Save it without a password, then read that.";
    for (const char* how : {"'' owner 256", "user owner 256", "'' owner 128", "user owner 128",
                            "'' owner 40", "user owner 40"}) {
        const std::string locked = path + ".locked";
        ASSERT_EQ(readWith("qpdf --allow-weak-crypto --encrypt " + std::string(how) + " -- " +
                           path + " " + locked)
                      .exitCode,
                  0);
        EXPECT_EQ(refusalAt(locked), locked + ": " + encrypted) << how;
    }
    EXPECT_EQ(refusal(craftedPdf({"<< /Type /Catalog >>"}, "/Encrypt << /Filter /Unknown /V 9 >>")),
              encrypted);
}

TEST(CarriedFiles, RefuseFilesCutShort) {
    const std::string whole = soundFile();
    for (std::size_t part = 1; part < 60; ++part)
        EXPECT_EQ(refusal(whole.substr(0, whole.size() * part / 60)), damaged) << part;
}

TEST(CarriedFiles, RefuseDeepNesting) {
    for (const std::size_t depth : {1000, 20000}) {
        std::string dictionaries;
        std::string arrays;
        for (std::size_t i = 0; i < depth; ++i) {
            dictionaries += "<< /A ";
            arrays += "[";
        }
        dictionaries += "1";
        for (std::size_t i = 0; i < depth; ++i) {
            dictionaries += " >>";
            arrays += "]";
        }
        for (const std::string& nested : {dictionaries, arrays}) {
            const auto start = std::chrono::steady_clock::now();
            EXPECT_NE(refusal(craftedPdf({"<< /Type /Catalog /Names " + nested + " >>"})), "");
            EXPECT_NE(refusal(craftedPdf({"<< /Type /Catalog >>"}, "/X " + nested)), "");
            EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(8)) << depth;
        }
    }
}

TEST(CarriedFiles, EndATreeOfNamesThatComesBackToItself) {
    const auto tree = [](const std::string& node) {
        return craftedPdf({"<< /Type /Catalog /Names << /EmbeddedFiles 2 0 R >> >>", node,
                           plainSpecification, craftedStream("", "{}")});
    };
    EXPECT_NE(refusal(tree("<< /Kids [2 0 R 2 0 R 2 0 R] >>")).find("no record inside"),
              std::string::npos);
    EXPECT_NE(refusal(tree("2 0 R")), "");
    std::vector<std::string> rings = {"<< /Type /Catalog /Names << /EmbeddedFiles 2 0 R >> >>"};
    for (int i = 2; i < 200; ++i)
        rings.push_back("<< /Kids [" + std::to_string(i + 1) + " 0 R 2 0 R] >>");
    rings.push_back("<< /Kids [2 0 R] >>");
    EXPECT_NE(refusal(craftedPdf(rings)).find("no record inside"), std::string::npos);
}

TEST(CarriedFiles, RefuseMoreThanIsAllowed) {
    ProcessLimits small = quick();
    small.output_MB = 1;
    const std::string tooMuch =
        "it carries more than 1 MB of files. Take the files out with a PDF program that you trust.";
    EXPECT_EQ(
        refusal(carrying(plainSpecification, craftedStream("", std::string(1100000, 'x'))), small),
        tooMuch);
    const std::string half = craftedStream("", std::string(600000, 'x'));
    EXPECT_EQ(
        refusal(craftedPdf({"<< /Type /Catalog /AF [2 0 R 2 0 R] >>", plainSpecification, half}),
                small),
        tooMuch)
        << "together";
    std::string many;
    for (int i = 0; i < 1001; ++i)
        many += "2 0 R ";
    EXPECT_NE(refusal(craftedPdf({"<< /Type /Catalog /AF [" + many + "] >>", plainSpecification,
                                  craftedStream("", "")})),
              "");
}

TEST(CarriedFiles, RefuseStreamsThatBlowUp) {
    const std::string zeros = zerosDeflated(900);
    EXPECT_LT(zeros.size(), 7u << 20);
    EXPECT_EQ(refusal(carrying(plainSpecification, craftedStream("/Filter /FlateDecode", zeros)),
                      ProcessLimits()),
              "it carries more than 64 MB of files. Take the files out with a PDF program that you "
              "trust.");
}

TEST(CarriedFiles, RefuseObjectStreamsThatBlowUp) {
#if defined(__SANITIZE_ADDRESS__)
    GTEST_SKIP() << "memory is not limited under the address sanitizer";
#endif
    const std::string keys = "/N 1 /First 4 ";
    EXPECT_NE(refusal(craftedWithObjectStream(keys, "1 0 << /Type /Catalog >>"), ProcessLimits())
                  .find("no record inside"),
              std::string::npos)
        << "small, it is sound";
    EXPECT_EQ(refusal(craftedWithObjectStream(keys + "/Filter /FlateDecode", zerosDeflated(900)),
                      ProcessLimits()),
              "reading it takes more than 256 MB of memory. Get an undamaged copy of it.");
}

TEST(CarriedFiles, RefuseNamesThatLeadElsewhere) {
    for (const char* name :
         {"(../a)", "(/etc/a)", "(..)", "(a\\\\b)", "()", "(a\\001)", "<FEFFD800>"})
        EXPECT_EQ(refusal(carrying(std::string("<< /UF ") + name + " /EF << /F 3 0 R >> >>",
                                   craftedStream("", "{}"))),
                  damaged)
            << name;
}

// The answer may be right where the damage does not matter; a crash, a hang or another exception
// would end the test.
TEST(CarriedFiles, OutliveRandomDamage) {
    const std::string whole = soundFile();
    std::mt19937 random(20260304);
    const auto below = [&](std::size_t end) { return random() % end; };
    int refused = 0;
    for (int round = 0; round < 400; ++round) {
        std::string bytes = whole;
        const std::size_t places = 1 + below(30);
        for (std::size_t i = 0; i < places; ++i) {
            // The end holds the structure; there damage tells most.
            const std::size_t at =
                round % 2 == 0 ? below(bytes.size()) : bytes.size() - 1 - below(bytes.size() / 4);
            bytes[at] = static_cast<char>(random() & 0xFF);
        }
        const std::string path = fileWith(bytes, "damaged.pdf");
        try {
            EXPECT_FALSE(readCarriedFiles(path, quick()).files.empty());
        } catch (const InputError& error) {
            EXPECT_EQ(std::string(error.what()).substr(0, path.size() + 2), path + ": ");
            ++refused;
        }
    }
    EXPECT_GT(refused, 100);
    EXPECT_LT(refused, 400);
}

}  // namespace
}  // namespace rackbook
