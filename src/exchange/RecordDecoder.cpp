#include "exchange/RecordDecoder.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Text.h"
#include "exchange/RecordCodec.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

bool isIdCharacter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' ||
           c == '_' || c == '-' || c == '/';
}

class Decoder {
public:
    Decoder(const Json& object, std::string pointer, Rules rules,
            std::vector<Complaint>& complaints)
        : m_object(object),
          m_pointer(std::move(pointer)),
          m_rules(rules),
          m_complaints(complaints) {}

    template <class T>
    void operator()(const char* name, T& value) {
        const auto found = m_object.find(name);
        if (found == m_object.end())
            return;
        m_name = name;
        m_index = -1;
        get(*found, value);
        // Fields have no place of their own for an id; it is the one text named so.
        if constexpr (std::is_same_v<T, std::string>)
            if (std::string_view(name) == "id")
                checkId(value);
    }

private:
    std::string here() const {
        std::string pointer = m_pointer + "/" + m_name;
        if (m_index >= 0)
            pointer += "/" + std::to_string(m_index);
        return pointer;
    }

    void complain(std::string what, std::string remedy) {
        m_complaints.push_back({here(), std::move(what), std::move(remedy)});
    }

    void checkId(const std::string& id) {
        if (!std::all_of(id.begin(), id.end(), isIdCharacter))
            complain("\"" + excerpt(id) + "\" is not an id",
                     "Use letters without accents, digits and . _ - / only.");
    }

    void get(const Json& json, std::string& value) {
        value = normalised(json.get_ref<const std::string&>());
        if (m_rules == Rules::none)
            return;
        if (controlCharacterIn(value))
            complain("the text holds a control character", "Take it out.");
        else if (isBlank(value))
            complain("the text is blank", "Write something, or leave the field out.");
    }
    void get(const Json& json, bool& value) { value = json.get<bool>(); }
    void get(const Json& json, int& value) { value = json.get<int>(); }
    void get(const Json& json, double& value) {
        // Adding 0 turns a negative zero into the zero that it means.
        value = json.get<double>() + 0.0;
    }

    void get(const Json& json, EdtfDate& value) {
        try {
            value = EdtfDate::parse(json.get_ref<const std::string&>());
        } catch (const InputError& error) {
            m_complaints.push_back({here(), error.what(), {}});
        }
    }

    template <class R>
    void get(const Json& json, Ref<R>& value) {
        value.id = json.get_ref<const std::string&>();
        checkId(value.id);
    }

    template <class T>
    void get(const Json& json, std::optional<T>& value) {
        if constexpr (std::is_same_v<T, EdtfDate>)
            value = EdtfDate::ofMinute(0);
        else
            value = T{};
        get(json, *value);
    }

    template <class T>
    void get(const Json& json, std::vector<T>& items) {
        items.resize(json.size());
        for (std::size_t i = 0; i < items.size(); ++i) {
            m_index = static_cast<int>(i);
            get(json[i], items[i]);
        }
    }

    template <class T, std::enable_if_t<std::is_enum_v<T> || HasFields<T>::value, int> = 0>
    void get(const Json& json, T& value) {
        if constexpr (std::is_enum_v<T>) {
            const std::string& text = json.get_ref<const std::string&>();
            if (const std::optional<T> known = enumFrom<T>(text))
                value = *known;
            else
                complain("\"" + excerpt(text) + "\" is none of its words",
                         "Use one of " + joined(enumNames<T>(), " or ") + ".");
        } else {
            Decoder inner(json, here(), m_rules, m_complaints);
            T::fields(value, inner);
        }
    }

    const Json& m_object;
    std::string m_pointer;
    Rules m_rules;
    std::vector<Complaint>& m_complaints;
    const char* m_name = "";
    int m_index = -1;
};

}  // namespace

Decoded decodeObject(const Json& object, RecordKind kind, Rules rules) {
    Decoded decoded;
    withRecordType(kind, [&](auto tag) {
        typename decltype(tag)::Type record{};
        Decoder decoder(object, {}, rules, decoded.complaints);
        decltype(tag)::Type::fields(record, decoder);
        decoded.record = std::move(record);
    });
    if (rules == Rules::ofIntake && decoded.complaints.empty())
        decoded.complaints = complaintsAbout(decoded.record);
    return decoded;
}

Record decodeRecord(std::string_view payload) {
    const std::string where = "a journal entry";
    try {
        const Json object = parseJson(payload, where);
        const std::optional<RecordKind> kind =
            enumFrom<RecordKind>(object.at("record").get_ref<const std::string&>());
        if (!kind)
            throw InputError(where, "its record is of an unknown kind", "Use a newer Rackbook.");
        Decoded decoded = decodeObject(object, *kind, Rules::none);
        if (!decoded.complaints.empty())
            throw InputError(where, decoded.complaints.front().what,
                             decoded.complaints.front().remedy);
        return std::move(decoded.record);
    } catch (const Json::exception&) {
        throw InputError(where, "its record cannot be read",
                         "Run rackbook verify to see which entry it is.");
    }
}

}  // namespace rackbook
