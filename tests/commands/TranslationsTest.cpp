// The German words: all there, with the same places to be filled in, and never in JSON.
#include <gtest/gtest.h>

#include <QFile>
#include <QXmlStreamReader>
#include <cstdlib>
#include <map>
#include <set>
#include <tuple>

#include "Script.h"
#include "base/Files.h"
#include "commands/CommandTable.h"
#include "commands/GuideSteps.h"
#include "records/Look.h"
#include "records/Move.h"
#include "records/Transfer.h"
#include "records/Weather.h"

namespace rackbook {
namespace {

const std::string germanFile = std::string(RACKBOOK_SOURCE) + "/src/commands/rackbook_de.ts";

struct Message {
    std::string german;
    bool isFinished = false;
};
using Messages = std::map<std::pair<std::string, std::string>, Message>;

Messages messagesIn(const std::string& path) {
    QFile file(QString::fromStdString(path));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path;
    QXmlStreamReader xml(&file);
    Messages messages;
    std::string context;
    std::string source;
    while (!xml.atEnd()) {
        if (xml.readNext() != QXmlStreamReader::StartElement)
            continue;
        if (xml.name() == u"name")
            context = xml.readElementText().toStdString();
        else if (xml.name() == u"source")
            source = xml.readElementText().toStdString();
        else if (xml.name() == u"translation") {
            Message message;
            message.isFinished = !xml.attributes().hasAttribute("type");
            message.german = xml.readElementText().toStdString();
            messages[{context, source}] = message;
        }
    }
    EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
    return messages;
}

std::multiset<std::string> placesIn(const std::string& text) {
    std::multiset<std::string> places;
    for (std::size_t at = text.find('%'); at != std::string::npos; at = text.find('%', at + 1))
        if (at + 1 < text.size() && text[at + 1] >= '1' && text[at + 1] <= '9')
            places.insert(text.substr(at, 2));
    return places;
}

TEST(Translations, HaveTheSamePlacesToBeFilledIn) {
    const Messages messages = messagesIn(germanFile);
    ASSERT_GT(messages.size(), 300u);
    for (const auto& [key, message] : messages) {
        EXPECT_TRUE(message.isFinished) << key.second;
        EXPECT_FALSE(message.german.empty()) << key.second;
        EXPECT_EQ(placesIn(key.second), placesIn(message.german)) << key.second;
        const auto isSpaced = [](const std::string& text) {
            return std::pair(text.front() == ' ', text.back() == ' ');
        };
        EXPECT_EQ(isSpaced(key.second), isSpaced(message.german)) << key.second;
    }
}

// Qt's own tool goes through the sources.
TEST(Translations, AreOfEveryTextInTheSources) {
    const FreshFolder folder;
    const std::string command =
        std::string(RACKBOOK_LUPDATE) +
        " -silent -tr-function-alias "
        "translate+=translated,QT_TRANSLATE_NOOP+=toTranslate " RACKBOOK_SOURCE
        "/src -ts now.ts > lupdate.txt 2>&1";
    ASSERT_EQ(std::system(command.c_str()), 0) << readFile("lupdate.txt", 1 << 20);
    std::set<std::pair<std::string, std::string>> inSources;
    for (const auto& [key, message] : messagesIn("now.ts"))
        inSources.insert(key);
    std::set<std::pair<std::string, std::string>> inGerman;
    for (const auto& [key, message] : messagesIn(germanFile))
        inGerman.insert(key);
    for (const auto& key : inSources)
        EXPECT_EQ(inGerman.count(key), 1u) << "no German: " << key.first << ": " << key.second;
    for (const auto& key : inGerman)
        EXPECT_EQ(inSources.count(key), 1u) << "no longer said: " << key.second;
}

template <class E>
void expectChoices(const Messages& messages) {
    for (const std::string& word : enumNames<E>())
        EXPECT_EQ(messages.count({"choice", word}), 1u) << word;
}

// Looked up by what they say, so that no extraction could miss one.
TEST(Translations, KnowQuestionsChoicesAndVerbs) {
    const Messages messages = messagesIn(germanFile);
    for (const std::string& verb : guidedVerbs())
        for (const GuideStep& step : guideSteps(commandNamed(verb).spec))
            EXPECT_EQ(messages.count({"question", step.question}), 1u) << step.question;
    for (const Command& command : commandTable()) {
        EXPECT_EQ(messages.count({"summary", command.spec.summary}), 1u) << command.spec.name;
        EXPECT_EQ(messages.count({"group", command.spec.group}), 1u) << command.spec.name;
    }
    expectChoices<Touch>(messages);
    expectChoices<LookColour>(messages);
    expectChoices<MoveWhy>(messages);
    expectChoices<TransferKind>(messages);
    expectChoices<Sky>(messages);
}

std::string printedBy(const std::string& environment, const std::string& words) {
    const std::string command = environment + " " RACKBOOK_PROGRAM " " + words + " > out.txt 2>&1";
    std::ignore = std::system(command.c_str());
    return readFile("out.txt", 1 << 20);
}

TEST(Translations, AreChosenByTheEnvironmentAndNeverInJson) {
    const FreshFolder folder;
    runScript("studio");
    unsetenv("RACKBOOK_LANGUAGE");
    const std::string english = printedBy("LC_ALL= LC_MESSAGES= LANG=C", "today");
    const std::string german = printedBy("RACKBOOK_LANGUAGE=de", "today");
    EXPECT_NE(english.find("nothing is ready without"), std::string::npos) << english;
    EXPECT_NE(german.find("ohne verzeichnete Prüfung"), std::string::npos) << german;
    EXPECT_EQ(printedBy("LC_ALL= LC_MESSAGES= LANG=de_AT.UTF-8", "today"), german);
    EXPECT_EQ(printedBy("LC_ALL= LC_MESSAGES=de_DE.UTF-8 LANG=fr_FR.UTF-8", "today"), german);
    EXPECT_EQ(printedBy("LC_ALL=C LC_MESSAGES=de_DE.UTF-8", "today"), english);
    EXPECT_EQ(printedBy("RACKBOOK_LANGUAGE=en LC_ALL=de_DE.UTF-8", "today"), english);
    EXPECT_EQ(printedBy("RACKBOOK_LANGUAGE=../../etc", "today"), english);
    for (const char* words : {"today --json", "ready --json", "history --json"})
        EXPECT_EQ(printedBy("RACKBOOK_LANGUAGE=de", words),
                  printedBy("RACKBOOK_LANGUAGE=en", words))
            << words;
    const std::string help = printedBy("RACKBOOK_LANGUAGE=de", "pull --help");
    EXPECT_NE(help.find("Aufruf: rackbook pull"), std::string::npos) << help;
    EXPECT_NE(help.find("Einen Druckgang verzeichnen"), std::string::npos) << help;
}

}  // namespace
}  // namespace rackbook
