// The tables against the record types, and records on their way through them.
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "StoreBook.h"
#include "store/RecordReader.h"
#include "support/FieldFacts.h"
#include "support/MessageOf.h"

namespace rackbook {
namespace {

using test::FieldFacts;
using test::FieldFactsReader;
using test::takeSound;

class ProjectionTest : public test::StoreBook {
protected:
    // Name, type, and "needed" where NULL is refused, of every column.
    std::set<std::string> columnsOf(const std::string& table) {
        std::set<std::string> columns;
        Statement rows = database().prepare(
            "SELECT name || ' ' || type || iif(\"notnull\" OR pk, ' needed', '') FROM "
            "pragma_table_info('" +
            table + "')");
        while (rows.step())
            columns.insert(rows.text(0));
        return columns;
    }

    // Column and the table that it leads to.
    std::set<std::string> referencesOf(const std::string& table) {
        std::set<std::string> references;
        Statement rows = database().prepare(
            "SELECT \"from\" || ' ' || \"table\" FROM pragma_foreign_key_list('" + table + "')");
        while (rows.step())
            references.insert(rows.text(0));
        return references;
    }

    std::set<std::string> tables() {
        std::set<std::string> names;
        Statement rows = database().prepare(
            "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
        while (rows.step())
            names.insert(rows.text(0));
        return names;
    }
};

struct Wanted {
    std::set<std::string> columns;
    std::set<std::string> references;

    void add(const FieldFacts& field, const std::string& name) {
        using Form = FieldFacts::Form;
        const std::string needed = field.isOptional ? "" : " needed";
        switch (field.form) {
            case Form::text:
            case Form::word:
                columns.insert(name + " TEXT" + needed);
                break;
            case Form::date:
                columns.insert(name + " TEXT" + needed);
                columns.insert(name + "Earliest INTEGER" + needed);
                columns.insert(name + "Latest INTEGER" + needed);
                break;
            case Form::whole:
            case Form::flag:
                columns.insert(name + " INTEGER" + needed);
                break;
            case Form::real:
                columns.insert(name + " REAL" + needed);
                break;
            case Form::ref:
                columns.insert(name + " INTEGER" + needed);
                references.insert(name + " " + textOf(field.target));
                break;
            case Form::parts:
                for (const FieldFacts& part : field.parts)
                    add(part, part.name);
                break;
        }
    }
};

TEST_F(ProjectionTest, HasAColumnForEachFieldAndNoOther) {
    std::set<std::string> known = {"journal", "attachmentBytes"};
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        const std::string table = textOf(R::kind);
        SCOPED_TRACE(table);
        known.insert(table);
        Wanted wanted{{"key INTEGER needed", "entry INTEGER needed"}, {"entry journal"}};
        for (const FieldFacts& field : FieldFactsReader::of<R>()) {
            if (!field.isList) {
                wanted.add(field, field.name);
                continue;
            }
            const std::string list = table + "_" + field.name;
            SCOPED_TRACE(list);
            known.insert(list);
            Wanted ofList{{table + " INTEGER needed", "position INTEGER needed"},
                          {table + " " + table}};
            ofList.add(field, field.form == FieldFacts::Form::ref ? textOf(field.target) : "value");
            EXPECT_EQ(columnsOf(list), ofList.columns);
            EXPECT_EQ(referencesOf(list), ofList.references);
        }
        EXPECT_EQ(columnsOf(table), wanted.columns);
        EXPECT_EQ(referencesOf(table), wanted.references);
    });
    EXPECT_EQ(tables(), known);
}

// The words that a column may hold stand in the definition of its table.
TEST_F(ProjectionTest, AllowsTheWordsOfEachEnumerationAndNoOther) {
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        const auto expectWords = [&](const std::string& table, const FieldFacts& field,
                                     const std::string& column) {
            std::string check = "CHECK (\"" + column + "\" IN (";
            for (const std::string& word : field.words)
                check += (word == field.words.front() ? "'" : ", '") + word + "'";
            const std::string sql =
                textFrom("SELECT sql FROM sqlite_schema WHERE name = '" + table + "'");
            EXPECT_NE(sql.find(check + "))"), std::string::npos) << table << " " << check;
        };
        for (const FieldFacts& field : FieldFactsReader::of<R>()) {
            const std::string table =
                std::string(textOf(R::kind)) + (field.isList ? "_" + field.name : "");
            if (field.form == FieldFacts::Form::word)
                expectWords(table, field, field.isList ? "value" : field.name);
            for (const FieldFacts& part : field.parts)
                if (part.form == FieldFacts::Form::word)
                    expectWords(table, part, part.name);
        }
    });
}

