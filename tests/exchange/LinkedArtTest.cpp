// Descriptions as Linked Art against the facts of the standard's schemas (LinkedArtFacts.h), what
// is never in them, and their names. Outside the tests, the files of the demonstration were checked
// once by Python's jsonschema against the same schemas, written down again from their text.
#include "LinkedArtBook.h"
#include "support/DemoRecords.h"

namespace rackbook {
namespace {

using namespace test;

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

// RFC 9562: version 8 and variant 10 in binary.
TEST(LinkedArt, GivesTheSameNamesEachTime) {
    LinkedArtChoice chosen = choice();
    chosen.base.clear();
    const build::Book book = oneSheet();
    const std::string id = sheetOf(book, chosen)["id"];
    ASSERT_EQ(id.size(), std::string("urn:uuid:").size() + 36) << id;
    EXPECT_EQ(id.rfind("urn:uuid:", 0), 0u) << id;
    EXPECT_EQ(id[9 + 14], '8') << id;
    EXPECT_NE(std::string("89ab").find(id[9 + 19]), std::string::npos) << id;
    for (const std::size_t dash : {8, 13, 18, 23})
        EXPECT_EQ(id[9 + dash], '-') << id;
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
