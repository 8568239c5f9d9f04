#include "sheets/TemplateFiles.h"

#include <algorithm>
#include <filesystem>
#include <set>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "sheets/FileChecks.h"

namespace rackbook {

namespace {

constexpr std::size_t mostLayouts = 16;

std::string plainPath(const std::string& file) {
    return std::filesystem::path(file).lexically_normal().string();
}

// A file called like a shipped one and based on that name means the shipped one.
std::string baseFile(const TemplateSource& source, const std::string& file,
                     const std::string& basedOn) {
    const std::filesystem::path given(basedOn);
    const std::string beside = given.is_absolute()
                                   ? basedOn
                                   : (std::filesystem::path(file).parent_path() / given).string();
    const std::string shipped = pathOf(source.shipped, basedOn);
    const bool isName = given == given.filename();
    const bool isItself = plainPath(beside) == plainPath(file);
    if (isName && source.exists(shipped) && (isItself || !source.exists(beside)))
        return shipped;
    return beside;
}

[[noreturn]] void refuseLoop(const std::vector<TemplateFile>& layouts, const std::string& again) {
    std::string way;
    bool inLoop = false;
    for (const TemplateFile& layout : layouts) {
        inLoop = inLoop || plainPath(layout.name) == plainPath(again);
        if (inLoop)
            way += layout.name + " → ";
    }
    FileChecks(layouts.back().name)
        .refuse("/basedOn", "the templates are based on one another in a circle: " + way + again,
                "Let one of them stand on its own, or on a template that comes with the program.");
}

std::vector<TemplateFile> layoutsFrom(const TemplateSource& source, std::string file) {
    std::vector<TemplateFile> layouts;
    std::set<std::string> seen;
    for (;;) {
        seen.insert(plainPath(file));
        layouts.push_back({file, source.read(file)});
        const FileChecks checks(file);
        if (!layouts.back().tree.asObject())
            checks.refuse("", "this is not an object", "Write the members in braces.");
        const Tree* basedOn = layouts.back().tree.find("basedOn");
        if (!basedOn)
            return layouts;
        const std::string& name = checks.text(*basedOn, "/basedOn");
        if (isBlank(name) || controlCharacterIn(name))
            checks.refuse("/basedOn", "this is no name of a file",
                          "Name a file beside this one, or one that comes with the program.");
        std::string next = baseFile(source, file, name);
        if (seen.count(plainPath(next)) > 0)
            refuseLoop(layouts, next);
        if (layouts.size() == mostLayouts)
            checks.refuse("/basedOn", "more than 16 templates are based on one another",
                          "Base it on one that stands nearer to the end of the chain.");
        if (!source.exists(next))
            checks.refuse("/basedOn", "there is no template " + printable(next),
                          "Name a file beside this one, or one that comes with the program.");
        file = std::move(next);
    }
}

// The folders in which words are looked for, the first of them first.
std::vector<std::string> wordFolders(const TemplateSource& source, const TemplateWish& wish) {
    std::vector<std::string> folders = {pathOf(source.shipped, "words")};
    if (wish.file)
        folders.insert(folders.begin(),
                       (std::filesystem::path(*wish.file).parent_path() / "words").string());
    return folders;
}

std::vector<std::string> languagesIn(const TemplateSource& source,
                                     const std::vector<std::string>& folders,
                                     const std::string& file) {
    std::set<std::string> languages;
    for (const std::string& folder : folders)
        for (const std::string& language : source.foldersWith(folder, file))
            languages.insert(language);
    return {languages.begin(), languages.end()};
}

// Lookup of RFC 4647: the longest of the tags that the one asked for lies within.
std::optional<std::string> bestLanguage(const std::string& tag,
                                        const std::vector<std::string>& languages) {
    std::optional<std::string> best;
    for (const std::string& language : languages)
        if (isWithinLanguage(tag, language) && (!best || language.size() > best->size()))
            best = language;
    return best;
}

TemplateFile wordsIn(const TemplateSource& source, const std::vector<std::string>& folders,
                     const std::string& language, const std::string& name) {
    std::string file;
    for (const std::string& folder : folders) {
        file = pathOf(pathOf(folder, language), name);
        if (source.exists(file))
            break;
    }
    return {file, source.read(file)};
}

}  // namespace

TemplateParts gatherTemplate(const TemplateSource& source, const TemplateWish& wish) {
    TemplateParts parts;
    const std::string sheetsFile = wish.sheet + ".json";
    parts.layouts = layoutsFrom(source, wish.file.value_or(pathOf(source.shipped, sheetsFile)));
    parts.language = wish.language.value_or(languageOf(parts.layouts));
    const std::vector<std::string> folders = wordFolders(source, wish);
    const std::vector<std::string> languages = languagesIn(source, folders, sheetsFile);
    const std::optional<std::string> language = bestLanguage(parts.language, languages);
    if (!language) {
        const std::string what =
            "there are no words for this sheet in \"" + printable(parts.language) + "\"";
        const std::string remedy = "There are words in " + joined(languages) + ".";
        if (wish.language)
            throw UsageError(what, remedy);
        throw InputError(parts.layouts.front().name, what, remedy);
    }
    parts.common = wordsIn(source, folders, *language, "common.json");
    parts.words = wordsIn(source, folders, *language, sheetsFile);
    if (wish.paper) {
        Tree paper = Tree::object();
        paper.set("paper", *wish.paper);
        parts.layouts.insert(parts.layouts.begin(), {"--paper", std::move(paper)});
    }
    return parts;
}

}  // namespace rackbook
