// Sound records of every kind, made from the record types themselves: a field that is added later
// is filled too, and only a rule about it needs a word here.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "records/FieldTraits.h"
#include "records/HouseRules.h"
#include "records/Record.h"

namespace rackbook::test {

// Gives each field a value of its own; values rise with the order of the fields.
class Filler {
public:
    // Where `onlyNeeded`, optional fields and lists are left empty.
    explicit Filler(bool onlyNeeded) : m_onlyNeeded(onlyNeeded) {}

    template <class T>
    void operator()(const char* name, T& value) {
        m_name = name;
        ++m_count;
        fill(value);
    }

private:
    template <class T>
    void fill(std::optional<T>& value) {
        if (m_onlyNeeded)
            return;
        if constexpr (std::is_same_v<T, EdtfDate>)
            value = EdtfDate::ofMinute(0);
        else
            value = T{};
        fill(*value);
        // The value that is easily mistaken for an absent one.
        if constexpr (std::is_same_v<T, bool>)
            value = false;
    }

    template <class T>
    void fill(std::vector<T>& items) {
        if (m_onlyNeeded)
            return;
        const std::string name = m_name;
        items.resize(2);
        for (std::size_t i = 0; i < items.size(); ++i) {
            m_name = name;
            m_position = static_cast<int>(i);
            ++m_count;
            fill(items[i]);
        }
        m_position = -1;
    }

    void fill(std::string& value) {
        const std::string number = std::to_string(m_count);
        const bool hash = m_name.size() >= 6 && (m_name.find("ha256") != std::string::npos);
        if (m_name == "timeZone")
            value = "Europe/Copenhagen";
        else if (m_name == "currency")
            value = "DKK";
        else if (m_name == "rule")
            value = houseRuleDefaults()[static_cast<std::size_t>(m_position)].rule;
        else if (m_name == "language")
            value = "de-CH-1996";
        else if (m_name == "fileName")
            value = "edition " + number + " grå.pdf";
        else if (m_name == "pigments")
            value = "PB15:" + number;
        else if (hash)
            value = std::string(64 - number.size(), 'a') + number;
        else
            value = m_name + " " + number + " \"grå\" \\ 灰 / '\t;\n\U0001F3A8";
    }

    void fill(bool& value) { value = true; }
    void fill(int& value) {
        // States are numbered in their order, months from 1 to 12.
        const bool counts = m_name == "ordinal" || m_name == "month";
        value = counts && m_position >= 0 ? m_position + 1 : m_count;
        if (m_name == "orientation")
            value = 8;
    }

    void fill(double& value) {
        static const std::map<std::string, double> ruled = {{"spectrumStart_nm", 400.5},
                                                            {"spectrumStep_nm", 10.1},
                                                            {"massLow_g", 0.01},
                                                            {"inkAfter_g", 0.01}};
        const auto found = ruled.find(m_name);
        value = found == ruled.end() ? 0.1 + m_count / 1000.0 : found->second;
    }

    void fill(EdtfDate& value) {
        const EdtfDate day = EdtfDate::ofDay((20000 + 10 * m_count) * minutesPerDay);
        value = m_count % 2 == 0 ? day : EdtfDate::parse(day.text() + "~");
    }

    template <class R>
    void fill(Ref<R>& value) {
        const bool second = m_position == 1 || m_name == "fromMix" || m_name == "receiver" ||
                            m_name == "from" || m_name == "publisher";
        value.id = std::string(textOf(R::kind)) + (second ? "-b" : "-a");
    }

    template <class T, std::enable_if_t<std::is_enum_v<T> || HasFields<T>::value, int> = 0>
    void fill(T& value) {
        if constexpr (std::is_enum_v<T>) {
            constexpr int words = static_cast<int>(std::size(EnumText<T>::names));
            value = static_cast<T>(1 + m_count % (words - 1));
        } else {
            T::fields(value, *this);
        }
    }

