// The geometry of the codes, after ISO/IEC 18004:2015 (from memory): 6.3 structure, table 7
// capacities, 7.9 format information. That they can be read is tested in tests/pdf.
#include "sheets/QrSquares.h"

#include <gtest/gtest.h>

#include <cmath>

#include "ErrorText.h"
#include "PanelMeasures.h"
#include "base/Error.h"

namespace rackbook {
namespace {

constexpr double side_mm = 60;
constexpr int quietModules = 4;

// The modules of a code, read off the boxes.
class Modules {
public:
    explicit Modules(const std::string& text) {
        const Fill fill = qrSquares(text, side_mm, 5, "here");
        EXPECT_EQ(fill.element, 5);
        EXPECT_EQ(fill.grey, 0);
        m_module_mm = fill.boxes.front().height_mm;
        m_size = static_cast<int>(std::round(side_mm / m_module_mm)) - 2 * quietModules;
        m_dark.assign(static_cast<std::size_t>(m_size * m_size), 0);
        for (const Box& box : fill.boxes)
            read(box);
    }

    int size() const { return m_size; }

    // Outside of the code everything is light.
    bool isDark(int x, int y) const {
        return x >= 0 && y >= 0 && x < m_size && y < m_size &&
               m_dark[static_cast<std::size_t>(y * m_size + x)] > 0;
    }

private:
    int inModules(double mm) const {
        const double modules = mm / m_module_mm;
        EXPECT_NEAR(modules, std::round(modules), 1e-6);
        return static_cast<int>(std::round(modules));
    }

    void read(const Box& box) {
        EXPECT_EQ(inModules(box.height_mm), 1);
        const int y = inModules(box.y_mm) - quietModules;
        const int from = inModules(box.x_mm) - quietModules;
        const int to = from + inModules(box.width_mm);
        ASSERT_TRUE(y >= 0 && y < m_size && from >= 0 && from < to && to <= m_size)
            << "the quiet zone is not free";
        for (int x = from; x < to; ++x)
            EXPECT_EQ(m_dark[static_cast<std::size_t>(y * m_size + x)]++, 0) << "drawn twice";
    }

    double m_module_mm = 0;
    int m_size = 0;
    std::vector<int> m_dark;
};

// Seven by seven: a dark ring, a light ring, a dark square of three; a light ring around it.
void expectFinder(const Modules& code, int left, int top) {
    for (int y = -1; y <= 7; ++y)
        for (int x = -1; x <= 7; ++x) {
            const int ring = std::max(std::abs(x - 3), std::abs(y - 3));
            EXPECT_EQ(code.isDark(left + x, top + y), ring == 3 || ring <= 1)
                << left + x << ", " << top + y;
        }
}

bool isFinder(const Modules& code, int left, int top) {
    for (int y = 0; y < 7; ++y)
        for (int x = 0; x < 7; ++x) {
            const int ring = std::max(std::abs(x - 3), std::abs(y - 3));
            if (code.isDark(left + x, top + y) != (ring == 3 || ring <= 1))
                return false;
        }
    return true;
}

const std::vector<int> lengths = {1, 14, 15, 26, 27, 42, 43, 62, 63, 84, 200, 400};

std::string textOf(int length) {
    std::string text;
    for (int i = 0; i < length; ++i)
        text += static_cast<char>('a' + i * 7 % 26);
    return text;
}

// Bytes that versions 1 to 5 hold with error correction M: 14, 26, 42, 62 and 84. Version v has
// 17 + 4v modules a side.
TEST(QrSquares, AreOfTheSmallestVersionThatHoldsTheText) {
    const std::pair<int, int> wanted[] = {{1, 21},  {14, 21}, {15, 25}, {26, 25}, {27, 29},
                                          {42, 29}, {43, 33}, {62, 33}, {63, 37}, {84, 37}};
    for (const auto& [length, modules] : wanted)
        EXPECT_EQ(Modules(textOf(length)).size(), modules) << length;
}

TEST(QrSquares, HaveFindersAtThreeCorners) {
    for (const int length : lengths) {
        const Modules code(textOf(length));
        expectFinder(code, 0, 0);
        expectFinder(code, code.size() - 7, 0);
        expectFinder(code, 0, code.size() - 7);
        EXPECT_FALSE(isFinder(code, code.size() - 7, code.size() - 7));
    }
}

TEST(QrSquares, HaveTimingPatternsBetweenTheFinders) {
    for (const int length : lengths) {
        const Modules code(textOf(length));
        for (int at = 8; at < code.size() - 8; ++at) {
            EXPECT_EQ(code.isDark(at, 6), at % 2 == 0);
            EXPECT_EQ(code.isDark(6, at), at % 2 == 0);
        }
        EXPECT_TRUE(code.isDark(8, code.size() - 8));  // always dark
    }
}

// Fifteen bits stand twice, masked with 101010000010010; the first two of them give the error
// correction: 01 L, 00 M, 11 Q, 10 H.
TEST(QrSquares, CorrectErrorsAsMOrBetter) {
    for (const int length : lengths) {
        const Modules code(textOf(length));
        const int last = code.size() - 1;
        std::vector<bool> first;
        std::vector<bool> second;
        for (int x : {0, 1, 2, 3, 4, 5, 7, 8})
            first.push_back(code.isDark(x, 8));
        for (int y : {7, 5, 4, 3, 2, 1, 0})
            first.push_back(code.isDark(8, y));
        for (int i = 0; i < 7; ++i)
            second.push_back(code.isDark(8, last - i));
        for (int i = 7; i >= 0; --i)
            second.push_back(code.isDark(last - i, 8));
        EXPECT_EQ(first, second);
        const bool high = first[0] != true;
        const bool low = first[1] != false;
        EXPECT_FALSE(!high && low) << length;
    }
}

TEST(QrSquares, RefuseTextThatCannotBeRead) {
    EXPECT_NE(messageOf<RenderError>([] {
                  qrSquares(textOf(4000), 500, 0, "here");
              }).find("here: a QR code cannot hold 4000 bytes"),
              std::string::npos);
    // Twenty-nine modules of 0.3 mm.
    EXPECT_NE(messageOf<RenderError>([] { qrSquares("x", 8.69, 0, "here"); }).find("too fine"),
              std::string::npos);
    EXPECT_EQ(messageOf<RenderError>([] { qrSquares("x", 8.71, 0, "here"); }), "");
}

}  // namespace
}  // namespace rackbook
