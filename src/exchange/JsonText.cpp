#include "exchange/JsonText.h"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <optional>
#include <unordered_map>
#include <vector>

#include "base/Error.h"
#include "base/Text.h"

namespace rackbook {

namespace {

// Lines of a text, from 1, by offset.
class LineCounter {
public:
    explicit LineCounter(std::string_view text) {
        for (std::size_t i = 0; i < text.size(); ++i)
            if (text[i] == '\n')
                m_ends.push_back(i);
    }
    int at(std::size_t offset) const {
        const auto end = std::lower_bound(m_ends.begin(), m_ends.end(), offset);
        return 1 + static_cast<int>(end - m_ends.begin());
    }

private:
    std::vector<std::size_t> m_ends;
};

int lineAt(std::string_view text, std::size_t offset) {
    return LineCounter(text).at(offset);
}

std::string place(const std::string& file, int line) {
    return file + ":" + std::to_string(line);
}

// What the parser says, without the library's own prefix and position.
std::string plainWords(const std::string& message) {
    const std::size_t position = message.find("column ");
    const std::size_t colon = message.find(": ", position == std::string::npos ? 0 : position);
    const std::size_t from = colon == std::string::npos ? 0 : colon + 2;
    // What was read last may be anything, a private contact too.
    return message.substr(from, message.find("; last read", from) - from);
}

// Builds the value, refusing what the library would let pass.
class Builder : public nlohmann::json_sax<Json> {
public:
    enum class Refusal { none, syntax, depth, repeatedName, range };

    // `sink` may be null; then the value is built as a whole.
    explicit Builder(const ItemSink* sink) : m_sink(sink) {}

    bool null() override { return put(nullptr); }
    bool boolean(bool value) override { return put(value); }
    bool number_integer(number_integer_t value) override { return put(value); }
    bool number_unsigned(number_unsigned_t value) override { return put(value); }
    bool number_float(number_float_t value, const string_t&) override { return put(value); }
    bool string(string_t& value) override { return put(std::move(value)); }
    bool binary(binary_t&) override { return false; }
    bool start_object(std::size_t) override { return open(Json::object()); }
    bool start_array(std::size_t) override { return open(Json::array()); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }

    bool key(string_t& name) override {
        Json::object_t& object = m_open.back()->get_ref<Json::object_t&>();
        const auto [at, fresh] = object.emplace(std::move(name), nullptr);
        m_member = &at->second;
        m_memberIsList = m_open.size() == 1 && at->first == "records";
        if (!fresh)
            refuse(Refusal::repeatedName, at->first);
        return fresh;
    }

    bool parse_error(std::size_t position, const std::string&,
                     const nlohmann::detail::exception& error) override {
        constexpr int numberOverflow = 406;
        m_offset = position > 0 ? position - 1 : 0;
        refuse(error.id == numberOverflow ? Refusal::range : Refusal::syntax,
               plainWords(error.what()));
        return false;
    }

    Json take() { return std::move(m_root); }
    Refusal refusal() const { return m_refusal; }
    const std::string& detail() const { return m_detail; }
    std::size_t offset() const { return m_offset; }

private:
    void refuse(Refusal refusal, std::string detail) {
        m_refusal = refusal;
        m_detail = std::move(detail);
    }

    template <class T>
    bool put(T&& value) {
        Json& target = slot();
        target = std::forward<T>(value);
        handOver(target);
        return true;
    }

    // A whole item of the list goes to the sink.
    void handOver(Json& item) {
        if (m_list == nullptr || m_open.empty() || m_open.back() != m_list)
            return;
        (*m_sink)(m_list == &m_root ? "" : "/records", m_list->size() - 1, std::move(item));
        item = nullptr;
    }

    Json& slot() {
        if (m_open.empty())
            return m_root;
        if (m_open.back()->is_array()) {
            Json::array_t& array = m_open.back()->get_ref<Json::array_t&>();
            array.emplace_back();
            return array.back();
        }
        return *m_member;
    }

    bool open(Json value) {
        if (m_open.size() >= static_cast<std::size_t>(deepestNesting)) {
            refuse(Refusal::depth, {});
            return false;
        }
        const bool isList = value.is_array() &&
                            (m_open.empty() ||
                             (m_open.size() == 1 && m_memberIsList && m_open.front()->is_object()));
        Json& target = slot();
        target = std::move(value);
        if (isList && m_sink != nullptr)
            m_list = &target;
        m_open.push_back(&target);
        return true;
    }

    bool close() {
        Json* closed = m_open.back();
        m_open.pop_back();
        if (closed == m_list)
            m_list = nullptr;
        else
            handOver(*closed);
        return true;
    }

    Json m_root;
    std::vector<Json*> m_open;  // values whose end has not come yet
    Json* m_member = nullptr;
    bool m_memberIsList = false;
    Json* m_list = nullptr;  // the list whose items go to the sink, while it is open
    const ItemSink* m_sink;
    Refusal m_refusal = Refusal::none;
    std::string m_detail;
    std::size_t m_offset = 0;
};

// Counts the newlines that a parser has gone past.
class CountingIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    CountingIterator(const char* at, std::size_t* offset) : m_at(at), m_offset(offset) {}
    reference operator*() const { return *m_at; }
    CountingIterator& operator++() {
        ++m_at;
        ++*m_offset;
        return *this;
    }
    CountingIterator operator++(int) {
        const CountingIterator before = *this;
        ++*this;
        return before;
    }
    friend bool operator==(const CountingIterator& a, const CountingIterator& b) {
        return a.m_at == b.m_at;
    }
    friend bool operator!=(const CountingIterator& a, const CountingIterator& b) {
        return !(a == b);
    }

private:
    const char* m_at;
    std::size_t* m_offset;
};

// Follows the events of the parser and notes where each wanted pointer begins.
class Locator : public nlohmann::json_sax<Json> {
public:
    using Offsets = std::unordered_map<std::string, std::optional<std::size_t>>;

