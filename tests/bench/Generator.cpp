#include "Generator.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <random>
#include <string>

namespace rackbook {

namespace {

constexpr CivilMinute firstDay = 20000 * minutesPerDay;  // 2024-10-04
constexpr int sheetsOfEdition = 40;                      // on the average

}  // namespace

class GeneratedStudio::Inner {
public:
    Inner(int impressions, std::uint32_t seed, StudioLife life)
        : m_life(life),
          m_left(impressions),
          m_drawers(life == StudioLife::years ? 20 + impressions / 2000 : 20),
          m_expected(std::max(1, impressions / sheetsOfEdition)),
          m_random(seed) {}

    std::vector<Record> next() {
        m_records.clear();
        if (!m_begun) {
            makePlaces();
            makeLots();
            m_begun = true;
        } else if (m_left > 0) {
            makeEdition();
        }
        return std::move(m_records);
    }

private:
    bool isLong() const { return m_life == StudioLife::years; }

    // Of a long life the last hundred or so are in work still.
    bool isInWork() const {
        return isLong() && m_editions > m_expected - std::min(150, 1 + m_expected / 5);
    }

    bool isOver() const { return isInWork() && m_now >= m_end; }

    CivilMinute dayBegun() {
        if (!isLong())
            return firstDay + between(0, 500) * minutesPerDay;
        if (isInWork())
            return m_end - between(5, 75) * minutesPerDay;
        constexpr CivilMinute years = 25 * 365 * minutesPerDay;
        constexpr CivilMinute longest = 160 * minutesPerDay;
        return m_end - longest - years + years * std::min(m_editions, m_expected) / m_expected;
    }

    int between(int low, int high) {
        return std::uniform_int_distribution<int>(low, high)(m_random);
    }

    double grams(double low, double high) {
        const double value = std::uniform_real_distribution<double>(low, high)(m_random);
        return static_cast<double>(static_cast<long>(value * 100)) / 100;
    }

    void makePlaces() {
        Book book;
        book.id = "book";
        book.studio = "Measured studio (invented)";
        book.timeZone = "Europe/Copenhagen";
        book.latitude_deg = 56;
        book.longitude_deg = 10;
        m_records.emplace_back(book);
        Party maker;
        maker.id = "maker";
        maker.name = "A maker (invented)";
        maker.roles = {PartyRole::maker};
        m_records.emplace_back(maker);
        for (int i = 0; i < racks; ++i)
            makePlace("rack-" + std::to_string(i), PlaceKind::rack, LightKind::daylight);
        makePlace("line", PlaceKind::rack, LightKind::daylight);
        for (int i = 0; i < m_drawers; ++i)
            makePlace("drawer-" + std::to_string(i), PlaceKind::drawer, LightKind::dark);
        for (int i = 0; isLong() && i < buyers; ++i)
            makeBuyer("buyer-" + std::to_string(i));
    }

    void makeBuyer(const std::string& id) {
        Party buyer;
        buyer.id = id;
        buyer.name = "Buyer " + id + " (invented)";
        m_records.emplace_back(buyer);
        Place place;
        place.id = id + "-home";
        place.name = "With " + id;
        place.placeKind = PlaceKind::holderAddress;
        place.holder = Ref<Party>{id};
        m_records.emplace_back(place);
    }

    void makePlace(const std::string& id, PlaceKind kind, LightKind lightKind) {
        Place place;
        place.id = id;
        place.name = id;
        place.placeKind = kind;
        Light light;
        light.lightKind = lightKind;
        if (lightKind == LightKind::daylight) {
            light.daylightFactor_pct = between(2, 10);
            light.directSun = false;
        }
        place.light = {light};
        m_records.emplace_back(place);
    }

    void makeLots() {
        for (int i = 0; i < lotsAtOnce; ++i) {
            Lot lot;
            lot.id = "lot-" + std::to_string(m_firstLot + i);
            lot.lotKind = i < 3 ? LotKind::base : i < 5 ? LotKind::drier : LotKind::ink;
            lot.colourWords = "colour " + std::to_string(i);
            if (lot.lotKind == LotKind::ink)
                lot.pigments = {"PB15:" + std::to_string(1 + i % 6)};
            lot.netMass_g = 1000;
            if (isLong() && m_editions + editionsOfLots < m_expected)
                lot.finishedOn = EdtfDate::ofDay(dayBegun() + 300 * minutesPerDay);
            m_records.emplace_back(lot);
        }
    }

