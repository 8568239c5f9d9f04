#include "exchange/TableProposal.h"

#include <algorithm>
#include <set>

#include "exchange/FieldForms.h"
#include "exchange/FitId.h"
#include "exchange/ProposalColumns.h"
#include "exchange/TableHeadings.h"

namespace rackbook {

namespace {

constexpr const char* unfilled = "?";
constexpr std::size_t mostWords = 30;

Tree fixedTree(const std::string& text) {
    return Tree::object().set("fixed", text);
}
Tree patternTree(const std::string& text) {
    return Tree::object().set("pattern", text);
}

class Proposer {
public:
    Proposer(const TableFile& table, RecordKind kind, const std::vector<std::string>& needed)
        : m_table(table), m_kind(kind), m_needed(needed), m_columns(table, kind) {}

    TableProposal run() {
        m_proposal.matched = m_columns.matched();
        m_proposal.passedOver = m_columns.passedOver();
        Tree records = partyRecords();
        m_pointer = "/records/" + std::to_string(records.asArray()->size()) + "/fields/";
        Tree record = Tree::object();
        record.set("record", textOf(m_kind));
        record.set("id", idPattern());
        record.set("fields", fields());
        records.add(std::move(record));
        if (!m_columns.areOwn())
            addFollowing(records);
        addForms();
        m_proposal.mapping.set("records", std::move(records));
        return std::move(m_proposal);
    }

private:
    bool has(const std::string& field) const { return m_columns.has(field); }
    std::string braced(const std::string& field) const { return m_columns.braced(field); }
    Tree columnOf(const std::string& field) const {
        return Tree::object().set("column", m_columns.headingOf(field));
    }

    std::string idPattern() const {
        for (const char* field : {"id", "code"})
            if (has(field))
                return braced(field);
        const std::string kind = textOf(m_kind);
        if (m_kind == RecordKind::stockTake && has("lot") && has("at"))
            return braced("lot") + "/stock-" + braced("at");
        if (m_kind == RecordKind::party && has("name"))
            return braced("name");
        if (m_kind == RecordKind::impression && has("edition") &&
            (has("workingNumber") || has("designation")))
            return braced("edition") + "/" +
                   braced(has("workingNumber") ? "workingNumber" : "designation");
        return m_columns.tellingApart(kind);
    }

    // Other records by the same words as their own ids; ids where the table is ours.
    Tree referenceTree(const std::string& field, const KindField& form) const {
        if (m_columns.areOwn())
            return columnOf(field);
        if (form.target == RecordKind::party || form.target == RecordKind::edition)
            return patternTree(braced(field));
        // Lots have no name: what stands on the tin is their id.
        if (form.target == RecordKind::lot)
            return patternTree(braced(field));
        return columnOf(field).set("find", "name");
    }

    Tree sizeTree(const std::string& field, int part) const {
        Tree tree = columnOf(field).set("part", part);
        const double times = factorFor(m_columns.unitOf(field), "imageHeight_mm");
        if (times != 1)
            tree.set("times", times);
        addUnits(tree, field);
        return tree;
    }

    void addUnits(Tree& tree, const std::string& field) const {
        constexpr std::size_t most = 3;
        const std::set<std::string> units = m_columns.unitsIn(field);
        if (units.empty() || units.size() > most)
            return;
        Tree list = Tree::array();
        for (const std::string& unit : units)
            list.add(unit);
        tree.set("units", std::move(list));
    }

    Tree numberTree(const std::string& field) {
        m_numberFields.push_back(field);
        Tree tree = columnOf(field);
        const double times = factorFor(m_columns.unitOf(field), field);
        if (m_columns.areOwn())
            return tree;
        if (times != 1)
            tree.set("times", times);
        addUnits(tree, field);
        return tree;
    }

    Tree wordTree(const std::string& field, const KindField& form) {
        Tree tree = columnOf(field);
        std::set<std::string> others;
        for (const std::string& cell : m_columns.cellsOf(field))
            if (!cell.empty() &&
                std::none_of(form.words.begin(), form.words.end(), [&](const std::string& word) {
                    return comparedText(word) == comparedText(cell);
                }))
                others.insert(cell);
        if (others.empty() || others.size() > mostWords || m_columns.areOwn())
            return tree;
        Tree words = Tree::object();
        for (const std::string& word : others) {
            const std::optional<std::string> meant = wordMeant(word, form.words);
            if (!meant)
                m_proposal.toFillIn.push_back(m_pointer + field + "/words/" + word);
            words.set(word, meant.value_or(unfilled));
        }
        return tree.set("words", std::move(words));
    }

    Tree fieldTree(const std::string& field) {
        const KindField& form = *fieldAt(m_kind, field)->field;
        switch (form.form) {
            case FieldForm::reference:
                if (m_kind == RecordKind::transfer && field == "impressions" && !m_columns.areOwn())
                    return patternTree((has("edition") ? braced("edition") : unfilled) +
                                       std::string("/{#2}"))
                        .set("numbers", columnOf(field).set("as", "ranges"));
                return referenceTree(field, form);
            case FieldForm::number:
            case FieldForm::whole:
                return numberTree(field);
            case FieldForm::word:
                return form.isList ? columnOf(field) : wordTree(field, form);
            case FieldForm::date:
                m_dateFields.push_back(field);
                break;
            case FieldForm::text:
            case FieldForm::yesNo:
            case FieldForm::parts:
                break;
        }
        return columnOf(field);
    }

