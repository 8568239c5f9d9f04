#include "LinkedArtFacts.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <sstream>
#include <string_view>

namespace rackbook::test {

namespace {

// "name=forms": forms are parted by |, in brackets where the member is a list of such. A form is
// text, uri, number, date-time or a row of the table; "XRef" is a reference to an X.
struct Class {
    const char* type;
    const char* members;
    const char* required;
};

constexpr const char* named = "identified_by=[Name|Identifier] classified_as=[Type] ";
constexpr const char* told = "referred_to_by=[Statement|DigitalObjectRef|LinguisticObjectRef] ";
constexpr const char* happened =
    "took_place_at=[PlaceRef] timespan=TimeSpan caused_by=[EventRef|ActivityRef] "
    "part_of=EventRef|ActivityRef ";
constexpr const char* done =
    "carried_out_by=[PersonRef|GroupRef] used_specific_object=[HumanMadeObjectRef|SetRef] "
    "influenced_by=[HumanMadeObjectRef|PersonRef|GroupRef] technique=[Type] ";
constexpr const char* top =
    "@context=context id=uri representation=[Depiction] subject_of=[DigitalObjectRef] ";
constexpr const char* thing = "member_of=[SetRef] dimension=[Dimension] ";

std::map<std::string, std::vector<const char*>> membersTable() {
    return {
        {"Name", {named, "content=text language=[LanguageRef] part=[Name]"}},
        {"Identifier", {named, "content=text part=[Identifier] assigned_by=[Assignment]"}},
        {"Statement", {named, "content=text language=[LanguageRef] format=text"}},
        {"TimeSpan",
         {named,
          "begin_of_the_begin=date-time end_of_the_begin=date-time "
          "begin_of_the_end=date-time end_of_the_end=date-time duration=Dimension"}},
        {"Dimension",
         {named,
          "value=number lower_value_limit=number upper_value_limit=number "
          "unit=MeasurementUnitRef assigned_by=[Assignment]"}},
        {"Type", {"id=uri ", named}},
        {"Activity", {named, told, happened, done}},
        {"Assignment", {named, told, happened, done}},
        {"Production", {named, told, happened, done, "part=[Production]"}},
        {"Creation", {named, told, happened, done}},
        {"Destruction", {named, told, happened}},
        {"Depiction", {named, told, "digitally_shown_by=[DigitalObjectRef]"}},
        {"Part",
         {named,
          "referred_to_by=[Statement|LinguisticObjectRef] dimension=[Dimension] "
          "made_of=[MaterialRef] part=[Part] shows=[VisualItemRef] "
          "carries=[LinguisticObjectRef] representation=[Depiction]"}},
        {"HumanMadeObject",
         {top, named, told, thing,
          "equivalent=[HumanMadeObjectRef] made_of=[MaterialRef] part_of=HumanMadeObjectRef "
          "part=[Part] current_owner=[PersonRef|GroupRef] "
          "current_custodian=[PersonRef|GroupRef] "
          "current_permanent_custodian=[PersonRef|GroupRef] current_location=PlaceRef "
          "used_for=[Activity] shows=[VisualItemRef] carries=[LinguisticObjectRef] "
          "produced_by=Production destroyed_by=Destruction"}},
        {"Set", {top, named, told, thing, "equivalent=[SetRef] created_by=Creation"}},
        {"VisualItem",
         {top, named, told, thing,
          "equivalent=[VisualItemRef] part_of=VisualItemRef digitally_shown_by=[DigitalObjectRef] "
          "shown_by=[HumanMadeObjectRef] created_by=Creation used_for=[Activity]"}},
        {"LinguisticObject",
         {top, named, told, thing,
          "equivalent=[LinguisticObjectRef] part_of=LinguisticObjectRef content=text format=text "
          "language=[LanguageRef] digitally_carried_by=[DigitalObjectRef] "
          "carried_by=[HumanMadeObjectRef] created_by=Creation used_for=[Activity]"}},
        {"DigitalObject",
         {top, named, told, thing,
          "equivalent=[DigitalObjectRef] format=text access_point=[DigitalObjectRef] "
          "digitally_carries=[LinguisticObjectRef] digitally_shows=[VisualItemRef] "
          "used_for=[Activity] created_by=Creation"}},
        {"Person", {top, named, told, "equivalent=[PersonRef] member_of=[GroupRef]"}},
        {"Group", {top, named, told, "equivalent=[GroupRef] member_of=[GroupRef]"}},
        {"Place", {top, named, told, "equivalent=[PlaceRef] member_of=[SetRef]"}},
    };
}

// Rows whose type is another word than their name.
const std::map<std::string, std::string> otherTypes = {{"Statement", "LinguisticObject"},
                                                       {"Assignment", "AttributeAssignment"},
                                                       {"Depiction", "VisualItem"},
                                                       {"Part", "HumanMadeObject"}};

const std::map<std::string, std::vector<std::string>> required = {{"Name", {"content"}},
                                                                  {"Identifier", {"content"}},
                                                                  {"Statement", {"content"}},
                                                                  {"Dimension", {"value", "unit"}},
                                                                  {"Type", {"id"}}};

bool isAllOf(std::string_view text, std::string_view marks) {
    return std::all_of(text.begin(), text.end(), [&](unsigned char c) {
        return (c < 0x80 && std::isalnum(c)) || marks.find(static_cast<char>(c)) != marks.npos;
    });
}

// RFC 3986: a scheme, a colon and characters that a URI may hold.
bool isUri(const std::string& text) {
    const std::size_t colon = text.find(':');
    return colon != std::string::npos && colon > 0 && std::isalpha(text[0]) &&
           isAllOf(text.substr(0, colon), "+.-") && colon + 1 < text.size() &&
           isAllOf(text.substr(colon + 1), "._~:/?#[]@!$&'()*+,;=%-");
}

// RFC 3339; 9 stands for a digit.
bool hasShape(std::string_view text, std::string_view shape) {
    return std::equal(text.begin(), text.end(), shape.begin(), shape.end(), [](char c, char form) {
        return form == '9' ? c >= '0' && c <= '9' : c == form;
    });
}

bool isDateTime(const std::string& text) {
    const std::string when = text.substr(0, 19);
    const std::string shift = text.size() > 19 ? text.substr(19) : "";
    if (!hasShape(when, "9999-99-99T99:99:99") ||
        !(shift == "Z" || hasShape(shift, "+99:99") || hasShape(shift, "-99:99")))
        return false;
    const auto number = [&](std::size_t at) { return std::stoi(text.substr(at, 2)); };
    const auto lies = [&](std::size_t at, int least, int most) {
        return number(at) >= least && number(at) <= most;
    };
    return lies(5, 1, 12) && lies(8, 1, 31) && lies(11, 0, 23) && lies(14, 0, 59) &&
           lies(17, 0, 59) && (shift == "Z" || (lies(20, 0, 23) && lies(23, 0, 59)));
}

bool isOfForm(const std::string& text, const std::string& form) {
    if (form == "uri")
        return isUri(text);
    if (form == "date-time")
        return isDateTime(text);
    return form == "text" || text == "https://linked.art/ns/v1/linked-art.json";
}

bool isReference(const std::string& row) {
    return row.size() > 3 && row.compare(row.size() - 3, 3, "Ref") == 0;
}

class Checker {
public:
    std::vector<std::string> broken;