    void makeEdition() {
        m_code = "E" + std::to_string(++m_editions);
        if (isLong() && m_editions % editionsOfLots == 0) {
            m_firstLot += lotsAtOnce;
            makeLots();
        }
        m_sheets = std::min(m_left, between(20, 60));
        m_left -= m_sheets;
        m_now = dayBegun();
        m_holders.clear();
        Edition edition;
        edition.id = m_code;
        edition.code = m_code;
        edition.title = "Edition " + m_code;
        edition.maker.id = "maker";
        edition.process = "reduction linocut";
        edition.year = EdtfDate::parse("2025");
        edition.declaredNumbered = m_sheets;
        m_records.emplace_back(edition);
        m_printed.clear();
        for (int i = 1; i <= m_sheets; ++i)
            m_printed.push_back({m_code + "/" + std::to_string(i)});
        m_spoiled.clear();
        const std::size_t impressionsAt = m_records.size();
        const int layers = between(5, 8);
        for (int ordinal = 1; ordinal <= layers && !isOver(); ++ordinal)
            makeLayer(ordinal);
        finish();
        addImpressions(impressionsAt);
    }

    void addImpressions(std::size_t at) {
        std::vector<Record> impressions;
        for (int i = 1; i <= m_sheets; ++i) {
            Impression impression;
            impression.id = m_code + "/" + std::to_string(i);
            impression.edition.id = m_code;
            impression.workingNumber = i;
            const bool spoiled =
                std::find(m_spoiled.begin(), m_spoiled.end(), impression.id) != m_spoiled.end();
            if (spoiled) {
                impression.fate = ImpressionFate::spoiled;
            } else if (!isInWork()) {
                impression.designation = std::to_string(i) + "/" + std::to_string(m_sheets);
                impression.designationKind = DesignationKind::numbered;
                impression.signedOn = EdtfDate::ofDay(m_now);
            }
            const auto holder = m_holders.find(impression.id);
            if (holder != m_holders.end())
                impression.holder = Ref<Party>{holder->second};
            impressions.emplace_back(impression);
        }
        m_records.insert(m_records.begin() + static_cast<std::ptrdiff_t>(at), impressions.begin(),
                         impressions.end());
    }

    std::string makeMix(const std::string& id, MixPurpose purpose) {
        Mix mix;
        mix.id = id;
        mix.name = "Mix " + id;
        mix.purpose = purpose;
        mix.drierFree = purpose != MixPurpose::portion;
        mix.edition = Ref<Edition>{m_code};
        mix.madeOn = EdtfDate::ofDay(m_now);
        m_records.emplace_back(mix);
        m_weighings = 0;
        return id;
    }

    void weigh(const std::string& mix, const std::string& lot, const std::string& fromMix,
               double mass_g) {
        Weighing weighing;
        weighing.id = mix + "/" + std::to_string(++m_weighings);
        weighing.mix.id = mix;
        weighing.at = EdtfDate::ofMinute(m_now + m_weighings);
        if (!lot.empty())
            weighing.lot = Ref<Lot>{lot};
        else
            weighing.fromMix = Ref<Mix>{fromMix};
        weighing.mass_g = mass_g;
        m_records.emplace_back(weighing);
    }

    std::string lotNumber(int low, int high) {
        return "lot-" + std::to_string(m_firstLot + between(low, high));
    }

    void makeLayer(int ordinal) {
        const std::string id = m_code + "/L" + std::to_string(ordinal);
        const std::string stock = makeMix(id + "/stock", MixPurpose::stock);
        for (int i = 0; i < 3; ++i)
            weigh(stock, lotNumber(5, 39), {}, grams(5, 20));
        const std::string letDown = makeMix(id + "/let-down", MixPurpose::letDown);
        weigh(letDown, lotNumber(0, 2), {}, grams(150, 250));
        weigh(letDown, {}, stock, grams(4, 8));
        Layer layer;
        layer.id = id;
        layer.edition.id = m_code;
        layer.ordinal = ordinal;
        layer.colourWords = "tint " + std::to_string(ordinal);
        layer.mix = Ref<Mix>{letDown};
        layer.coverage = 0.5;
        m_records.emplace_back(layer);
        const std::size_t half = m_printed.size() > 25 ? m_printed.size() / 2 : m_printed.size();
        pull(id, letDown, 0, half);
        if (half < m_printed.size())
            pull(id, letDown, half, m_printed.size());
        m_printed.erase(std::remove_if(m_printed.begin(), m_printed.end(),
                                       [&](const Ref<Impression>& sheet) {
                                           return std::find(m_spoiled.begin(), m_spoiled.end(),
                                                            sheet.id) != m_spoiled.end();
                                       }),
                        m_printed.end());
        m_now += 6 * minutesPerDay;
    }

