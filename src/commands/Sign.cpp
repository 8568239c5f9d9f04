#include "commands/Sign.h"

#include <map>

#include "base/Text.h"
#include "commands/BookAccess.h"
#include "commands/GivenValues.h"
#include "commands/Numbering.h"
#include "commands/OptionRows.h"
#include "commands/Recording.h"
#include "commands/SheetSelection.h"
#include "records/Designation.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

struct Signed {
    Impression sheet;
    std::string designation;
};

// "5-24=1/20": sheets 5 to 24 become 1/20 to 20/20.
std::vector<Signed> assigned(const std::vector<Impression>& sheets, const Edition& edition,
                             const std::string& words) {
    const std::size_t sign = words.find('=');
    if (sign == std::string::npos || sign == 0 || sign + 1 == words.size())
        throw UsageError("\"" + excerpt(words) + "\" is no assignment",
                         "Write working numbers, = and the designation, such as 5-24=1/20.");
    const std::vector<Impression> chosen = sheetsNumbered(sheets, edition, words.substr(0, sign));
    const std::vector<std::string> designations =
        successiveDesignations(words.substr(sign + 1), chosen.size());
    std::vector<Signed> pairs;
    for (std::size_t i = 0; i < chosen.size(); ++i)
        pairs.push_back({chosen[i], designations[i]});
    return pairs;
}

// Collects everything that stands against a signing, so that all of it is told at once.
class SigningCheck {
public:
    SigningCheck(const std::vector<Impression>& sheets, const Edition& edition)
        : m_edition(edition) {
        for (const Impression& sheet : sheets)
            if (sheet.designation)
                m_given.emplace(designationKey(*sheet.designation), sheet.workingNumber);
    }

    void look(const Signed& one) {
        const Impression& sheet = one.sheet;
        const std::string number = "sheet " + std::to_string(sheet.workingNumber);
        if (!m_seen.emplace(sheet.workingNumber, one.designation).second)
            refuse(number + " is given two designations", "Give it one.");
        else if (sheet.fate != ImpressionFate::kept)
            refuse(number + " is " + textOf(sheet.fate), "Leave it out.");
        else if (sheet.designation)
            refuse(number + " carries " + *sheet.designation + " already",
                   "Correct it with rackbook enter impression " + sheet.id + " designation=\"" +
                       one.designation + "\" --reason TEXT.");
        lookAtDesignation(one);
    }

    void throwIfRefused() const {
        if (!m_refusals.empty())
            throw UsageError(m_refusals, {});
    }

private:
    void lookAtDesignation(const Signed& one) {
        const auto [given, fresh] =
            m_given.emplace(designationKey(one.designation), one.sheet.workingNumber);
        if (!fresh && given->second != one.sheet.workingNumber)
            refuse(one.designation + " is given to sheet " + std::to_string(given->second) +
                       " and cannot be given to sheet " + std::to_string(one.sheet.workingNumber) +
                       " too",
                   "A designation is given once in an edition.");
    }

    void refuse(const std::string& what, const std::string& remedy) {
        m_refusals += (m_refusals.empty() ? "" : "\n") + ("edition " + m_edition.code) + ": " +
                      what + ". " + remedy;
    }

    const Edition& m_edition;
    std::map<std::string, int> m_given;  // working number by designationKey
    std::map<int, std::string> m_seen;
    std::string m_refusals;
};

DesignationKind kindFor(const std::string& designation,
                        const std::optional<DesignationKind>& given) {
    const std::optional<DesignationKind> known = designationKindOf(designation);
    if (!known && !given)
        throw UsageError(
            "the designation " + excerpt(designation) + " may mean several kinds",
            "Give --kind, one of " + joined(enumNames<DesignationKind>(), " or ") + ".");
    if (known && given && *known != *given)
        throw UsageError("the designation " + excerpt(designation) + " can only mean " +
                             textOf(*known) + ", not " + textOf(*given),
                         "Leave out --kind for it.");
    return known ? *known : *given;
}

ExitCode run(CommandContext& context) {
    BookFile book = bookToWrite(context);
    const Book studio = bookRecordOf(book);
    const Edition edition = editionNamed(book, context.arguments.text("edition"));
    const std::vector<Impression> sheets = sheetsOf(book, edition);
    const EdtfDate on = dateGiven(context, "on").value_or(dayIn(nowAt(studio)));
    std::optional<DesignationKind> kind;
    if (const std::optional<std::string> word = context.arguments.value("kind"))
        kind = enumFrom<DesignationKind>(*word);
    SigningCheck check(sheets, edition);
    std::vector<MadeRecord> made;
    for (const std::string& words : context.arguments.values("assignment")) {
        for (Signed& one : assigned(sheets, edition, words)) {
            check.look(one);
            one.sheet.designation = one.designation;
            one.sheet.designationKind = kindFor(one.designation, kind);
            one.sheet.signedOn = on;
            made.push_back({one.sheet, on.text()});
        }
    }
    check.throwIfRefused();
    return recordMade(context, book, made);
}

}  // namespace

Command signCommand() {
    CommandSpec spec;
    spec.name = "sign";
    spec.group = toTranslate("group", "At the press");
    spec.summary = toTranslate("summary", "Record the designations given at signing");
    spec.details =
        "An assignment is working numbers, = and what is written on the sheet: 3=1/20 for one, "
        "5-24=1/20 for twenty that count on from 1/20, 25-27=\"AP I/III\" in roman numerals, "
        "28=BAT. A designation is given once in an edition, and a sheet carries one.\n\n"
        "AP, EA, BAT, PP, HC, TP, WP and numbers say themselves what they are; SP, CP and other "
        "words want --kind.";
    spec.positionals = {{"edition", "Code of the edition."},
                        {"assignment", "RANGE=DESIGNATION.", true, true}};
    spec.options = {valueOption("on", "DATE", "The day of signing.", "today at the studio"),
                    choiceOption("kind", "KIND", "What an ambiguous designation means.",
                                 enumNames<DesignationKind>())};
    spec.writesBook = true;
    spec.examples = {{"rackbook sign EEL 25-27=\"TP 1\" 29=\"HC 2/3\"",
                      "Three trial proofs that count on, and one hors commerce."},
                     {"rackbook sign EEL 31=SP --kind stateProof --on 2026-04-02",
                      "A state proof, signed on another day."}};
    return {spec, run};
}

}  // namespace rackbook