    void checkDocument(const Json& document) {
        static const std::vector<std::string> classes = {
            "HumanMadeObject", "Set",   "VisualItem", "LinguisticObject", "DigitalObject", "Person",
            "Group",           "Place", "Type"};
        const std::string type =
            document.is_object() && document.contains("type") && document["type"].is_string()
                ? document["type"].get<std::string>()
                : "";
        if (std::find(classes.begin(), classes.end(), type) == classes.end())
            return tell("", "is of no class that a document can have");
        for (const char* member : {"@context", "id", "_label"})
            if (!document.contains(member))
                tell("", std::string("has no ") + member);
        checkObject(document, type, "", type == "Type");
    }

private:
    void tell(const std::string& where, const std::string& what) {
        broken.push_back(where + ": " + what);
    }

    static std::map<std::string, std::string> membersOf(const std::string& row) {
        static const auto table = membersTable();
        std::string text = "type=text _label=text ";
        if (isReference(row))
            text += "id=uri";
        else
            for (const char* part : table.at(row))
                text += part;
        std::istringstream words(text);
        std::map<std::string, std::string> members;
        for (std::string word; words >> word;)
            members[word.substr(0, word.find('='))] = word.substr(word.find('=') + 1);
        return members;
    }

    static std::string typeOf(const std::string& row) {
        const auto other = otherTypes.find(row);
        if (other != otherTypes.end())
            return other->second;
        return isReference(row) ? row.substr(0, row.size() - 3) : row;
    }

    void checkObject(const Json& value, const std::string& row, const std::string& where,
                     bool mayHaveContext = false) {
        if (!value.is_object())
            return tell(where, "is no object");
        if (!value.contains("type") || value["type"] != typeOf(row))
            tell(where, "is no " + typeOf(row));
        const auto needs = required.find(row);
        if (needs != required.end())
            for (const std::string& member : needs->second)
                if (!value.contains(member))
                    tell(where, "has no " + member);
        if (isReference(row) && !value.contains("id"))
            tell(where, "has no id");
        std::map<std::string, std::string> members = membersOf(row);
        if (mayHaveContext)
            members["@context"] = "context";
        for (const auto& [name, item] : value.items()) {
            const auto known = members.find(name);
            if (known == members.end())
                tell(where + "/" + name, "is no member of " + row);
            else
                checkMember(item, known->second, where + "/" + name);
        }
    }

    void checkMember(const Json& value, const std::string& forms, const std::string& where) {
        if (forms.front() != '[')
            return checkForms(value, forms, where);
        if (!value.is_array())
            return tell(where, "is no list");
        for (std::size_t i = 0; i < value.size(); ++i)
            checkForms(value[i], forms.substr(1, forms.size() - 2),
                       where + "/" + std::to_string(i));
    }

    // Any of the forms will do; what is wrong is told of the one whose type it says.
    void checkForms(const Json& value, const std::string& forms, const std::string& where) {
        std::istringstream words(forms);
        std::vector<std::string> all;
        for (std::string form; std::getline(words, form, '|');) {
            Checker tried;
            tried.checkForm(value, form, where);
            if (tried.broken.empty())
                return;
            all.insert(all.end(), tried.broken.begin(), tried.broken.end());
        }
        broken.insert(broken.end(), all.begin(), all.end());
    }

    void checkForm(const Json& value, const std::string& form, const std::string& where) {
        if (form == "number") {
            if (!value.is_number())
                tell(where, "is no number");
            return;
        }
        static const std::vector<std::string> texts = {"text", "context", "uri", "date-time"};
        if (std::find(texts.begin(), texts.end(), form) == texts.end())
            return checkObject(value, form, where);
        if (!value.is_string())
            tell(where, "is no text");
        else if (!isOfForm(value.get<std::string>(), form))
            tell(where, "is no " + form);
    }
};

}  // namespace

std::vector<std::string> brokenLinkedArtRules(const Json& document) {
    Checker checker;
    checker.checkDocument(document);
    return checker.broken;
}

}  // namespace rackbook::test