TEST_F(ProjectionTest, BringsBackEveryFieldOfEveryKind) {
    std::vector<Record> records = test::namedRecords();
    for (const Record& record : test::fullRecords())
        records.push_back(record);
    takeSound(book(), records);
    reopen();
    const RecordSet everything = everythingIn(book());
    EXPECT_EQ(everything.size(), records.size());
    std::map<RecordKind, std::size_t> seen;
    for (const Record& record : records) {
        SCOPED_TRACE(idOf(record));
        std::visit(
            [&](const auto& r) {
                using R = std::decay_t<decltype(r)>;
                const std::optional<R> found = findIn<R>(book(), r.id);
                ASSERT_TRUE(found);
                EXPECT_TRUE(sameFacts(*found, r));
                EXPECT_EQ(encodeRecord(*found), encodeRecord(r));
                const std::size_t position = seen[R::kind]++;
                EXPECT_TRUE(sameFacts(allOf<R>(book())[position], r));
                EXPECT_TRUE(sameFacts(everything.of<R>()[position], r));
            },
            record);
    }
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        EXPECT_EQ(countOf(book(), R::kind), static_cast<std::int64_t>(seen[R::kind]));
        EXPECT_EQ(allOf<R>(book()).size(), seen[R::kind]);
    });
}

TEST_F(ProjectionTest, BringsBackTheBoundsOfDates) {
    takeSound(book(), test::namedRecords());
    Look look;
    look.id = "l";
    look.impressions = {{"impression-a"}};
    look.touch = Touch::dry;
    look.at = EdtfDate::parse("../2024-06~");
    takeSound(book(), {look});
    const EdtfDate back = findIn<Look>(book(), "l")->at;
    EXPECT_EQ(back.earliest(), look.at.earliest());
    EXPECT_EQ(back.latest(), look.at.latest());
    EXPECT_EQ(back.earliest(), beginningOfTime);
}

TEST_F(ProjectionTest, FindsNothingWhereNothingIs) {
    EXPECT_FALSE(findIn<Mix>(book(), "m"));
    EXPECT_TRUE(allOf<Mix>(book()).empty());
    EXPECT_EQ(everythingIn(book()).size(), 0u);
    EXPECT_EQ(test::messageOf<StoreError>([&] { bookRecordOf(book()); }),
              path() +
                  ": it holds no book record yet. Take in a record of kind book, with studio and "
                  "timeZone.");
}

TEST_F(ProjectionTest, GivesTheBooksOwnRecord) {
    Book own;
    own.id = "book";
    own.studio = "Studio";
    own.timeZone = "Europe/Copenhagen";
    takeSound(book(), {own});
    EXPECT_TRUE(sameFacts(bookRecordOf(book()), own));
}

TEST_F(ProjectionTest, RefusesAWordThatItDoesNotKnow) {
    takeSound(book(), test::namedRecords());
    tamper("PRAGMA ignore_check_constraints = ON; UPDATE mix SET purpose = 'fun'");
    const BookFile reader = BookFile::openToRead(options());
    EXPECT_EQ(test::messageOf<StoreError>([&] { allOf<Mix>(reader); }),
              "the book: it holds the unknown word \"fun\". Restore the last backup, or run "
              "rackbook verify.");
}

TEST_F(ProjectionTest, RefusesWhatTheTablesForbidEvenPastTheChecks) {
    takeSound(book(), test::namedRecords());
    EXPECT_EQ(
        test::messageOf<StoreError>([&] { database().execute("UPDATE mix SET purpose = 'fun'"); }),
        path() + ": CHECK constraint failed: purpose. The book is unchanged.");
    EXPECT_EQ(test::messageOf<StoreError>(
                  [&] { database().execute("DELETE FROM edition WHERE id = 'edition-a'"); }),
              path() + ": FOREIGN KEY constraint failed. The book is unchanged.");
}

}  // namespace
}  // namespace rackbook
