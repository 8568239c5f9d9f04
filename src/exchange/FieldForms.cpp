#include "exchange/FieldForms.h"

#include <algorithm>
#include <array>

#include "base/Numbers.h"
#include "records/FieldTraits.h"
#include "records/Record.h"

namespace rackbook {

namespace {

constexpr long long mostParts = 500;

class FormVisitor {
public:
    template <class T>
    void operator()(const char* name, const T&) {
        KindField field;
        field.name = name;
        describe<T>(field);
        m_fields.push_back(std::move(field));
    }

    std::vector<KindField> take() { return std::move(m_fields); }

private:
    template <class T>
    static void describe(KindField& field) {
        if constexpr (IsOptional<T>::value) {
            describe<typename T::value_type>(field);
        } else if constexpr (IsVector<T>::value) {
            field.isList = true;
            describe<typename T::value_type>(field);
        } else if constexpr (IsRef<T>::value) {
            field.form = FieldForm::reference;
            field.target = IsRef<T>::Target::kind;
        } else if constexpr (std::is_enum_v<T>) {
            field.form = FieldForm::word;
            field.words = enumNames<T>();
        } else if constexpr (std::is_same_v<T, EdtfDate>) {
            field.form = FieldForm::date;
        } else if constexpr (std::is_same_v<T, bool>) {
            field.form = FieldForm::yesNo;
        } else if constexpr (std::is_same_v<T, int>) {
            field.form = FieldForm::whole;
        } else if constexpr (std::is_same_v<T, double>) {
            field.form = FieldForm::number;
        } else if constexpr (HasFields<T>::value) {
            field.form = FieldForm::parts;
            FormVisitor inner;
            const T sample{};
            T::fields(sample, inner);
            field.parts = inner.take();
        }
    }

    std::vector<KindField> m_fields;
};

using FieldsOfKinds = std::array<std::vector<KindField>, std::variant_size_v<Record>>;

FieldsOfKinds fieldsOfAllKinds() {
    FieldsOfKinds all;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        FormVisitor visitor;
        const R sample{};
        R::fields(sample, visitor);
        all[static_cast<std::size_t>(R::kind)] = visitor.take();
    });
    return all;
}

const KindField* named(const std::vector<KindField>& fields, const std::string& name) {
    const auto found = std::find_if(fields.begin(), fields.end(),
                                    [&](const KindField& field) { return field.name == name; });
    return found == fields.end() ? nullptr : &*found;
}

}  // namespace

const std::vector<KindField>& fieldsOf(RecordKind kind) {
    static const FieldsOfKinds all = fieldsOfAllKinds();
    return all[static_cast<std::size_t>(kind)];
}

std::optional<FoundField> fieldAt(RecordKind kind, const std::string& path) {
    const std::size_t dot = path.find('.');
    const KindField* field = named(fieldsOf(kind), path.substr(0, dot));
    if (field == nullptr || (field->form == FieldForm::parts) != (dot != std::string::npos))
        return std::nullopt;
    if (dot == std::string::npos)
        return FoundField{field, field->name, std::nullopt, {}};
    const std::size_t second = path.find('.', dot + 1);
    if (second == std::string::npos)
        return std::nullopt;
    const std::optional<long long> number = parseWhole(path.substr(dot + 1, second - dot - 1));
    const KindField* inner = named(field->parts, path.substr(second + 1));
    if (!number || *number < 1 || *number > mostParts || inner == nullptr)
        return std::nullopt;
    return FoundField{inner, field->name, static_cast<std::size_t>(*number - 1), inner->name};
}

std::vector<std::string> fieldPaths(RecordKind kind) {
    std::vector<std::string> paths;
    for (const KindField& field : fieldsOf(kind)) {
        if (field.form != FieldForm::parts)
            paths.push_back(field.name);
        for (const KindField& part : field.parts)
            paths.push_back(field.name + ".1." + part.name);
    }
    return paths;
}

}  // namespace rackbook