    Tree fields() {
        Tree tree = Tree::object();
        for (const auto& [heading, field] : m_proposal.matched) {
            const bool isSize = field == "imageSize" || field == "sheetSize";
            if (field == "id" || (!isSize && !fieldAt(m_kind, field)))
                continue;
            if (isSize) {
                const std::string side = field.substr(0, 5);
                tree.set(side + "Height_mm", sizeTree(field, 1));
                tree.set(side + "Width_mm", sizeTree(field, 2));
                m_numberFields.push_back(field);
            } else {
                tree.set(field, fieldTree(field));
            }
        }
        for (const std::string& field : m_needed)
            if (field.find('.') == std::string::npos && tree.find(field) == nullptr) {
                tree.set(field, neededTree(field));
                const Tree* fixed = tree.find(field)->find("fixed");
                if (fixed != nullptr && *fixed->asText() == unfilled)
                    m_proposal.toFillIn.push_back(m_pointer + field + "/fixed");
            }
        return tree;
    }

    // What follows from other columns, else a question.
    Tree neededTree(const std::string& field) const {
        if (m_kind == RecordKind::edition && field == "code")
            return patternTree(idPattern());
        if (m_kind == RecordKind::transfer && field == "transferKind")
            return fixedTree("sale");
        return fixedTree(unfilled);
    }

    // Parties that a list of something else names.
    Tree partyRecords() const {
        Tree records = Tree::array();
        if (m_columns.areOwn())
            return records;
        for (const KindField& field : fieldsOf(m_kind)) {
            if (field.target != RecordKind::party || field.isList || !has(field.name))
                continue;
            const bool isRole = field.name == "maker" || field.name == "printer" ||
                                field.name == "publisher" || field.name == "supplier";
            Tree party = Tree::object();
            party.set("record", "party").set("id", braced(field.name)).set("ifNew", true);
            party.set("when", columnOf(field.name));
            party.set("fields", Tree::object()
                                    .set("name", columnOf(field.name))
                                    .set("roles", fixedTree(isRole ? field.name : "holder")));
            records.add(std::move(party));
        }
        return records;
    }

    // What a list of lots says is left in each, which is a stock-take of one day.
    void addStock(Tree& records) {
        const std::string pointer =
            "/records/" + std::to_string(records.asArray()->size()) + "/fields/";
        Tree take = Tree::object();
        take.set("record", "stockTake").set("id", idPattern() + "/stock-listed");
        take.set("when", columnOf("mass_g"));
        take.set("fields", Tree::object()
                               .set("lot", patternTree(idPattern()))
                               .set("at", fixedTree(unfilled))
                               .set("mass_g", numberTree("mass_g")));
        m_proposal.toFillIn.push_back(pointer + "at/fixed");
        records.add(std::move(take));
    }

    void addFollowing(Tree& records) {
        if (m_kind == RecordKind::lot && has("mass_g"))
            addStock(records);
        if (m_kind == RecordKind::edition && has("declaredNumbered") &&
            (has("code") || has("id"))) {
            const std::string code = idPattern();
            Tree sheet = Tree::object();
            sheet.set("record", "impression").set("id", code + "/{#2}");
            sheet.set("numbers", columnOf("declaredNumbered").set("as", "count"));
            sheet.set("fields",
                      Tree::object()
                          .set("edition", patternTree(code))
                          .set("workingNumber", patternTree("{#}"))
                          .set("designation", patternTree("{#}/" + braced("declaredNumbered"))));
            records.add(std::move(sheet));
        }
        const bool isSale = m_kind == RecordKind::transfer && has("receiver") &&
                            has("impressions") && has("edition") && has("agreedOn");
        if (isSale) {
            Tree sheet = Tree::object();
            sheet.set("record", "impression").set("id", braced("edition") + "/{#2}");
            sheet.set("numbers", columnOf("impressions").set("as", "ranges"));
            sheet.set("changedOn", columnOf("agreedOn"));
            sheet.set("fields", Tree::object().set("holder", patternTree(braced("receiver"))));
            records.add(std::move(sheet));
        }
    }

    void addForms() {
        Tree& mapping = m_proposal.mapping;
        mapping = Tree::object().set("rackbookTable", 1);
        if (!m_table.hasMark)
            mapping.set("encoding", m_table.encoding);
        mapping.set("separator", std::string(1, m_table.separator));
        if (m_columns.skippedRows() > 0)
            mapping.set("skipRows", m_columns.skippedRows());
        m_columns.addNumberForm(m_numberFields, mapping);
        m_columns.addDateOrder(m_dateFields, mapping);
        if (m_columns.areOwn())
            mapping.set("keepSpaces", true);
    }

    const TableFile& m_table;
    RecordKind m_kind;
    const std::vector<std::string>& m_needed;
    ProposalColumns m_columns;
    std::string m_pointer;  // of the record's fields
    std::vector<std::string> m_numberFields;
    std::vector<std::string> m_dateFields;
    TableProposal m_proposal;
};

}  // namespace

TableProposal proposedMapping(const TableFile& table, RecordKind kind,
                              const std::vector<std::string>& needed) {
    return Proposer(table, kind, needed).run();
}

}  // namespace rackbook
