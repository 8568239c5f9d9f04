#include "sheets/Template.h"

#include "base/Error.h"
#include "sheets/TemplateReaders.h"

namespace rackbook {

SheetTemplate SheetTemplate::read(const TemplateParts& parts, const TemplateRules& rules) {
    SheetTemplate made;
    made.m_language = parts.language;
    made.m_locale = SheetLocale(parts.language);
    const std::vector<TemplateFile>& layouts = parts.layouts;
    LayoutReader layout(rules, made);
    for (auto file = layouts.rbegin(); file != layouts.rend(); ++file)
        layout.read(*file);
    layout.finish(layouts.back());

    WordsReader words(rules, made);
    words.readCommon(parts.common);
    words.readSheets(parts.words);
    const std::string* written = parts.words.tree.find("language")->asText();
    for (std::size_t i = layouts.size(); i-- > 0;) {
        const auto at = layouts.begin() + static_cast<std::ptrdiff_t>(i);
        words.readLayout(layouts[i], isWithinLanguage(languageOf({at, layouts.end()}), *written));
    }
    return made;
}

const std::string& SheetTemplate::label(const std::string& key) const {
    const auto found = m_labels.find(key);
    if (found == m_labels.end())
        throw InputError(m_wordsFile + " /labels", "the label \"" + key + "\" is missing",
                         "Add it; the words that come with the program have it.");
    return found->second;
}

FlowSetup SheetTemplate::flowSetup() const {
    FlowSetup setup = m_setup;
    setup.info.language = m_language;
    setup.pageOf = label("pageOf");
    setup.decimalSign = m_locale.decimalSign();
    return setup;
}

}  // namespace rackbook
