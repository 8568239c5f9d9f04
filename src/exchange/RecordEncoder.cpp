#include <charconv>

#include "exchange/RecordCodec.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

// Appends JSON text field by field: records are written far more often than any other JSON, and
// building a value tree first would double the cost of an intake.
class Encoder {
public:
    explicit Encoder(std::string& text) : m_text(text) {}

    template <class T>
    void operator()(const char* name, const T& value) {
        if (isLeftOut(value))
            return;
        m_text += m_first ? "\"" : ",\"";
        m_first = false;
        m_text += name;
        m_text += "\":";
        put(value);
    }

    void begin(RecordKind kind) {
        m_text += "{\"record\":\"";
        m_text += textOf(kind);
        m_text += '"';
        m_first = false;
    }

private:
    template <class T>
    static bool isLeftOut(const std::optional<T>& value) {
        return !value;
    }
    template <class T>
    static bool isLeftOut(const std::vector<T>& value) {
        return value.empty();
    }
    template <class T>
    static bool isLeftOut(const T& value) {
        if constexpr (std::is_same_v<T, bool>)
            return !value;
        else
            return false;
    }

    void put(bool value) { m_text += value ? "true" : "false"; }
    void put(int value) { m_text += std::to_string(value); }
    void put(double value) {
        // Hashes in books are of these bytes: whichever form of the number is shortest, 2e+05 too.
        char text[64];
        m_text.append(text, std::to_chars(text, text + sizeof text, value).ptr);
    }
    void put(const EdtfDate& value) { put(value.text()); }

    void put(const std::string& value) {
        m_text += '"';
        for (const char c : value) {
            const auto byte = static_cast<unsigned char>(c);
            if (c == '"' || c == '\\') {
                m_text += '\\';
                m_text += c;
            } else if (byte < 0x20) {
                static constexpr char digits[] = "0123456789abcdef";
                m_text += "\\u00";
                m_text += digits[byte >> 4];
                m_text += digits[byte & 0xF];
            } else {
                m_text += c;
            }
        }
        m_text += '"';
    }

    template <class R>
    void put(const Ref<R>& value) {
        put(value.id);
    }

    template <class T>
    void put(const std::optional<T>& value) {
        put(*value);
    }

    template <class T>
    void put(const std::vector<T>& items) {
        m_text += '[';
        bool first = true;
        for (const T& item : items) {
            if (!first)
                m_text += ',';
            first = false;
            put(item);
        }
        m_text += ']';
    }

    template <class T, std::enable_if_t<std::is_enum_v<T> || HasFields<T>::value, int> = 0>
    void put(const T& value) {
        if constexpr (std::is_enum_v<T>) {
            put(std::string(textOf(value)));
        } else {
            m_text += '{';
            Encoder inner(m_text);
            T::fields(value, inner);
            m_text += '}';
        }
    }

    std::string& m_text;
    bool m_first = true;
};

// Of the record itself; parts in it are written whole.
struct SomeFields {
    Encoder& encoder;
    const std::function<bool(std::string_view)>& isLeftOut;

    template <class T>
    void operator()(const char* name, const T& value) {
        if (!isLeftOut(name))
            encoder(name, value);
    }
};

// `narrowed` gives the visitor of the fields from the encoder.
template <class Narrowed>
std::string encoded(const Record& record, Narrowed&& narrowed) {
    std::string text;
    text.reserve(256);
    std::visit(
        [&](const auto& r) {
            using R = std::decay_t<decltype(r)>;
            Encoder encoder(text);
            encoder.begin(R::kind);
            auto&& visitor = narrowed(encoder);
            R::fields(r, visitor);
        },
        record);
    text += '}';
    return text;
}

}  // namespace

std::string encodeRecord(const Record& record) {
    return encoded(record, [](Encoder& encoder) -> Encoder& { return encoder; });
}

std::string encodeRecordWithout(const Record& record,
                                const std::function<bool(std::string_view)>& isLeftOut) {
    return encoded(record, [&](Encoder& encoder) { return SomeFields{encoder, isLeftOut}; });
}

}  // namespace rackbook
