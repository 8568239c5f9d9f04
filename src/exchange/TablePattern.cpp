#include "exchange/TablePattern.h"

#include "base/Numbers.h"
#include "base/Text.h"

namespace rackbook {

namespace {

constexpr long long mostDigits = 6;

std::optional<PatternPiece> namedPiece(const std::string& name) {
    PatternPiece piece;
    if (name.empty())
        return std::nullopt;
    if (name.front() != '#') {
        piece.kind = PatternPiece::Kind::column;
        piece.text = trimmed(name);
        return piece;
    }
    piece.kind = PatternPiece::Kind::number;
    const std::optional<long long> width = name.size() == 1 ? 1 : parseWhole(name.substr(1));
    if (!width || *width < 1 || *width > mostDigits)
        return std::nullopt;
    piece.width = static_cast<std::size_t>(*width);
    return piece;
}

}  // namespace

std::optional<std::vector<PatternPiece>> patternPieces(const std::string& pattern) {
    std::vector<PatternPiece> pieces;
    const auto addLiteral = [&](char c) {
        if (pieces.empty() || pieces.back().kind != PatternPiece::Kind::literal)
            pieces.emplace_back();
        pieces.back().text += c;
    };
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        if (pattern[i] != '{') {
            addLiteral(pattern[i]);
        } else if (i + 1 < pattern.size() && pattern[i + 1] == '{') {
            addLiteral('{');
            ++i;
        } else {
            const std::size_t end = pattern.find('}', i);
            if (end == std::string::npos)
                return std::nullopt;
            const std::optional<PatternPiece> piece =
                namedPiece(pattern.substr(i + 1, end - i - 1));
            if (!piece)
                return std::nullopt;
            pieces.push_back(*piece);
            i = end;
        }
    }
    return pieces;
}

std::vector<PatternPiece> soundPieces(const std::string& pattern) {
    std::optional<std::vector<PatternPiece>> pieces = patternPieces(pattern);
    return pieces ? std::move(*pieces) : std::vector<PatternPiece>{};
}

}  // namespace rackbook