    void pull(const std::string& layer, const std::string& letDown, std::size_t from,
              std::size_t to) {
        const std::string suffix = from == 0 ? "a" : "b";
        const std::string portion = makeMix(layer + "/portion-" + suffix, MixPurpose::portion);
        weigh(portion, {}, letDown, grams(40, 60));
        weigh(portion, lotNumber(3, 4), {}, grams(0.6, 1.2));
        m_now += 60;
        Pull pull;
        pull.id = layer + "/pull-" + suffix;
        pull.layer.id = layer;
        pull.start = EdtfDate::ofMinute(m_now);
        pull.portion = Ref<Mix>{portion};
        pull.impressions.assign(m_printed.begin() + static_cast<std::ptrdiff_t>(from),
                                m_printed.begin() + static_cast<std::ptrdiff_t>(to));
        pull.inkBefore_g = 40;
        pull.inkAfter_g = 22.5;
        if (between(0, 2) == 0) {
            pull.spoiled = {pull.impressions.back()};
            m_spoiled.push_back(pull.spoiled.front().id);
        }
        m_now += 180;
        // Wet sheets hang on a line for a night, then on a rack.
        move(layer + "/hang-" + suffix, pull.impressions, "line", MoveWhy::hang);
        m_now += 900;
        move(layer + "/rack-" + suffix, pull.impressions,
             "rack-" + std::to_string(between(0, racks - 1)), MoveWhy::hang);
        m_records.emplace_back(std::move(pull));
    }

    void move(const std::string& id, std::vector<Ref<Impression>> sheets, const std::string& to,
              MoveWhy why) {
        Move move;
        move.id = id;
        move.impressions = std::move(sheets);
        move.to.id = to;
        move.at = EdtfDate::ofMinute(m_now);
        move.why = why;
        m_records.emplace_back(std::move(move));
    }

    void finish() {
        if (isInWork())
            return;
        m_now += between(3, 10) * minutesPerDay;
        look("early", LookColour::turned);
        m_now += between(10, 40) * minutesPerDay;
        look("late", LookColour::trueColour);
        if (isLong() || between(0, 1) == 0) {
            m_now += between(3, 9) * minutesPerDay;
            look("again", LookColour::trueColour);
        }
        const std::size_t stored = isLong() ? m_printed.size() : m_printed.size() / 2;
        const std::string drawer = "drawer-" + std::to_string(between(0, m_drawers - 1));
        if (stored > 0)
            move(m_code + "/store", firstOf(stored), drawer, MoveWhy::store);
        if (isLong() && m_printed.size() > 3)
            sell();
    }

    std::vector<Ref<Impression>> firstOf(std::size_t count) const {
        return {m_printed.begin(), m_printed.begin() + static_cast<std::ptrdiff_t>(count)};
    }

    // A third goes to one buyer.
    void sell() {
        const std::string buyer = "buyer-" + std::to_string(between(0, buyers - 1));
        m_now += minutesPerDay;
        Transfer sale;
        sale.id = m_code + "/sale";
        sale.impressions = firstOf(m_printed.size() / 3);
        sale.giver.id = "maker";
        sale.receiver.id = buyer;
        sale.agreedOn = EdtfDate::ofDay(m_now);
        for (const Ref<Impression>& sheet : sale.impressions)
            m_holders[sheet.id] = buyer;
        move(m_code + "/sold", sale.impressions, buyer + "-home", MoveWhy::sell);
        m_records.emplace_back(std::move(sale));
    }

    void look(const std::string& when, LookColour colour) {
        Look look;
        look.id = m_code + "/look-" + when;
        look.impressions = {m_printed.front()};
        look.standsFor.assign(m_printed.begin() + 1, m_printed.end());
        look.at = EdtfDate::ofMinute(m_now);
        look.touch = Touch::dry;
        look.colour = colour;
        m_records.emplace_back(std::move(look));
    }

    static constexpr int racks = 6;
    static constexpr int buyers = 50;
    static constexpr int lotsAtOnce = 40;
    static constexpr int editionsOfLots = 20;  // until the tins are empty

    static constexpr CivilMinute m_end = 20605 * minutesPerDay;  // 2026-06-01

    StudioLife m_life;
    int m_left;
    int m_drawers;
    int m_expected;  // editions
    bool m_begun = false;
    int m_firstLot = 0;
    std::map<std::string, std::string> m_holders;  // of this edition's sheets
    std::mt19937 m_random;
    std::vector<Record> m_records;
    int m_editions = 0;
    std::string m_code;
    int m_sheets = 0;
    CivilMinute m_now = firstDay;
    int m_weighings = 0;
    std::vector<Ref<Impression>> m_printed;
    std::vector<std::string> m_spoiled;
};

GeneratedStudio::GeneratedStudio(int impressions, std::uint32_t seed, StudioLife life)
    : m_inner(std::make_unique<Inner>(impressions, seed, life)) {}

GeneratedStudio::~GeneratedStudio() = default;

std::vector<Record> GeneratedStudio::next() {
    return m_inner->next();
}

std::vector<Record> generatedRecords(int impressions, std::uint32_t seed) {
    GeneratedStudio studio(impressions, seed, StudioLife::season);
    std::vector<Record> records;
    for (std::vector<Record> some = studio.next(); !some.empty(); some = studio.next())
        records.insert(records.end(), std::make_move_iterator(some.begin()),
                       std::make_move_iterator(some.end()));
    return records;
}

}  // namespace rackbook
