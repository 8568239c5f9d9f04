#include "exchange/RecordFiles.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>

#include "base/Error.h"
#include "exchange/RecordCodec.h"
#include "support/MessageOf.h"
#include "support/Paths.h"
#include "support/SampleRecords.h"
#include "support/TempFolder.h"

namespace rackbook {
namespace {

const std::string kinds =
    "book, party, place, edition, block, lot, balance, mix, weighing, layer, impression, pull, "
    "drawdown, reading, transfer, issue, move, look, attachment, stockTake, weather or metering";

std::string findingsIn(const std::string& text) {
    RecordFileReader reader(test::schemaFolder());
    reader.read("f.json", text);
    std::string told;
    for (const Finding& finding : reader.findings())
        told += (told.empty() ? "" : "\n") + describe(finding);
    EXPECT_EQ(told.empty(), reader.findings().empty());
    return told;
}

// A weighing that is sound but for what is added.
std::string weighing(const std::string& more) {
    return findingsIn(
        R"({"record":"weighing","id":"w","mix":"m","act":"add","at":"2026","lot":"l")" + more +
        "}");
}

TEST(RecordFiles, TakeEveryKindWithEveryField) {
    RecordFileReader reader(test::schemaFolder());
    std::vector<std::string> payloads;
    for (const Record& record : test::fullRecords())
        payloads.push_back(encodeRecord(record));
    reader.read("all.json", recordFileText(payloads));
    for (const Finding& finding : reader.findings())
        ADD_FAILURE() << describe(finding);
    ASSERT_EQ(reader.records().size(), payloads.size());
    for (std::size_t i = 0; i < payloads.size(); ++i) {
        EXPECT_EQ(reader.records()[i].payload, payloads[i]);
        EXPECT_EQ(reader.records()[i].position, i);
    }
}

TEST(RecordFiles, TakeOneRecordAListOrAnEnvelope) {
    const std::string mix = R"({"record":"mix","id":"m","name":"n","purpose":"stock"})";
    const auto recordsIn = [](const std::string& text) {
        RecordFileReader reader(test::schemaFolder());
        reader.read("f.json", text);
        EXPECT_TRUE(reader.findings().empty());
        return reader.records().size();
    };
    EXPECT_EQ(recordsIn(mix), 1u);
    EXPECT_EQ(recordsIn("[" + mix + "," + mix + "]"), 2u);
    EXPECT_EQ(recordsIn("[]"), 0u);
    EXPECT_EQ(recordsIn("{\"rackbookRecords\":1,\"records\":[" + mix + "]}"), 1u);
}

TEST(RecordFiles, NameAnUnknownFieldAndTheNearestOne) {
    EXPECT_EQ(weighing(R"(,"mas_g":1)"),
              "f.json:1 /mas_g: there is no field \"mas_g\" here (1). Did you mean mass_g?");
    EXPECT_EQ(
        weighing(R"(,"temperature":1)"),
        "f.json:1 /temperature: there is no field \"temperature\" here (1). Take it out, or "
        "use one of act, at, balance, fromMix, id, lot, massHigh_g, massLow_g, mass_g, mix, note, "
        "record and sequence.");
    EXPECT_EQ(weighing(R"(,"a/b~c":1)").substr(0, 48),
              "f.json:1 /a~1b~0c: there is no field \"a/b~c\" her");
}

TEST(RecordFiles, NameAMissingField) {
    EXPECT_EQ(findingsIn(R"({"record":"weighing","id":"w","act":"add","at":"2026","lot":"l"})"),
              "f.json:1 /mix: the field \"mix\" is missing. It means: The id of the mix that "
              "changes.");
}

TEST(RecordFiles, NameAWrongType) {
    EXPECT_EQ(weighing(R"(,"mass_g":"1")"),
              "f.json:1 /mass_g: it is of the wrong type (1). Give a number, without quotes.");
    EXPECT_EQ(weighing(R"(,"sequence":1.5)"),
              "f.json:1 /sequence: it is of the wrong type (1.5). Give a whole number, without "
              "quotes.");
    EXPECT_EQ(weighing(R"(,"note":null)"),
              "f.json:1 /note: it is of the wrong type (null). Give a text, in quotes.");
    EXPECT_EQ(findingsIn(R"({"record":"party","id":"p","name":"n","roles":"maker"})"),
              "f.json:1 /roles: it is of the wrong type (maker). Give a list, in [ ].");
    EXPECT_EQ(findingsIn(R"({"record":"party","id":"p","name":"n","contactWithheld":"yes"})"),
              "f.json:1 /contactWithheld: it is of the wrong type (yes). Give true or false.");
    EXPECT_EQ(
        findingsIn(R"({"record":"place","id":"p","name":"n","placeKind":"room","light":[5]})"),
        "f.json:1 /light/0: it is of the wrong type (5). Give an object, in { }.");
}

TEST(RecordFiles, NameWhatIsOutOfRange) {
    EXPECT_EQ(weighing(R"(,"mass_g":-1)"),
              "f.json:1 /mass_g: it is not above 0 (-1). It means: The mass in grams; left out "
              "where it is not known.");
    EXPECT_EQ(weighing(R"(,"mass_g":2000000)"),
              "f.json:1 /mass_g: it is above 1000000 (2000000). It means: The mass in grams; left "
              "out where it is not known.");
    EXPECT_EQ(weighing(R"(,"sequence":-1)"),
              "f.json:1 /sequence: it is below 0 (-1). It means: Order among weighings of the same "
              "time, lowest first.");
    EXPECT_EQ(weighing(R"(,"sequence":99999999999999999999)").substr(0, 20),
              "f.json:1 /sequence: ");
    EXPECT_EQ(weighing(R"(,"note":"")"),
              "f.json:1 /note: the text is shorter than 1 character. It means: Anything else worth "
              "keeping, in plain words.");
    EXPECT_EQ(findingsIn(R"({"record":"pull","id":"p","layer":"l","start":"2026",)"
                         R"("impressions":[]})"),
              "f.json:1 /impressions: the list is shorter than 1 item. It means: Every sheet "
              "printed, spoils among them; each once.");
}

TEST(RecordFiles, ShortenLongTextsInMessages) {
    EXPECT_EQ(findingsIn("{\"record\":\"party\",\"id\":\"p\",\"name\":\"" +
                         std::string(10 << 20, 'x') + "\"}"),
              "f.json:1 /name: the text is longer than 2000 characters (" + std::string(60, 'x') +
                  "…). It means: The name as it should be written.");
}

TEST(RecordFiles, NameAWordThatMayNotStandThere) {
    EXPECT_EQ(findingsIn(R"({"record":"weighing","id":"w","mix":"m","act":"ad","at":"2026"})"),
              "f.json:1 /act: it is none of the words that may stand here (ad). Did you mean add? "
              "It is one of add, withdraw or discard.");
    EXPECT_EQ(findingsIn(R"({"record":"party","id":"p","name":"n","roles":["maker","chef"]})"),
              "f.json:1 /roles/1: it is none of the words that may stand here (chef). Use one of "
              "maker, printer, publisher, holder or supplier.");
}

TEST(RecordFiles, NameWhatIsNotWrittenTheRightWay) {
    EXPECT_EQ(findingsIn(R"({"record":"lot","id":"l","lotKind":"ink","colourWords":"c",)"
                         R"("pigments":["PB15:3","blue"]})"),
              "f.json:1 /pigments/1: it is not written the way it should be (blue). It means: One "
              "generic name, such as PB15:3, PW6, PBk7 or NR9.");
}

TEST(RecordFiles, NameDatesIdsAndControlCharactersThatAreWrong) {
    EXPECT_EQ(findingsIn(R"({"record":"weighing","id":"w 1","mix":"mé","act":"add",)"
                         "\n"
                         R"("at":"2026-13",)"
                         "\n"
                         R"("lot":"l","note":"a\u0007b"})"),
              "f.json:1 /id: \"w 1\" is not an id. Use letters without accents, digits and . _ - / "
              "only.\n"
              "f.json:1 /mix: \"mé\" is not an id. Use letters without accents, digits and . _ - / "
              "only.\n"
              "f.json:2 /at: \"2026-13\" is not a date: there is no month 13. Write it as 1998, "
              "2004-06, 2004-06-23, 2004-06-23T09:30, with ? or ~ where it is uncertain, or as an "
              "interval such as 2019/.. or 2003/2005.\n"
              "f.json:3 /note: the text holds a control character (a\\u0007b). Take it out.");
}

TEST(RecordFiles, TellTheRulesOfARecord) {
    EXPECT_EQ(
        weighing(R"(,"massLow_g":5,"massHigh_g":1)"),
        "f.json:1 /massLow_g: the low bound lies above the high bound (5). Exchange the two.");
}

TEST(RecordFiles, NameAKindThatIsMissingOrUnknown) {
    EXPECT_EQ(findingsIn(R"({"record":"wieghing"})"),
              "f.json:1 /record: there is no such kind of record (wieghing). Did you mean "
              "weighing?");
    EXPECT_EQ(
        findingsIn(R"({"record":"symphony"})"),
        "f.json:1 /record: there is no such kind of record (symphony). Use one of " + kinds + ".");
    EXPECT_EQ(findingsIn(R"([5,{"id":"w"}])"),
              "f.json:1 /0: it is no record (5). Give an object, in { }.\n"
              "f.json:1 /1/record: the kind of record is missing. Add \"record\", one of " +
                  kinds + ".");
}

TEST(RecordFiles, NameWhatIsWrongAroundTheRecords) {
    const std::string noFile =
        "f.json:1: it is no record file. Give one record, a list of records, or "
        "{\"rackbookRecords\": 1, \"records\": […]}.";
    EXPECT_EQ(findingsIn("{}"), noFile);
    EXPECT_EQ(findingsIn(R"({"id":"w"})"), noFile);
    EXPECT_EQ(findingsIn("5"), "f.json:1: it is no record file (5)" + noFile.substr(30));
    EXPECT_EQ(findingsIn(R"({"rackbookRecords":2,"records":[]})"),
              "f.json:1 /rackbookRecords: this version of record files is not known (2). This "
              "program reads version 1.");
    EXPECT_EQ(
        findingsIn("{\"rackbookRecords\":1,\n\"records\":{},\n\"x\":1}"),
        "f.json:3 /x: there is no field \"x\" here (1). A record file has rackbookRecords and "
        "records.\n"
        "f.json:2 /records: the list of records is missing. Add \"records\", a list in [ ].");
}

TEST(RecordFiles, NameATextThatIsNoJsonOnce) {
    EXPECT_EQ(findingsIn("{\"a\":\n\"\xFF\"}"),
              "f.json:2: byte 8 is not UTF-8. Save the file as UTF-8.");
}

TEST(RecordFiles, TellTheLineOfEachFinding) {
    EXPECT_EQ(
        findingsIn("[\n"
                   "{\"record\":\"mix\",\"id\":\"m\",\"name\":\"n\",\"purpose\":\"stock\"},\n"
                   "{\"record\":\"mix\",\"id\":\"m2\",\n"
                   "\"name\":\"\",\n"
                   "\"purpose\":\"stock\"}\n"
                   "]"),
        "f.json:4 /1/name: the text is shorter than 1 character. It means: The name on the jar.");
}

TEST(RecordFiles, KeepSoundRecordsBesideBrokenOnesAndRememberTheRefused) {
    RecordFileReader reader(test::schemaFolder());
    reader.read("f.json", R"([{"record":"mix","id":"good","name":"n","purpose":"stock"},)"
                          R"({"record":"mix","id":"bad","name":"n","purpose":"fun"}])");
    ASSERT_EQ(reader.records().size(), 1u);
    EXPECT_EQ(idOf(reader.records()[0].record), "good");
    EXPECT_EQ(reader.records()[0].position, 0u);
    EXPECT_TRUE(reader.hasRefused(RecordKind::mix, "bad"));
    EXPECT_FALSE(reader.hasRefused(RecordKind::mix, "good"));
    EXPECT_FALSE(reader.hasRefused(RecordKind::lot, "bad"));
}

TEST(RecordFiles, LocateFieldsOfWhatCameIn) {
    RecordFileReader reader(test::schemaFolder());
    reader.read("a.json",
                "{\"rackbookRecords\":1,\"records\":[\n"
                "{\"record\":\"mix\",\"id\":\"m\",\"name\":\"n\",\"purpose\":\"stock\"},\n"
                "{\"record\":\"pull\",\"id\":\"p\",\"layer\":\"l\",\"start\":\"2026\",\n"
                "\"impressions\":[\"i1\",\n\"i2\"]}]}");
    reader.read("b.json",
                "{\"record\":\"mix\",\n\"id\":\"m2\",\"name\":\"n\",\"purpose\":\"stock\"}");
    Mix made;
    made.id = "m3";
    made.name = "n";
    reader.add(made, "the command line");
    ASSERT_EQ(reader.records().size(), 4u);
    const std::vector<Location> places =
        reader.locate({{1, "/impressions/1"}, {0, ""}, {2, "/id"}, {3, "/name"}, {1, "/note"}});
    ASSERT_EQ(places.size(), 5u);
    EXPECT_EQ(describe(places[0]), "a.json:5 /records/1/impressions/1 pull p");
    EXPECT_EQ(describe(places[1]), "a.json:2 /records/0 mix m");
    EXPECT_EQ(describe(places[2]), "b.json:2 /id mix m2");
    EXPECT_EQ(describe(places[3]), "/name mix m3");
    EXPECT_EQ(describe(places[4]), "a.json:3 /records/1/note pull p");
}

TEST(RecordFiles, CheckRecordsThatWereMadeHere) {
    RecordFileReader reader(test::schemaFolder());
    Weighing record;
    record.id = "w";
    record.mix.id = "m";
    record.lot = Ref<Lot>{"l"};
    record.mass_g = -1;
    reader.add(record, "the command line");
    EXPECT_TRUE(reader.records().empty());
    ASSERT_EQ(reader.findings().size(), 1u);
    EXPECT_EQ(describe(reader.findings()[0]),
              "/mass_g weighing w: it is not above 0 (-1). It means: The mass in grams; left out "
              "where it is not known.");
}

TEST(RecordFiles, BringTextToOneForm) {
    RecordFileReader reader(test::schemaFolder());
    reader.read("f.json", "{\"record\":\"party\",\"id\":\"p\",\"name\":\"Gra\u030A\"}");
    ASSERT_EQ(reader.records().size(), 1u);
    EXPECT_EQ(std::get<Party>(reader.records()[0].record).name, "Grå");
}

TEST(RecordFiles, WriteWhatTheyRead) {
    EXPECT_EQ(recordFileText({}), "{\n  \"rackbookRecords\": 1,\n  \"records\": []\n}\n");
    EXPECT_EQ(recordFileText({R"({"record":"mix","id":"a"})", R"({"record":"mix","id":"b"})"}),
              "{\n  \"rackbookRecords\": 1,\n  \"records\": [\n"
              "    {\n      \"record\": \"mix\",\n      \"id\": \"a\"\n    },\n"
              "    {\n      \"record\": \"mix\",\n      \"id\": \"b\"\n    }\n"
              "  ]\n}\n");
}

TEST(RecordFiles, NeedTheirSchemas) {
    const test::TempFolder folder;
    const std::string path = folder.file("records/book.schema.json");
    EXPECT_EQ(test::messageOf<InputError>([&] { RecordFileReader reader(folder.path()); }),
              path +
                  ": it cannot be read: No such file or directory. Check the name and the "
                  "permissions.");
    std::filesystem::create_directory(folder.file("records"));
    test::putFile(path, "{");
    EXPECT_EQ(test::messageOf<InputError>([&] { RecordFileReader reader(folder.path()); }),
              path +
                  ":1: it is not JSON: syntax error while parsing object key - unexpected end of "
                  "input; expected string literal. Mend the file at that line.");
}

}  // namespace
}  // namespace rackbook
