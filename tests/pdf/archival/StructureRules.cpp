// Rules about tags, for files that have them (6.7; ISO 32000-1, 14.7 and 14.8).
#include <map>
#include <set>

#include "ArchivalRules.h"

namespace rackbook {

namespace {

using nlohmann::json;

// ISO 32000-1, 14.8.4.
const std::set<std::string> standardTypes = {
    "/Document", "/Part",    "/Art",   "/Sect",      "/Div",     "/BlockQuote", "/Caption",
    "/TOC",      "/TOCI",    "/Index", "/NonStruct", "/Private", "/P",          "/H",
    "/H1",       "/H2",      "/H3",    "/H4",        "/H5",      "/H6",         "/L",
    "/LI",       "/Lbl",     "/LBody", "/Table",     "/TR",      "/TH",         "/TD",
    "/THead",    "/TBody",   "/TFoot", "/Span",      "/Quote",   "/Note",       "/Reference",
    "/BibEntry", "/Code",    "/Link",  "/Annot",     "/Ruby",    "/RB",         "/RT",
    "/RP",       "/Warichu", "/WT",    "/WP",        "/Figure",  "/Formula",    "/Form"};

class StructureCheck {
public:
    explicit StructureCheck(ArchivalCase& checked)
        : m_checked(checked),
          m_file(checked.file),
          m_root(m_file.at(m_file.catalog(), "/StructTreeRoot")) {}

    void run() {
        if (m_file.at(m_file.at(m_file.catalog(), "/MarkInfo"), "/Marked") != true)
            m_checked.add("6.7.2", "there are tags, but the file is not marked");
        listParents(m_file.at(m_root, "/ParentTree"), 0);
        const json& rootReference = m_file.raw(m_file.catalog(), "/StructTreeRoot");
        visitKids(m_root, rootReference, "", 0);
        checkMarkedContent();
        checkWidgets();
    }

private:
    void listParents(const json& node, int depth) {
        if (depth > 32)
            return;
        const json& list = m_file.at(node, "/Nums");
        for (std::size_t i = 0; i + 1 < list.size(); i += 2)
            m_parents[list[i].get<int>()] = list[i + 1];
        for (const json& kid : m_file.at(node, "/Kids"))
            listParents(kid, depth + 1);
    }

    void visitKids(const json& node, const json& reference, const std::string& page, int depth) {
        if (depth > 64)
            return m_checked.add("32000-1, 14.7.2", "tags go deeper than 64");
        const json& kids = m_file.raw(node, "/K");
        const json& list = m_file.resolved(kids);
        if (!list.is_array())
            return visitKid(kids, reference, page, depth);
        for (const json& kid : list)
            visitKid(kid, reference, page, depth);
    }

    void visitKid(const json& kid, const json& parent, const std::string& page, int depth) {
        if (kid.is_number_integer())
            return claim(page, kid.get<int>(), parent);
        const json& known = m_file.resolved(kid);
        if (known.is_null())
            return;
        const json& ownPage = m_file.raw(kid, "/Pg");
        const std::string where = isReference(ownPage) ? ownPage.get<std::string>() : page;
        const json& type = m_file.at(kid, "/Type");
        if (type == "/MCR")
            return claim(where, m_file.at(kid, "/MCID").get<int>(), parent);
        if (type == "/OBJR") {
            const json& shown = m_file.raw(kid, "/Obj");
            if (isReference(shown))
                m_shown[shown.get<std::string>()] = parent;
            return;
        }
        checkElement(kid, parent);
        visitKids(known, kid, where, depth + 1);
    }

    void checkElement(const json& element, const json& parent) {
        const std::string where = "tag " + element.dump();
        if (m_file.raw(element, "/P") != parent)
            m_checked.add("32000-1, 14.7.2", where + ": its parent is another");
        const json& type = m_file.at(element, "/S");
        const json& mapped = type.is_string()
                                 ? m_file.at(m_file.at(m_root, "/RoleMap"), type.get<std::string>())
                                 : type;
        const json& meant = mapped.is_null() ? type : mapped;
        if (!meant.is_string() || standardTypes.count(meant.get<std::string>()) == 0)
            m_checked.add("6.7.3.4", where + ": the type " + type.dump() + " is not known");
        if (meant == "/Figure" && textOf(m_file.at(element, "/Alt")).empty() &&
            textOf(m_file.at(element, "/ActualText")).empty())
            m_checked.add("6.7.5", where + ": a figure without words for it");
    }