    bool m_onlyNeeded;
    std::string m_name;
    int m_count = 0;
    int m_position = -1;
};

template <class R>
R filled(bool onlyNeeded) {
    R record{};
    Filler filler(onlyNeeded);
    R::fields(record, filler);
    return record;
}

// Takes back what the rules of a record forbid side by side; together the variants keep every
// field.
struct Variants {
    template <class R>
    std::vector<R> operator()(const R& full) const {
        return {full};
    }
    std::vector<Party> operator()(const Party& full) const {
        Party given = full;
        given.contactWithheld = false;
        Party withheld = full;
        withheld.contact.reset();
        return {given, withheld};
    }
    std::vector<Lot> operator()(const Lot& full) const {
        Lot drier = full;
        drier.lotKind = LotKind::drier;
        return {drier};
    }
    std::vector<Weighing> operator()(const Weighing& full) const {
        Weighing fromLot = full;
        fromLot.act = WeighingAct::add;
        fromLot.fromMix.reset();
        Weighing fromMix = full;
        fromMix.act = WeighingAct::add;
        fromMix.lot.reset();
        Weighing out = full;
        out.lot.reset();
        out.fromMix.reset();
        return {fromLot, fromMix, out};
    }
    std::vector<Drawdown> operator()(const Drawdown& full) const {
        Drawdown ofMix = full;
        ofMix.lot.reset();
        Drawdown ofLot = full;
        ofLot.mix.reset();
        return {ofMix, ofLot};
    }
    std::vector<Reading> operator()(const Reading& full) const {
        Reading ofDrawdown = full;
        ofDrawdown.impression.reset();
        ofDrawdown.paper.reset();
        Reading ofImpression = full;
        ofImpression.drawdown.reset();
        ofImpression.paper.reset();
        Reading ofPaper = full;
        ofPaper.drawdown.reset();
        ofPaper.impression.reset();
        return {ofDrawdown, ofImpression, ofPaper};
    }
    std::vector<Weather> operator()(const Weather& full) const {
        Weather inWords = full;
        inWords.oktas.reset();
        Weather counted = full;
        counted.sky.reset();
        return {inWords, counted};
    }
    std::vector<Metering> operator()(const Metering& full) const {
        Metering timed = full;
        timed.from = EdtfDate::parse("2026-03-18T09:30");
        timed.to = EdtfDate::parse("2026-03-18T17:00");
        return {timed};
    }
    std::vector<Issue> operator()(const Issue& full) const {
        Issue before = full;
        before.asOf = EdtfDate::ofDay(19000 * minutesPerDay);
        return {before};
    }
    std::vector<Attachment> operator()(const Attachment& full) const {
        Attachment ofEdition = full;
        ofEdition.impression.reset();
        ofEdition.drawdown.reset();
        Attachment ofImpression = full;
        ofImpression.edition.reset();
        ofImpression.drawdown.reset();
        Attachment ofDrawdown = full;
        ofDrawdown.edition.reset();
        ofDrawdown.impression.reset();
        return {ofEdition, ofImpression, ofDrawdown};
    }
};

// Sound records with every field filled, one or more of each kind, with ids "full-pull-0". They
// name the records of namedRecords().
inline std::vector<Record> fullRecords() {
    std::vector<Record> records;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        int number = 0;
        for (R record : Variants{}(filled<R>(false))) {
            record.id = std::string("full-") + textOf(R::kind) + "-" + std::to_string(number++);
            records.push_back(std::move(record));
        }
    });
    return records;
}

// Adds what a record with nothing but its needed fields still lacks.
struct Needs {
    template <class R>
    void operator()(R&, const std::string&) const {}
    void operator()(Edition& r, const std::string& ending) const { r.code = "code" + ending; }
    void operator()(Impression& r, const std::string& ending) const {
        r.workingNumber = ending == "-a" ? 1001 : 1002;
    }
    void operator()(Layer& r, const std::string& ending) const {
        r.ordinal = ending == "-a" ? 901 : 902;
    }
    void operator()(Weighing& r, const std::string&) const {
        r.act = WeighingAct::add;
        r.lot = Ref<Lot>{"lot-a"};
    }
    void operator()(Pull& r, const std::string&) const { r.impressions = {{"impression-a"}}; }
    void operator()(Drawdown& r, const std::string&) const { r.mix = Ref<Mix>{"mix-a"}; }
    void operator()(Reading& r, const std::string&) const {
        r.paper = "the paper";
        r.spectrum = {};
        r.labL = 90;
        r.labA = 0;
        r.labB = -1.5;
    }
    void operator()(Move& r, const std::string&) const { r.impressions = {{"impression-a"}}; }
    void operator()(Look& r, const std::string&) const {
        r.impressions = {{"impression-a"}};
        r.touch = Touch::dry;
    }
    void operator()(Transfer& r, const std::string&) const { r.impressions = {{"impression-a"}}; }
    void operator()(Party& r, const std::string&) const { r.contactWithheld = false; }
    void operator()(Weather& r, const std::string&) const { r.sky = Sky::broken; }
    void operator()(Metering& r, const std::string&) const {
        r.from = EdtfDate::parse("2026-03-19T09:30");
        r.to = EdtfDate::parse("2026-03-19T17:00");
        r.exposure_lxh = 900;
    }
};

// Two sound records of each kind but the book, with little in them: "pull-a", "pull-b".
inline std::vector<Record> namedRecords() {
    std::vector<Record> records;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        if (R::kind == RecordKind::book)
            return;
        for (const std::string ending : {"-a", "-b"}) {
            R record = filled<R>(true);
            record.id = textOf(R::kind) + ending;
            Needs{}(record, ending);
            records.push_back(std::move(record));
        }
    });
    return records;
}

}  // namespace rackbook::test
