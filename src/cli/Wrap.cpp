#include "cli/Wrap.h"

#include <algorithm>

#include "base/Text.h"

namespace rackbook {

namespace {

struct Piece {
    std::string text;
    int width = 0;
    bool spaceBefore = false;
};

bool isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

bool isOneOf(std::string_view character, std::initializer_list<std::string_view> set) {
    return std::find(set.begin(), set.end(), character) != set.end();
}

bool opens(std::string_view character) {
    return isOneOf(character, {"（", "「", "『", "【", "〈", "《", "［", "｛"});
}

bool closes(std::string_view character) {
    return isOneOf(character, {"）", "」", "』", "】", "〉", "》", "］", "｝", "、", "。", "，",
                               "．", "：", "；", "！", "？", "ー", "々"});
}

void addWord(std::string_view word, std::vector<Piece>& pieces) {
    Piece piece;
    piece.spaceBefore = !pieces.empty();
    bool mayBreak = false;
    while (!word.empty()) {
        const std::string_view character = word.substr(0, offsetOfCodePoint(word, 1));
        word.remove_prefix(character.size());
        const int columns = displayWidth(character);
        const bool wide = columns == 2;
        if (mayBreak && wide && !closes(character)) {
            pieces.push_back(piece);
            piece = {};
        }
        piece.text += character;
        piece.width += columns;
        // A mark without width belongs to the character before it.
        if (columns > 0)
            mayBreak = wide && !opens(character);
    }
    pieces.push_back(piece);
}

std::vector<Piece> piecesOf(std::string_view text) {
    std::vector<Piece> pieces;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && !isSpace(text[end]))
            ++end;
        if (end > at)
            addWord(text.substr(at, end - at), pieces);
        at = end + 1;
    }
    return pieces;
}

}  // namespace

std::vector<std::string> wrapped(std::string_view text, int width) {
    std::vector<std::string> lines(1);
    int used = 0;
    for (const Piece& piece : piecesOf(text)) {
        const int gap = piece.spaceBefore && used > 0 ? 1 : 0;
        if (used > 0 && used + gap + piece.width > width) {
            lines.push_back(piece.text);
            used = piece.width;
            continue;
        }
        lines.back() += (gap == 1 ? " " : "") + piece.text;
        used += gap + piece.width;
    }
    return lines;
}

int widestPiece(std::string_view text) {
    int widest = 0;
    for (const Piece& piece : piecesOf(text))
        widest = std::max(widest, piece.width);
    return widest;
}

std::string wrappedParagraphs(std::string_view text, int width, int indent) {
    const std::string margin(static_cast<std::size_t>(std::max(0, indent)), ' ');
    std::string result;
    std::string paragraph;
    bool gapDue = false;
    const auto add = [&](const std::string& line) {
        if (gapDue && !result.empty())
            result += "\n";
        gapDue = false;
        result += margin + line + "\n";
    };
    const auto flush = [&] {
        if (!paragraph.empty())
            for (const std::string& line : wrapped(paragraph, width - indent))
                add(line);
        paragraph.clear();
    };
    while (!text.empty()) {
        const std::string_view line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(line.size() + 1, text.size()));
        if (line.find_first_not_of(" \t\r") == std::string_view::npos) {
            flush();
            gapDue = true;
        } else if (line.front() == ' ') {
            flush();
            add(std::string(line));
        } else {
            paragraph += std::string(line) + " ";
        }
    }
    flush();
    return result;
}

std::string wrappedLines(std::string_view text, int width, int indent) {
    std::string result;
    while (!text.empty()) {
        const std::string_view line = text.substr(0, text.find('\n'));
        text.remove_prefix(std::min(line.size() + 1, text.size()));
        result += wrappedParagraphs(line, width, indent);
    }
    return result;
}

}  // namespace rackbook