    void claim(const std::string& page, int mcid, const json& parent) {
        if (!m_claims.emplace(std::make_pair(page, mcid), parent).second)
            m_checked.add("32000-1, 14.7.4.2", "marked content " + std::to_string(mcid) +
                                                   " of page " + page + " has two tags");
    }

    // Each piece of marked content is in the tree and in the table of parents, and nothing is seen
    // that is neither tagged nor an artifact.
    void checkMarkedContent() {
        static const std::set<std::string> painting = {"Tj", "TJ", "'",  "\"", "S",  "s",  "f", "F",
                                                       "f*", "B",  "B*", "b",  "b*", "sh", "BI"};
        std::set<int> loose;
        std::set<std::pair<std::string, int>> seen;
        for (const ContentStep& step : m_checked.steps) {
            const std::string& page = m_file.pages()[static_cast<std::size_t>(step.page) - 1];
            if (step.mcid >= 0 && seen.emplace(page, step.mcid).second)
                checkParent(page, step.mcid);
            if (painting.count(step.operation.name) > 0 && step.mcid < 0 && !step.artifact &&
                !step.inAnnotation)
                loose.insert(step.page);
            if (step.mcid >= 0 && step.artifact)
                m_checked.add("32000-1, 14.8.2.2",
                              "page " + std::to_string(step.page) + ": an artifact inside a tag");
        }
        for (const int page : loose)
            m_checked.add("6.7.3.2", "page " + std::to_string(page) +
                                         ": something is neither tagged nor an artifact");
        for (const auto& [claimed, parent] : m_claims)
            if (seen.count(claimed) == 0)
                m_checked.add("32000-1, 14.7.4.2",
                              "the tag " + parent.dump() + " names marked content " +
                                  std::to_string(claimed.second) + ", which its page lacks");
    }

    // A field of a form is in the tree as one, and the table of parents leads back there
    // (ISO 32000-1, 14.7.4.4 and 14.8.4.5).
    void checkWidgets() {
        for (const std::string& page : m_file.pages())
            for (const json& annotation : m_file.at(page, "/Annots")) {
                if (!isReference(annotation) || m_file.at(annotation, "/Subtype") != "/Widget")
                    continue;
                const std::string where = "the field " + annotation.get<std::string>();
                const auto shown = m_shown.find(annotation.get<std::string>());
                if (shown == m_shown.end()) {
                    m_checked.add("32000-1, 14.7.4.3", where + " is in no tag");
                    continue;
                }
                if (m_file.at(shown->second, "/S") != "/Form")
                    m_checked.add("32000-1, 14.8.4.5", where + " is in a tag that is no Form");
                const json& number = m_file.at(annotation, "/StructParent");
                const auto parent =
                    m_parents.find(number.is_number_integer() ? number.get<int>() : -1);
                if (parent == m_parents.end() || parent->second != shown->second)
                    m_checked.add("32000-1, 14.7.4.4", where + " has another parent in the table");
            }
    }

    void checkParent(const std::string& page, int mcid) {
        const std::string where = "marked content " + std::to_string(mcid) + " of page " + page;
        const auto claimed = m_claims.find({page, mcid});
        if (claimed == m_claims.end())
            return m_checked.add("32000-1, 14.7.4.2", where + " is in no tag");
        const json& number = m_file.at(page, "/StructParents");
        const auto parents = m_parents.find(number.is_number_integer() ? number.get<int>() : -1);
        const json* list = parents == m_parents.end() ? nullptr : &m_file.resolved(parents->second);
        if (list == nullptr || !list->is_array() ||
            static_cast<std::size_t>(mcid) >= list->size() ||
            (*list)[static_cast<std::size_t>(mcid)] != claimed->second)
            m_checked.add("32000-1, 14.7.4.4", where + " has another parent in the table");
    }

    ArchivalCase& m_checked;
    const PdfJson& m_file;
    const json& m_root;
    std::map<int, json> m_parents;
    std::map<std::pair<std::string, int>, json> m_claims;
    std::map<std::string, json> m_shown;  // tags of annotations, by reference
};

}  // namespace

void checkStructure(ArchivalCase& checked) {
    if (checked.file.at(checked.file.catalog(), "/StructTreeRoot").is_object())
        return StructureCheck(checked).run();
    if (checked.file.at(checked.file.at(checked.file.catalog(), "/MarkInfo"), "/Marked") == true)
        checked.add("6.7.3.3", "the file is marked as tagged and has no tags");
}

}  // namespace rackbook
