#include "ContentTokens.h"

#include <cstring>
#include <optional>
#include <sstream>
#include <stdexcept>

namespace rackbook {

namespace {

bool isSpace(char c) {
    return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0';
}

bool endsToken(char c) {
    return isSpace(c) || (c != '\0' && std::strchr("()<>[]{}/%", c) != nullptr);
}

int hexDigit(char c) {
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

class Scanner {
public:
    explicit Scanner(const std::string& content) : m_content(content) {}

    std::vector<Operation> all() {
        std::vector<Operation> operations;
        std::vector<Operand> operands;
        for (skip(); m_at < m_content.size(); skip()) {
            if (std::optional<Operand> operand = nextOperand()) {
                operands.push_back(std::move(*operand));
                continue;
            }
            const std::string name = word();
            if (name == "BI")
                operands = {inlineImage()};
            operations.push_back({name, std::move(operands)});
            operands.clear();
        }
        if (!operands.empty())
            fail("operands without an operator");
        return operations;
    }

private:
    [[noreturn]] void fail(const std::string& what) const {
        throw std::runtime_error("content at byte " + std::to_string(m_at) + ": " + what);
    }

    char peek(std::size_t ahead = 0) const {
        return m_at + ahead < m_content.size() ? m_content[m_at + ahead] : '\0';
    }

    void skip() {
        while (m_at < m_content.size()) {
            if (peek() == '%')
                while (m_at < m_content.size() && peek() != '\n' && peek() != '\r')
                    ++m_at;
            else if (isSpace(peek()))
                ++m_at;
            else
                return;
        }
    }

    std::string word() {
        const std::size_t from = m_at;
        while (m_at < m_content.size() && !endsToken(peek()))
            ++m_at;
        if (m_at == from)
            fail(std::string("an odd character ") + peek());
        return m_content.substr(from, m_at - from);
    }

    // Nothing where an operator stands.
    std::optional<Operand> nextOperand() {
        switch (peek()) {
            case '/':
                return name();
            case '(':
                return literal();
            case '[':
                return list(Operand::Kind::array, "]");
            case '<':
                return peek(1) == '<' ? list(Operand::Kind::dictionary, ">>") : hexadecimal();
            default:
                return number();
        }
    }

    std::optional<Operand> number() {
        if (std::strchr("+-.0123456789", peek()) == nullptr)
            return std::nullopt;
        std::istringstream text(word());
        text.imbue(std::locale::classic());
        Operand operand;
        if (!(text >> operand.number) || text.peek() != std::istringstream::traits_type::eof())
            fail("a bad number " + text.str());
        return operand;
    }

    Operand name() {
        ++m_at;
        Operand operand{Operand::Kind::name, 0, {}, {}};
        while (m_at < m_content.size() && !endsToken(peek())) {
            if (peek() == '#' && hexDigit(peek(1)) >= 0 && hexDigit(peek(2)) >= 0) {
                operand.text += static_cast<char>(hexDigit(peek(1)) * 16 + hexDigit(peek(2)));
                m_at += 3;
            } else {
                operand.text += m_content[m_at++];
            }
        }
        return operand;
    }

    Operand hexadecimal() {
        Operand operand{Operand::Kind::string, 0, {}, {}};
        std::string digits;
        for (++m_at; peek() != '>'; ++m_at) {
            if (m_at >= m_content.size() || (hexDigit(peek()) < 0 && !isSpace(peek())))
                fail("a bad hexadecimal string");
            if (!isSpace(peek()))
                digits += peek();
        }
        ++m_at;
        if (digits.size() % 2 != 0)
            digits += '0';
        for (std::size_t i = 0; i < digits.size(); i += 2)
            operand.text += static_cast<char>(hexDigit(digits[i]) * 16 + hexDigit(digits[i + 1]));
        return operand;
    }

    Operand literal() {
        Operand operand{Operand::Kind::string, 0, {}, {}};
        int open = 1;
        for (++m_at; m_at < m_content.size(); ++m_at) {
            const char c = peek();
            open += c == '(' ? 1 : c == ')' ? -1 : 0;
            if (open == 0) {
                ++m_at;
                return operand;
            }
            if (c == '\\')
                operand.text += escaped();
            else
                operand.text += c;
        }
        fail("a string without end");
    }

    // Leaves the last character of the escape to be passed over.
    std::string escaped() {
        ++m_at;
        int value = 0;
        int digits = 0;
        for (; digits < 3 && peek() >= '0' && peek() <= '7'; ++digits, ++m_at)
            value = value * 8 + (peek() - '0');
        if (digits > 0) {
            --m_at;
            return std::string(1, static_cast<char>(value));
        }
        if (peek() == '\r' && peek(1) == '\n')
            ++m_at;
        static const std::string letters = "nrtbf";
        static const std::string meant = "\n\r\t\b\f";
        const std::size_t known = letters.find(peek());
        if (known != std::string::npos)
            return std::string(1, meant[known]);
        return peek() == '\n' || peek() == '\r' ? std::string() : std::string(1, peek());
    }

    Operand list(Operand::Kind kind, const std::string& end) {
        Operand operand{kind, 0, {}, {}};
        m_at += end.size();
        for (skip(); m_content.compare(m_at, end.size(), end) != 0; skip()) {
            if (m_at >= m_content.size())
                fail("a list without end");
            if (std::optional<Operand> item = nextOperand())
                operand.items.push_back(std::move(*item));
            else
                operand.items.push_back({Operand::Kind::name, 0, word(), {}});  // true, false, null
        }
        m_at += end.size();
        return operand;
    }

    Operand inlineImage() {
        Operand dictionary{Operand::Kind::dictionary, 0, {}, {}};
        for (skip(); m_content.compare(m_at, 2, "ID") != 0; skip()) {
            if (m_at >= m_content.size())
                fail("an inline image without data");
            if (std::optional<Operand> item = nextOperand())
                dictionary.items.push_back(std::move(*item));
            else
                dictionary.items.push_back({Operand::Kind::name, 0, word(), {}});
        }
        m_at += 3;
        while (m_at < m_content.size() &&
               !(isSpace(peek()) && peek(1) == 'E' && peek(2) == 'I' && endsToken(peek(3))))
            ++m_at;
        if (m_at >= m_content.size())
            fail("an inline image without end");
        m_at += 3;
        return dictionary;
    }

    const std::string& m_content;
    std::size_t m_at = 0;
};

}  // namespace

std::vector<Operation> operationsIn(const std::string& content) {
    return Scanner(content).all();
}

const Operand* memberOf(const Operand& dictionary, const std::string& key) {
    for (std::size_t i = 0; i + 1 < dictionary.items.size(); i += 2)
        if (dictionary.items[i].text == key)
            return &dictionary.items[i + 1];
    return nullptr;
}

}  // namespace rackbook