    Locator(Offsets& wanted, const std::size_t& offset) : m_wanted(wanted), m_offset(offset) {}

    bool null() override { return value(); }
    bool boolean(bool) override { return value(); }
    bool number_integer(number_integer_t) override { return value(); }
    bool number_unsigned(number_unsigned_t) override { return value(); }
    bool number_float(number_float_t, const string_t&) override { return value(); }
    bool string(string_t&) override { return value(); }
    bool binary(binary_t&) override { return value(); }
    bool key(string_t& name) override {
        enterStep(pointerStep(name));
        return true;
    }
    bool start_object(std::size_t) override { return open(false); }
    bool start_array(std::size_t) override { return open(true); }
    bool end_object() override { return close(); }
    bool end_array() override { return close(); }
    bool parse_error(std::size_t, const std::string&, const nlohmann::detail::exception&) override {
        return false;
    }

private:
    struct Level {
        bool isArray;
        std::size_t pathLength;  // of the pointer around this level
        std::size_t index = 0;
    };

    bool value() {
        if (!m_levels.empty() && m_levels.back().isArray)
            enterStep(std::to_string(m_levels.back().index++));
        return true;
    }

    bool open(bool isArray) {
        value();
        m_levels.push_back({isArray, m_path.size()});
        return true;
    }

    bool close() {
        m_levels.pop_back();
        return true;
    }

    void enterStep(const std::string& step) {
        m_path.resize(m_levels.back().pathLength);
        m_path += '/';
        m_path += step;
        const auto wanted = m_wanted.find(m_path);
        // The last character read may lie behind a number already, on the next line.
        if (wanted != m_wanted.end() && !wanted->second)
            wanted->second = m_offset > 0 ? m_offset - 1 : 0;
    }

    Offsets& m_wanted;
    const std::size_t& m_offset;
    std::vector<Level> m_levels;
    std::string m_path;
};

}  // namespace

namespace {

Json parse(std::string_view text, const std::string& file, const ItemSink* sink) {
    if (const std::optional<std::size_t> at = invalidUtf8At(text))
        throw InputError(place(file, lineAt(text, *at)),
                         "byte " + std::to_string(*at + 1) + " is not UTF-8",
                         "Save the file as UTF-8.");
    // The parser takes a zero byte for the end and would drop what follows it.
    if (const std::size_t at = text.find('\0'); at != std::string_view::npos)
        throw InputError(place(file, lineAt(text, at)),
                         "byte " + std::to_string(at + 1) + " is a zero byte, which no JSON holds",
                         "Save the file as UTF-8, not UTF-16, and without padding.");
    std::size_t offset = 0;
    Builder builder(sink);
    const bool parsed =
        Json::sax_parse(CountingIterator(text.data(), &offset),
                        CountingIterator(text.data() + text.size(), &offset), &builder);
    if (parsed)
        return builder.take();
    switch (builder.refusal()) {
        case Builder::Refusal::depth:
            throw InputError(
                place(file, lineAt(text, offset)),
                "it is nested deeper than " + std::to_string(deepestNesting) + " levels",
                "No record is; check the file.");
        case Builder::Refusal::repeatedName:
            throw InputError(
                place(file, lineAt(text, offset)),
                "the name \"" + excerpt(builder.detail()) + "\" stands twice in one object",
                "Keep one of the two.");
        case Builder::Refusal::range:
            throw InputError(place(file, lineAt(text, builder.offset())),
                             "a number is too large to be held", "Correct the number.");
        case Builder::Refusal::syntax:
        case Builder::Refusal::none:
            break;
    }
    throw InputError(place(file, lineAt(text, builder.offset())),
                     "it is not JSON: " + printable(builder.detail()),
                     "Mend the file at that line.");
}

}  // namespace

Json parseJson(std::string_view text, const std::string& file) {
    return parse(text, file, nullptr);
}

Json parseJsonList(std::string_view text, const std::string& file, const ItemSink& sink) {
    return parse(text, file, &sink);
}

std::vector<int> linesOf(std::string_view text, const std::vector<std::string>& pointers) {
    Locator::Offsets wanted;
    const auto around = [](const std::string& pointer) {
        return pointer.substr(0, pointer.empty() ? 0 : pointer.rfind('/'));
    };
    for (std::string pointer : pointers)
        for (; !pointer.empty() && wanted.emplace(pointer, std::nullopt).second;)
            pointer = around(pointer);
    std::size_t offset = 0;
    Locator locator(wanted, offset);
    Json::sax_parse(CountingIterator(text.data(), &offset),
                    CountingIterator(text.data() + text.size(), &offset), &locator);
    LineCounter lines(text);
    std::vector<int> found;
    for (std::string pointer : pointers) {
        while (!pointer.empty() && !wanted[pointer])
            pointer = around(pointer);
        found.push_back(lines.at(pointer.empty() ? 0 : *wanted[pointer]));
    }
    return found;
}

std::string pointerStep(std::string_view name) {
    std::string step;
    for (const char c : name) {
        if (c == '~')
            step += "~0";
        else if (c == '/')
            step += "~1";
        else
            step += c;
    }
    return step;
}

}  // namespace rackbook
