#include "sheets/SleeveLabels.h"

#include "sheets/LabelGrid.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetWords.h"
#include "sheets/TypeScale.h"

namespace rackbook {

namespace {

constexpr double leastLarge_pt = 9;
constexpr double least_pt = 6;

class SleeveLabelMaker {
public:
    SleeveLabelMaker(const SleeveLabelsFacts& facts, const SheetTemplate& sheetTemplate)
        : m_facts(facts),
          m_template(sheetTemplate),
          m_words(sheetTemplate),
          m_scale(TypeScale::of(sheetTemplate.flowSetup().baseSize_pt)) {}

    Label make(const SleevePrint& print) const {
        Label label;
        for (const std::string& section : m_template.sections())
            if (section == "code")
                addCode(label, print);
            else
                addLine(label, section, print);
        if (label.lines.empty())
            label.lines.push_back(designationLine(print));
        return label;
    }

private:
    void addCode(Label& label, const SleevePrint& print) const {
        const std::string name = print.designation.empty()
                                     ? "#" + std::to_string(print.workingNumber)
                                     : print.designation;
        label.code = "rackbook " + m_facts.edition.code + " " + name + " " + print.id;
        label.alternate = m_words.filled("code", {{"text", label.code}});
    }

    LabelLine designationLine(const SleevePrint& print) const {
        const std::string text =
            print.designation.empty()
                ? m_words.filled("designation.unsigned",
                                 {{"number", std::to_string(print.workingNumber)}})
                : m_words.filled("designation", {{"designation", print.designation}});
        return {text, m_scale.title_pt, leastLarge_pt, true};
    }

    std::string editionText(const SleevePrint& print) const {
        const Edition& edition = m_facts.edition;
        const std::string number = std::to_string(print.workingNumber);
        if (!edition.year)
            return m_words.filled("edition.noYear", {{"code", edition.code}, {"number", number}});
        return m_words.filled(
            "edition",
            {{"code", edition.code}, {"number", number}, {"year", m_words.date(*edition.year)}});
    }

    void addLine(Label& label, const std::string& section, const SleevePrint& print) const {
        const Edition& edition = m_facts.edition;
        if (section == "designation")
            label.lines.push_back(designationLine(print));
        else if (section == "title")
            label.lines.push_back({m_words.filled("title", {{"title", edition.title}}),
                                   m_scale.base_pt, least_pt, true});
        else if (section == "edition")
            label.lines.push_back({editionText(print), m_scale.base_pt, least_pt, false});
        else if (section == "paper" && edition.sheetHeight_mm && edition.sheetWidth_mm)
            label.lines.push_back(
                {m_words.filled(
                     "paper", {{"size", m_words.size(edition.sheetHeight_mm, edition.sheetWidth_mm,
                                                     m_facts.lengthUnit)}}),
                 m_scale.small_pt, least_pt, false});
    }

    const SleeveLabelsFacts& m_facts;
    const SheetTemplate& m_template;
    SheetWords m_words;
    TypeScale m_scale;
};

}  // namespace

SleeveLabelsFacts sleeveLabelsFactsOf(const RecordSet& records, const Edition& edition,
                                      const std::vector<Impression>& impressions,
                                      CivilMinute asOf) {
    SleeveLabelsFacts facts;
    if (!records.of<Book>().empty()) {
        facts.studio = records.of<Book>().front().studio;
        facts.lengthUnit = records.of<Book>().front().lengthUnit;
    }
    facts.edition = edition;
    for (const Impression& impression : impressions) {
        const bool isSigned = impression.designation &&
                              !(impression.signedOn && impression.signedOn->earliest() > asOf);
        facts.prints.push_back({impression.id, impression.workingNumber,
                                isSigned ? *impression.designation : std::string()});
    }
    return facts;
}

TemplateRules sleeveLabelsRules() {
    TemplateRules rules;
    rules.sheet = "sleeve-labels";
    rules.sections = {"code", "designation", "title", "edition", "paper"};
    addLabelKeys(rules.labels, "", "sheet designation.unsigned edition.noYear");
    rules.numbers = labelGridNumbers();
    return rules;
}

PageModel sleeveLabels(const SleeveLabelsFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created) {
    const SleeveLabelMaker maker(facts, sheetTemplate);
    std::vector<Label> labels;
    for (const SleevePrint& print : facts.prints)
        labels.push_back(maker.make(print));
    DocumentInfo info;
    info.title = facts.edition.title + " (" + facts.edition.code + ")";
    info.author = facts.studio;
    info.subject = sheetTemplate.label("sheet");
    info.created = created;
    return labelPages(labels, labelGridSetupOf(sheetTemplate, std::move(info)), measurer);
}

}  // namespace rackbook
