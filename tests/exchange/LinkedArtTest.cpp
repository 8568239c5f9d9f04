// Descriptions as Linked Art against the facts of the standard's schemas (LinkedArtFacts.h). The
// same files were checked outside the tests by Python's jsonschema.
#include "exchange/LinkedArt.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>

#include "LinkedArtFacts.h"
#include "exchange/TreeJson.h"
#include "support/Build.h"
#include "support/DemoRecords.h"

namespace rackbook {
namespace {

const std::string base = "https://prints.example/";

LinkedArtChoice choice() {
    LinkedArtChoice chosen;
    chosen.base = base;
    chosen.bookMark = "a mark";
    chosen.program = "rackbook 1";
    chosen.day = "2026-03-20";
    return chosen;
}

std::vector<std::string> allImpressions(const RecordSet& records) {
    std::vector<std::string> ids;
    for (const Impression& impression : records.of<Impression>())
        ids.push_back(impression.id);
    return ids;
}

// By path, as other programs read it.
std::map<std::string, Json> written(const RecordSet& records, const LinkedArtChoice& chosen) {
    std::map<std::string, Json> files;
    for (const LinkedArtFile& file : linkedArtOf(records, allImpressions(records), chosen).files)
        EXPECT_TRUE(files.emplace(file.path, Json::parse(jsonText(file.content))).second)
            << file.path;
    return files;
}

void expectWithinTheRules(const std::map<std::string, Json>& files) {
    for (const auto& [path, content] : files)
        for (const std::string& broken : test::brokenLinkedArtRules(content))
            ADD_FAILURE() << path << " " << broken;
}

std::string allText(const std::map<std::string, Json>& files) {
    std::string text;
    for (const auto& [path, content] : files)
        text += path + content.dump() + "\n";
    return text;
}

// The content of every statement, and of every name and identifier, anywhere in it.
std::vector<std::string> contentsIn(const Json& value) {
    std::vector<std::string> contents;
    if (value.is_object() && value.contains("content"))
        contents.push_back(value["content"]);
    if (value.is_structured())
        for (const Json& item : value)
            for (std::string& content : contentsIn(item))
                contents.push_back(std::move(content));
    return contents;
}

bool says(const Json& value, const std::string& content) {
    const std::vector<std::string> contents = contentsIn(value);
    return std::find(contents.begin(), contents.end(), content) != contents.end();
}

void gatherLinks(const Json& value, std::set<std::string>& links) {
    if (value.is_object() && value.contains("id"))
        links.insert(value["id"].get<std::string>());
    if (value.is_structured())
        for (const Json& item : value)
            gatherLinks(item, links);
}

build::Book studio() {
    build::Book book;
    book.add(Book{}, [](Book& r) {
        r.id = "studio";
        r.studio = "North shed";
        r.timeZone = "Europe/Copenhagen";
    });
    return book;
}

// One edition E with one sheet E-1, which the caller changes.
template <class EditEdition, class EditSheet>
build::Book oneSheet(EditEdition editEdition, EditSheet editSheet) {
    build::Book book = studio();
    book.edition("E", editEdition);
    book.impressions("E", 1, 1, editSheet);
    return book;
}

build::Book oneSheet() {
    return oneSheet(build::AsIs(), build::AsIs());
}

Json sheetOf(const build::Book& book, const LinkedArtChoice& chosen = choice()) {
    return written(book.records, chosen).at("impression/E-1.json");
}

TEST(LinkedArt, KeepsToTheSchemasForTheDemonstration) {
    const RecordSet records = test::demoRecords();
    LinkedArtChoice chosen = choice();
    for (const bool namesHolders : {false, true})
        for (const char* from : {base.c_str(), ""})
            for (const bool knowsActors : {false, true}) {
                chosen.base = from;
                chosen.namesHolders = namesHolders;
                if (knowsActors) {
                    chosen.persons = {"maren", "jorin", "quistvad"};
                    chosen.groups = {"toervelo", "saltmill", "skovlomme"};
                }
                const auto files = written(records, chosen);
                EXPECT_GT(files.size(), records.of<Impression>().size());
                expectWithinTheRules(files);
                chosen.persons.clear();
                chosen.groups.clear();
            }
}

// The check must be able to say no: each member of a file of each folder is made a number in turn,
// taken out where it is required, and joined by one that no class has.
TEST(LinkedArt, IsCheckedByRulesThatRefuse) {
    LinkedArtChoice chosen = choice();
    chosen.persons = {"maren"};
    std::set<std::string> folders;
    for (const auto& [path, content] : written(test::demoRecords(), chosen)) {
        if (!folders.insert(path.substr(0, path.find('/'))).second)
            continue;
        for (const auto& [member, value] : content.items()) {
            Json broken = content;
            broken[member] = 17;
            EXPECT_FALSE(test::brokenLinkedArtRules(broken).empty()) << path << " " << member;
        }
        for (const char* member : {"@context", "id", "type", "_label"}) {
            Json broken = content;
            broken.erase(member);
            EXPECT_FALSE(test::brokenLinkedArtRules(broken).empty()) << path << " " << member;
        }
        Json broken = content;
        broken["colour"] = "blue";
        EXPECT_FALSE(test::brokenLinkedArtRules(broken).empty()) << path;
    }
    Json sheet = sheetOf(oneSheet());
    const auto isRefused = [&](const char* pointer, const Json& value) {
        Json broken = sheet;
        broken[Json::json_pointer(pointer)] = value;
        return !test::brokenLinkedArtRules(broken).empty();
    };
    EXPECT_TRUE(isRefused("/produced_by/timespan/begin_of_the_begin", "2026-01-01"));
    EXPECT_TRUE(isRefused("/dimension/0/value", "40"));
    EXPECT_TRUE(isRefused("/dimension/0/unit", Json::object({{"type", "MeasurementUnit"}})));
    EXPECT_TRUE(isRefused("/shows/0/type", "Set"));
    EXPECT_TRUE(isRefused("/id", "no uri"));
    EXPECT_TRUE(isRefused("/made_of", Json::object()));
    EXPECT_FALSE(isRefused("/_label", "another label"));
}

TEST(LinkedArt, HasAFileForEverythingThatIsNamed) {
    LinkedArtChoice chosen = choice();
    chosen.persons = {"maren", "jorin"};
    chosen.groups = {"toervelo"};
    chosen.namesHolders = true;
    const auto files = written(test::demoRecords(), chosen);
    std::set<std::string> links;
    for (const auto& [path, content] : files) {
        gatherLinks(content, links);
        EXPECT_EQ(content["id"], base + path);
    }
    for (const std::string& link : links)
        if (link.rfind(base, 0) == 0) {
            EXPECT_EQ(files.count(link.substr(base.size())), 1u) << link;
        } else {
            EXPECT_EQ(link.rfind("http://vocab.getty.edu/aat/300", 0), 0u) << link;
        }
}

TEST(LinkedArt, SaysNothingThatIsPrivate) {
    const RecordSet records = test::demoRecords();
    const std::string text = allText(written(records, choice()));
    for (const Party& party : records.of<Party>()) {
        const bool makesNothing = party.roles == std::vector<PartyRole>{PartyRole::holder} ||
                                  party.roles == std::vector<PartyRole>{PartyRole::supplier};
        if (makesNothing) {
            EXPECT_EQ(text.find(party.name), std::string::npos) << party.name;
        }
        if (party.contact) {
            EXPECT_EQ(text.find(*party.contact), std::string::npos) << party.name;
        }
    }
    for (const Place& place : records.of<Place>())
        EXPECT_EQ(text.find(place.name), std::string::npos) << place.name;
    EXPECT_EQ(text.find("Invented."), std::string::npos) << "a note";
    EXPECT_EQ(text.find("current_"), std::string::npos);
}

TEST(LinkedArt, SaysWhoHasItAndWhereOnlyWhenAsked) {
    build::Book book = oneSheet(build::AsIs(), [](Impression& r) { r.holder = Ref<Party>{"m"}; });
    book.party("m", [](Party& r) { r.name = "A museum"; });
    book.place("chest", PlaceKind::drawer, LightKind::dark);
    book.place("wall", PlaceKind::wall, LightKind::dark);
    book.move("wall", "2026-03-02", {"E-1"});
    book.move("chest", "2026-03-01", {"E-1"});
    LinkedArtChoice chosen = choice();
    EXPECT_EQ(allText(written(book.records, chosen)).find("A museum"), std::string::npos);
    chosen.namesHolders = true;
    EXPECT_EQ(sheetOf(book, chosen)["current_location"]["_label"], "wall");
    EXPECT_TRUE(says(sheetOf(book, chosen), "holder: A museum"));
    chosen.groups = {"m"};
    EXPECT_EQ(sheetOf(book, chosen)["current_custodian"][0]["type"], "Group");
    EXPECT_EQ(written(book.records, chosen).at("group/m.json")["_label"], "A museum");
}

// The standard has persons and groups; nobody is made one of them by guessing.
TEST(LinkedArt, NamesInWordsWhoIsNeitherPersonNorGroup) {
    build::Book book = oneSheet();
    const std::vector<std::string> sheets = {"E-1"};
    EXPECT_EQ(linkedArtOf(book.records, sheets, choice()).onlyInWords,
              std::set<std::string>{"maker"});
    Json maker = sheetOf(book)["produced_by"]["part"][0];
    EXPECT_FALSE(maker.contains("carried_out_by"));
    EXPECT_TRUE(says(maker, "maker: maker"));
    LinkedArtChoice chosen = choice();
    chosen.persons = {"maker"};
    EXPECT_TRUE(linkedArtOf(book.records, sheets, chosen).onlyInWords.empty());
    maker = sheetOf(book, chosen)["produced_by"]["part"][0];
    EXPECT_EQ(maker["carried_out_by"][0]["id"], base + "person/maker.json");
    EXPECT_EQ(maker["carried_out_by"][0]["type"], "Person");
}

// 310 mm are 31 cm; the standard's documents name centimetres (AAT 300379098), not millimetres.
TEST(LinkedArt, WritesSizesWithTheirUnit) {
    const build::Book book = oneSheet(
        [](Edition& r) {
            r.sheetHeight_mm = 312.5;
            r.sheetWidth_mm.reset();
            r.imageHeight_mm = r.imageWidth_mm = std::nullopt;
        },
        build::AsIs());
    const Json sheet = sheetOf(book);
    ASSERT_EQ(sheet["dimension"].size(), 1u);
    EXPECT_EQ(sheet["dimension"][0]["value"], 31.25);
    EXPECT_EQ(sheet["dimension"][0]["unit"]["id"], "http://vocab.getty.edu/aat/300379098");
    EXPECT_EQ(sheet["dimension"][0]["classified_as"][0]["id"],
              "http://vocab.getty.edu/aat/300055644");
    EXPECT_TRUE(says(sheet, "312.5 mm"));
    EXPECT_FALSE(sheet.contains("part"));
}

// Winter and summer time of the studio; the bounds are those of EDTF.
TEST(LinkedArt, WritesTheBoundsOfDates) {
    build::Book book = oneSheet();
    book.layer("E", 1);
    book.layer("E", 2);
    book.pull("E-layer2", "2026-07-04", {"E-1"},
              [](Pull& r) { r.end = build::on("2026-07-05T11:30"); });
    book.pull("E-layer1", "2026-03", {"E-1"});
    const Json production = sheetOf(book)["produced_by"];
    const Json parts = production["part"];
    ASSERT_EQ(parts.size(), 3u);
    EXPECT_EQ(parts[1]["_label"], "layer 1, grey");
    EXPECT_EQ(parts[1]["timespan"]["begin_of_the_begin"], "2026-03-01T00:00:00+01:00");
    EXPECT_EQ(parts[1]["timespan"]["end_of_the_begin"], "2026-03-31T23:59:59+02:00");
    EXPECT_FALSE(parts[1]["timespan"].contains("end_of_the_end"));
    EXPECT_EQ(parts[2]["timespan"]["begin_of_the_end"], "2026-07-05T11:30:00+02:00");
    EXPECT_EQ(parts[2]["timespan"]["end_of_the_end"], "2026-07-05T11:30:59+02:00");
    EXPECT_EQ(production["timespan"]["begin_of_the_begin"], "2026-03-01T00:00:00+01:00");
    EXPECT_EQ(production["timespan"]["end_of_the_end"], "2026-07-05T11:30:59+02:00");
}

TEST(LinkedArt, BoundsTheMakingByTheYearThatTheEditionDeclares) {
    build::Book book = oneSheet();
    EXPECT_EQ(sheetOf(book)["produced_by"]["timespan"]["end_of_the_end"],
              "2026-12-31T23:59:59+01:00");
    book.layer("E", 1);
    book.pull("E-layer1", "2026-03-04", {"E-1"});
    const Json span = sheetOf(book)["produced_by"]["timespan"];
    EXPECT_EQ(span["begin_of_the_begin"], "2026-03-04T00:00:00+01:00");
    EXPECT_EQ(span["end_of_the_end"], "2026-12-31T23:59:59+01:00");
}

TEST(LinkedArt, LeavesOutBoundsThatNobodyKnowsOrNobodyCanWrite) {
    for (const char* date : {"Y17000", "-0044", "1999/..", "../1999", "1999/", "/1999", "199X",
                             "1999-21", "0000", "9999-12-31", "1999-05-06T07:08:09+05:30"}) {
        const build::Book book =
            oneSheet([&](Edition& r) { r.year = build::on(date); }, build::AsIs());
        const auto files = written(book.records, choice());
        expectWithinTheRules(files);
        const Json span = files.at("impression/E-1.json")["produced_by"]["timespan"];
        EXPECT_TRUE(says(span, date));
        EXPECT_EQ(span.contains("begin_of_the_begin"),
                  date[0] != 'Y' && date[0] != '-' && date[0] != '.' && date[0] != '/')
            << date;
    }
}

TEST(LinkedArt, KeepsTheShiftThatADateWasWrittenWith) {
    build::Book book = oneSheet();
    book.layer("E", 1);
    book.pull("E-layer1", "2026-05-06T07:08:09+05:30", {"E-1"});
    EXPECT_EQ(sheetOf(book)["produced_by"]["part"][1]["timespan"]["begin_of_the_begin"],
              "2026-05-06T07:08:00+05:30");
}

TEST(LinkedArt, TellsLayersByTheirBlocksAndPigments) {
    build::Book book = oneSheet();
    book.reductionBlock("B", "E", {"2026-01-01", "2026-01-09"});
    book.lot("blue", LotKind::ink, [](Lot& r) { r.pigments = {"PB15:3", "PW6"}; });
    book.lot("red", LotKind::ink, [](Lot& r) { r.pigments = {"PR122"}; });
    book.lot("base", LotKind::base);
    book.mix("stock", MixPurpose::stock).mix("heap", MixPurpose::portion);
    book.addLot("stock", "blue", 100, "2026-01-02").addLot("stock", "base", 900, "2026-01-02");
    book.addMix("heap", "stock", 20, "2026-01-10T08:00");
    book.addLot("stock", "red", 1, "2026-01-20");
    book.layer("E", 2, [](Layer& r) {
        r.block = Ref<Block>{"B"};
        r.blockState = 2;
    });
    book.pull("E-layer2", "2026-01-10T09:00", {"E-1"}, [](Pull& r) {
        r.portion = Ref<Mix>{"heap"};
        r.press = "hand, baren";
    });
    const Json part = sheetOf(book)["produced_by"]["part"][1];
    EXPECT_EQ(part["used_specific_object"][0]["id"], base + "block/B.json");
    EXPECT_TRUE(says(part, "State 2 of the block: cut"));
    EXPECT_TRUE(says(part, "Printed with: hand, baren"));
    EXPECT_TRUE(says(part,
                     "Ink: grey; pigments weighed into it (Colour Index generic names): "
                     "PB15:3, PW6"));
    const Json block = written(book.records, choice()).at("block/B.json");
    EXPECT_EQ(block["produced_by"]["part"][1]["timespan"]["begin_of_the_begin"],
              "2026-01-09T00:00:00+01:00");
}

TEST(LinkedArt, HoldsWhereNothingIsKnown) {
    const auto bare = [](Edition& r) {
        r.process.clear();
        r.year.reset();
        r.imageHeight_mm = r.imageWidth_mm = r.sheetHeight_mm = r.sheetWidth_mm = std::nullopt;
        r.paper.reset();
        r.declaredNumbered.reset();
        r.statement.reset();
    };
    build::Book book = oneSheet(bare, build::AsIs());
    book.block("B", "E");
    const auto files = written(book.records, choice());
    expectWithinTheRules(files);
    const Json& sheet = files.at("impression/E-1.json");
    EXPECT_EQ(sheet["_label"], "Harbour, working number 1");
    for (const char* member :
         {"dimension", "made_of", "carries", "part", "representation", "destroyed_by"})
        EXPECT_FALSE(sheet.contains(member)) << member;
    EXPECT_FALSE(sheet["produced_by"].contains("timespan"));
    EXPECT_FALSE(sheet["produced_by"].contains("technique"));
    EXPECT_FALSE(files.at("block/B.json").contains("produced_by"));
}

TEST(LinkedArt, CarriesAnyTextUnharmed) {
    const std::string awkward = "\"Ebbe\"\n<b>\\潮の満ち干\t— مد وجزر\u2028𝄞 ";
    build::Book book = oneSheet(
        [&](Edition& r) {
            r.title = r.process = awkward;
            r.paper = r.statement = awkward;
            r.inscriptions = {{awkward, awkward, ""}};
        },
        [&](Impression& r) { r.designation = awkward; });
    book.block("B", "E", [&](Block& r) { r.name = awkward; });
    book.layer("E", 1, [&](Layer& r) { r.colourWords = awkward; });
    book.pull("E-layer1", "2026-03-01", {"E-1"});
    const auto files = written(book.records, choice());
    expectWithinTheRules(files);
    EXPECT_TRUE(says(files.at("impression/E-1.json"), awkward));
    EXPECT_EQ(files.at("inscription/E.1.json")["content"], awkward);
    EXPECT_TRUE(says(files.at("edition/E.json"), awkward));
    EXPECT_EQ(files.at("block/B.json")["_label"], awkward);
}

TEST(LinkedArt, TellsWhatBecameOfSheetsAndBlocks) {
    build::Book book = oneSheet(build::AsIs(), [](Impression& r) {
        r.fate = ImpressionFate::destroyed;
        r.fateOn = build::on("2026-05");
    });
    book.block("B", "E", [](Block& r) {
        r.fate = MatrixFate::cancelled;
        r.fateOn = build::on("2026-06");
    });
    book.block("C", "E", [](Block& r) { r.fate = MatrixFate::destroyed; });
    const auto files = written(book.records, choice());
    expectWithinTheRules(files);
    EXPECT_EQ(files.at("impression/E-1.json")["destroyed_by"]["timespan"]["begin_of_the_begin"],
              "2026-05-01T00:00:00+02:00");
    EXPECT_TRUE(says(files.at("block/B.json"),
                     "Cancelled: marked so that it prints no more, "
                     "2026-06"));
    EXPECT_FALSE(files.at("block/B.json").contains("destroyed_by"));
    EXPECT_TRUE(files.at("block/C.json").contains("destroyed_by"));
}

// Inscriptions are what the edition says of its sheets; one that was never signed has none yet.
TEST(LinkedArt, LaysInscriptionsToSheetsThatWereSigned) {
    const auto inscribed = [](Edition& r) { r.inscriptions = {{"M. O.", "right", "pencil"}}; };
    EXPECT_FALSE(sheetOf(oneSheet(inscribed, build::AsIs())).contains("carries"));
    const build::Book book =
        oneSheet(inscribed, [](Impression& r) { r.signedOn = build::on("2026-04-01"); });
    EXPECT_EQ(sheetOf(book)["carries"][0]["id"], base + "inscription/E.1.json");
    EXPECT_TRUE(says(sheetOf(book), "Signed, 2026-04-01"));
}

TEST(LinkedArt, KnowsPhotographsByTheirHash) {
    build::Book book = oneSheet();
    const std::string hash(64, 'a');
    book.add(Attachment{}, [&](Attachment& r) {
        r.id = "front/1";
        r.sha256 = hash;
        r.mediaType = "image/jpeg";
        r.impression = Ref<Impression>{"E-1"};
    });
    const auto files = written(book.records, choice());
    const Json& picture = files.at("picture/front~1.json");
    EXPECT_TRUE(says(picture, hash));
    EXPECT_EQ(picture["format"], "image/jpeg");
    EXPECT_EQ(files.at("impression/E-1.json")["representation"][0]["digitally_shown_by"][0]["id"],
              base + "picture/front~1.json");
}

TEST(LinkedArt, SaysWhereEachFileComesFrom) {
    LinkedArtChoice chosen = choice();
    chosen.persons = {"maker"};
    const build::Book book = oneSheet();
    EXPECT_TRUE(says(sheetOf(book, chosen),
                     "Generated on 2026-03-20 by rackbook 1 from the book of North shed: "
                     "impression E-1. What that record does not say is left out."));
    for (const auto& [path, content] : written(book.records, chosen))
        if (content["type"] != "Type") {
            EXPECT_NE(content.dump().find("Generated on 2026-03-20"), std::string::npos) << path;
        }
}

// RFC 9562: version 8 and variant 10 in binary.
TEST(LinkedArt, GivesTheSameNamesEachTime) {
    LinkedArtChoice chosen = choice();
    chosen.base.clear();
    const build::Book book = oneSheet();
    const std::string id = sheetOf(book, chosen)["id"];
    EXPECT_TRUE(std::regex_match(
        id, std::regex("urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-"
                       "[0-9a-f]{12}")))
        << id;
    EXPECT_EQ(sheetOf(book, chosen)["id"], id);
    EXPECT_NE(sheetOf(book, chosen)["shows"][0]["id"], sheetOf(book, chosen)["member_of"][0]["id"]);
    chosen.bookMark = "another";
    EXPECT_NE(sheetOf(book, chosen)["id"], id);
}

TEST(LinkedArt, TakesBasesThatCanBeginAUri) {
    for (const char* good :
         {"https://prints.example", "http://localhost:8000/a/b/", "https://x.example/~me/"})
        EXPECT_TRUE(isLinkedBase(good)) << good;
    for (const char* bad : {"", "prints.example", "ftp://x.example", "https://", "https:///x",
                            "https://x y", "https://x.example/?a", "https://x.example/#a",
                            "https://x.example/æ", "https://x.example/\n", "file:///tmp"})
        EXPECT_FALSE(isLinkedBase(bad)) << bad;
}

}  // namespace
}  // namespace rackbook
