#include "commands/Languages.h"

#include <QCoreApplication>
#include <QTranslator>
#include <algorithm>

#include "base/Files.h"
#include "base/Translated.h"

namespace rackbook {

namespace {

std::string byQt(const char* context, const char* words) {
    return QCoreApplication::translate(context, words).toStdString();
}

// Beside the program's other files, in the build tree and installed.
std::vector<std::string> translationFolders() {
    std::vector<std::string> folders;
    const std::string named = qEnvironmentVariable("RACKBOOK_DATA").toStdString();
    if (!named.empty())
        folders.push_back(pathOf(named, "translations"));
    const std::string beside = QCoreApplication::applicationDirPath().toStdString();
    for (const char* way : {"share/rackbook", "../share/rackbook"})
        folders.push_back(pathOf(pathOf(beside, way), "translations"));
    return folders;
}

}  // namespace

std::optional<std::string> languageWanted() {
    for (const char* variable : {"RACKBOOK_LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG"}) {
        const std::string value = qEnvironmentVariable(variable).toStdString();
        if (value.empty())
            continue;
        const std::string language = value.substr(0, value.find_first_of("_-.@"));
        const bool isLanguage = (language.size() == 2 || language.size() == 3) &&
                                std::all_of(language.begin(), language.end(),
                                            [](char c) { return c >= 'a' && c <= 'z'; });
        return isLanguage ? std::optional(language) : std::nullopt;
    }
    return std::nullopt;
}

void speakLanguageWanted(const std::vector<std::string>& words) {
    const std::optional<std::string> language = languageWanted();
    if (!language || *language == "en" ||
        std::find(words.begin(), words.end(), "--json") != words.end())
        return;
    static QTranslator translator;
    for (const std::string& folder : translationFolders()) {
        const QString file =
            QString::fromStdString(pathOf(folder, "rackbook_" + *language + ".qm"));
        if (!translator.load(file))
            continue;
        QCoreApplication::installTranslator(&translator);
        setTranslating(byQt);
        return;
    }
}

}  // namespace rackbook
