#include "sheets/DrawerLabels.h"

#include "sheets/LabelGrid.h"
#include "sheets/LabelKeys.h"
#include "sheets/SheetWords.h"
#include "sheets/TypeScale.h"

namespace rackbook {

namespace {

constexpr double leastLarge_pt = 9;
constexpr double least_pt = 6;

class DrawerLabelMaker {
public:
    DrawerLabelMaker(const SheetTemplate& sheetTemplate)
        : m_template(sheetTemplate),
          m_words(sheetTemplate),
          m_scale(TypeScale::of(sheetTemplate.flowSetup().baseSize_pt)) {}

    Label make(const Place& place) const {
        Label label;
        for (const std::string& section : m_template.sections())
            if (section == "code")
                addCode(label, place);
            else
                addLine(label, section, place);
        if (label.lines.empty())
            label.lines.push_back(nameLine(place));
        return label;
    }

private:
    void addCode(Label& label, const Place& place) const {
        label.code = "rackbook place " + place.id;
        label.alternate = m_words.filled("code", {{"text", label.code}});
    }

    LabelLine nameLine(const Place& place) const {
        return {m_words.filled("name", {{"name", place.name}}), m_scale.title_pt, leastLarge_pt,
                true};
    }

    void addLine(Label& label, const std::string& section, const Place& place) const {
        if (section == "name")
            label.lines.push_back(nameLine(place));
        else if (section == "kind")
            label.lines.push_back(
                {m_words.filled("kind", {{"kind", m_words.of("kind", place.placeKind)}}),
                 m_scale.heading_pt, least_pt, false});
        else if (section == "capacity" && place.capacity)
            label.lines.push_back(
                {m_words.filled("capacity", {{"count", m_words.count(*place.capacity)}}),
                 m_scale.base_pt, least_pt, false});
        else if (section == "id")
            label.lines.push_back(
                {m_words.filled("id", {{"id", place.id}}), m_scale.small_pt, least_pt, false});
    }

    const SheetTemplate& m_template;
    SheetWords m_words;
    TypeScale m_scale;
};

}  // namespace

TemplateRules drawerLabelsRules() {
    TemplateRules rules;
    rules.sheet = "drawer-labels";
    rules.sections = {"code", "name", "kind", "capacity", "id"};
    addLabelKeys(rules.labels, "", "sheet");
    for (const PlaceKind kind : {PlaceKind::drawer, PlaceKind::box, PlaceKind::shelf})
        rules.labels.push_back(std::string("kind.") + textOf(kind));
    rules.numbers = labelGridNumbers();
    return rules;
}

PageModel drawerLabels(const DrawerLabelsFacts& facts, const SheetTemplate& sheetTemplate,
                       const TextMeasurer& measurer, const std::string& created) {
    const DrawerLabelMaker maker(sheetTemplate);
    std::vector<Label> labels;
    for (const Place& place : facts.places)
        labels.push_back(maker.make(place));
    DocumentInfo info;
    info.title = sheetTemplate.label("sheet");
    info.author = facts.studio;
    info.created = created;
    return labelPages(labels, labelGridSetupOf(sheetTemplate, std::move(info)), measurer);
}

}  // namespace rackbook
