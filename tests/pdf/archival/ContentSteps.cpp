#include "ContentSteps.h"

#include <stdexcept>
#include <tuple>
#include <utility>

namespace rackbook {

namespace {

using nlohmann::json;

struct Mark {
    bool artifact = false;
    int mcid = -1;
};

class Walk {
public:
    Walk(const PdfJson& file, std::vector<ContentStep>& steps) : m_file(file), m_steps(steps) {}

    void page(const std::string& page, int number) {
        m_now = {};
        m_now.page = number;
        m_now.resources = &m_file.inherited(page, "/Resources");
        m_marks.clear();
        m_saved.clear();
        run(contentOf(m_file.raw(page, "/Contents")));
        for (const json& annotation : m_file.at(page, "/Annots"))
            look(m_file.raw(m_file.at(annotation, "/AP"), "/N"), page, number);
    }

private:
    // One appearance, or one for each state.
    void look(const json& normal, const std::string& page, int number) {
        const PdfJson::Object* form = m_file.stream(normal);
        if (!form) {
            const json& states = m_file.resolved(normal);
            if (states.is_object())
                for (const auto& [state, one] : states.items())
                    if (m_file.stream(one))
                        look(one, page, number);
            return;
        }
        m_now = {};
        m_now.page = number;
        m_now.inAnnotation = true;
        m_now.resources = m_file.at(normal, "/Resources").is_null()
                              ? &m_file.inherited(page, "/Resources")
                              : &m_file.at(normal, "/Resources");
        m_marks.clear();
        m_saved.clear();
        run(form->data);
    }

    std::string contentOf(const json& contents) const {
        if (const PdfJson::Object* stream = m_file.stream(contents))
            return stream->data;
        std::string all;
        const json& parts = m_file.resolved(contents);
        if (parts.is_array())
            for (const json& part : parts)
                all += contentOf(part) + "\n";
        return all;
    }

    void run(const std::string& content) {
        for (Operation& operation : operationsIn(content)) {
            m_now.depth = static_cast<int>(m_saved.size());
            m_now.artifact = false;
            m_now.mcid = -1;
            for (const Mark& mark : m_marks) {
                m_now.artifact = m_now.artifact || mark.artifact;
                m_now.mcid = mark.mcid >= 0 ? mark.mcid : m_now.mcid;
            }
            m_now.operation = std::move(operation);
            m_steps.push_back(m_now);
            follow(Operation(m_now.operation));
        }
    }

    void follow(const Operation& operation) {
        const std::string& name = operation.name;
        const std::vector<Operand>& operands = operation.operands;
        if (name == "q")
            m_saved.emplace_back(m_now.font, m_now.textMode);
        else if (name == "Q" && !m_saved.empty())
            restore();
        else if (name == "BT" || name == "ET")
            m_now.inText = name == "BT";
        else if (name == "Tf" && !operands.empty())
            m_now.font = resource("/Font", operands[0].text);
        else if (name == "Tr" && !operands.empty())
            m_now.textMode = static_cast<int>(operands[0].number);
        else if (name == "BMC" || name == "BDC")
            m_marks.push_back(markOf(operands));
        else if (name == "EMC" && !m_marks.empty())
            m_marks.pop_back();
        else if (name == "Do" && !operands.empty())
            drawForm(resource("/XObject", operands[0].text));
    }

    void restore() {
        std::tie(m_now.font, m_now.textMode) = m_saved.back();
        m_saved.pop_back();
    }

    // The reference, or an empty text.
    std::string resource(const std::string& kind, const std::string& name) const {
        const json& found = m_file.raw(m_file.at(*m_now.resources, kind), "/" + name);
        return isReference(found) ? found.get<std::string>() : std::string();
    }

    Mark markOf(const std::vector<Operand>& operands) const {
        Mark mark;
        mark.artifact = !operands.empty() && operands[0].text == "Artifact";
        if (operands.size() < 2)
            return mark;
        if (operands[1].kind == Operand::Kind::dictionary) {
            if (const Operand* number = memberOf(operands[1], "MCID"))
                mark.mcid = static_cast<int>(number->number);
            return mark;
        }
        const json& properties = m_file.at(*m_now.resources, "/Properties");
        const json& number = m_file.at(m_file.at(properties, "/" + operands[1].text), "/MCID");
        if (number.is_number_integer())
            mark.mcid = number.get<int>();
        return mark;
    }

    void drawForm(const std::string& reference) {
        const PdfJson::Object* form = m_file.stream(reference);
        if (!form || m_file.at(reference, "/Subtype") != "/Form")
            return;
        if (++m_forms > 32)
            throw std::runtime_error("forms draw forms without end");
        const ContentStep before = m_now;
        if (!m_file.at(reference, "/Resources").is_null())
            m_now.resources = &m_file.at(reference, "/Resources");
        run(form->data);
        m_now = before;
        --m_forms;
    }

    const PdfJson& m_file;
    std::vector<ContentStep>& m_steps;
    ContentStep m_now;
    std::vector<Mark> m_marks;
    std::vector<std::pair<std::string, int>> m_saved;
    int m_forms = 0;
};

}  // namespace

std::vector<ContentStep> stepsOf(const PdfJson& file) {
    std::vector<ContentStep> steps;
    Walk walk(file, steps);
    int number = 0;
    for (const std::string& page : file.pages())
        walk.page(page, ++number);
    return steps;
}

}  // namespace rackbook
