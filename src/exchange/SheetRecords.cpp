#include "exchange/SheetRecords.h"

#include <array>
#include <set>
#include <unordered_map>

#include "exchange/RecordCodec.h"
#include "exchange/TreeJson.h"
#include "records/AsItStood.h"
#include "records/FieldTraits.h"

namespace rackbook {

namespace {

using Positions = std::vector<std::size_t>;
using ById = std::unordered_map<std::string, Positions>;

constexpr std::size_t kinds = std::size(EnumText<RecordKind>::names);

std::size_t numberOf(RecordKind kind) {
    return static_cast<std::size_t>(kind);
}

// Which records of R name an id.
template <class R, class F>
ById positionsBy(const RecordSet& records, F&& idsOf) {
    ById found;
    for (std::size_t i = 0; i < records.of<R>().size(); ++i)
        for (const std::string& id : idsOf(records.of<R>()[i])) {
            Positions& positions = found[id];
            if (positions.empty() || positions.back() != i)
                positions.push_back(i);
        }
    return found;
}

template <class R>
std::vector<std::string> idsOf(const std::vector<Ref<R>>& refs) {
    std::vector<std::string> ids;
    for (const Ref<R>& ref : refs)
        ids.push_back(ref.id);
    return ids;
}

template <class R>
std::vector<std::string> idsOf(const std::optional<Ref<R>>& ref) {
    return ref ? std::vector{ref->id} : std::vector<std::string>();
}

std::vector<std::string> lookedAt(const Look& look) {
    std::vector<std::string> ids = idsOf(look.impressions);
    for (const Ref<Impression>& ref : look.standsFor)
        ids.push_back(ref.id);
    return ids;
}

struct Indexes {
    explicit Indexes(const RecordSet& records) {
        impressions = positionsBy<Impression>(
            records, [](const Impression& r) { return std::vector{r.edition.id}; });
        blocks =
            positionsBy<Block>(records, [](const Block& r) { return std::vector{r.edition.id}; });
        layers =
            positionsBy<Layer>(records, [](const Layer& r) { return std::vector{r.edition.id}; });
        pulls = positionsBy<Pull>(records, [](const Pull& r) { return idsOf(r.impressions); });
        pullsOfLayer =
            positionsBy<Pull>(records, [](const Pull& r) { return std::vector{r.layer.id}; });
        moves = positionsBy<Move>(records, [](const Move& r) { return idsOf(r.impressions); });
        looks = positionsBy<Look>(records, lookedAt);
        weighings =
            positionsBy<Weighing>(records, [](const Weighing& r) { return std::vector{r.mix.id}; });
        drawdowns = positionsBy<Drawdown>(records, [](const Drawdown& r) { return idsOf(r.mix); });
        readings =
            positionsBy<Reading>(records, [](const Reading& r) { return idsOf(r.drawdown); });
        pictures =
            positionsBy<Attachment>(records, [](const Attachment& r) { return idsOf(r.edition); });
    }

    ById impressions;  // by edition
    ById blocks;       // by edition
    ById layers;       // by edition
    ById pulls;        // by impression
    ById pullsOfLayer;
    ById moves;      // by impression
    ById looks;      // by impression
    ById weighings;  // by mix
    ById drawdowns;  // by mix
    ById readings;   // by drawdown
    ById pictures;   // by edition
};

// Where a tin or a jar stands is no part of what was printed.
void leaveAside(Lot& lot, const SheetDepth& depth) {
    if (!depth.stock)
        lot.place.reset();
}

void leaveAside(Mix& mix, const SheetDepth& depth) {
    if (!depth.stock)
        mix.place.reset();
}

// Rules and skies matter where light is judged, rules also where the age of tins is.
void leaveAside(Book& book, const SheetDepth& depth) {
    if (!depth.light && !depth.stock)
        book.houseRules.clear();
    if (!depth.light)
        book.monthlySkies.clear();
}

template <class R>
void leaveAside(R&, const SheetDepth&) {}

RecordSet recordsFor(const RecordSet& all, const SheetDepth& depth, CivilMinute asOf) {
    const RecordSet cleaned = withoutPrivate(all, depth.privacy);
    RecordSet records;
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (R record : cleaned.of<R>()) {
            standAt(record, asOf);
            leaveAside(record, depth);
            records.add(std::move(record));
        }
    });
    return records;
}

}  // namespace

struct SheetRecords::Inner {
    Inner(const RecordSet& all, const SheetDepth& sheetDepth, CivilMinute asOfMinute)
        : records(recordsFor(all, sheetDepth, asOfMinute)),
          depth(sheetDepth),
          asOf(asOfMinute),
          indexes(records) {
        forEachRecordType([&](auto tag) {
            using R = typename decltype(tag)::Type;
            texts[numberOf(R::kind)].resize(records.of<R>().size());
        });
    }

    template <class R>
    const std::string& textOf(std::size_t position) const {
        std::string& text = texts[numberOf(R::kind)][position];
        if (text.empty())
            text = encodeRecord(records.of<R>()[position]);
        return text;
    }

    RecordSet records;
    SheetDepth depth;
    CivilMinute asOf;
    Indexes indexes;
    // By kind and position, made when first asked for.
    mutable std::array<std::vector<std::string>, kinds> texts;
};

namespace {

// The positions of the records that belong together.
template <class Inner>
class Gathering {
public:
    explicit Gathering(const Inner& inner) : m_inner(inner) {}

    // With all that it names, but for impressions: those named together with a wanted one are
    // not what the sheet is about.
    template <class R>
    void take(std::size_t position) {
        const R& record = m_inner.records.template of<R>()[position];
        if (isAfter(happenedAt(record), m_inner.asOf) ||
            !m_taken[numberOf(R::kind)].insert(position).second)
            return;
        NamedBy named{*this};
        R::fields(record, named);
        takeWhatIsBehind(record);
    }

    template <class R>
    void take(const std::string& id) {
        const int position = m_inner.records.template indexOf<R>(id);
        if (position >= 0)
            take<R>(static_cast<std::size_t>(position));
    }

    template <class R>
    void takeAll(const ById& index, const std::string& id) {
        const auto found = index.find(id);
        if (found == index.end())
            return;
        for (const std::size_t position : found->second)
            take<R>(position);
    }

    template <class R>
    void takeEvery() {
        for (std::size_t i = 0; i < m_inner.records.template of<R>().size(); ++i)
            take<R>(i);
    }

    void takeEdition(const std::string& id) {
        take<Edition>(id);
        takeAll<Block>(m_inner.indexes.blocks, id);
        takeAll<Layer>(m_inner.indexes.layers, id);
        takeAll<Attachment>(m_inner.indexes.pictures, id);
    }

    void takeImpression(const std::string& id) {
        take<Impression>(id);
        takeAll<Pull>(m_inner.indexes.pulls, id);
        if (!m_inner.depth.light)
            return;
        takeAll<Move>(m_inner.indexes.moves, id);
        takeAll<Look>(m_inner.indexes.looks, id);
    }

    void takeImpressionsOf(const std::string& edition) {
        const auto found = m_inner.indexes.impressions.find(edition);
        if (found == m_inner.indexes.impressions.end())
            return;
        for (const std::size_t position : found->second)
            takeImpression(m_inner.records.template of<Impression>()[position].id);
    }

    std::vector<std::string> texts() const {
        std::vector<std::string> lines;
        forEachRecordType([&](auto tag) {
            using R = typename decltype(tag)::Type;
            for (const std::size_t position : m_taken[numberOf(R::kind)])
                lines.push_back(m_inner.template textOf<R>(position));
        });
        return lines;
    }

private:
    struct NamedBy {
        Gathering& gathering;

        template <class T>
        void operator()(const char*, const T& value) {
            follow(value);
        }
        template <class R>
        void follow(const Ref<R>& ref) {
            if constexpr (!std::is_same_v<R, Impression>)
                gathering.template take<R>(ref.id);
        }
        template <class R>
        void follow(const std::optional<Ref<R>>& ref) {
            if (ref)
                follow(*ref);
        }
        template <class R>
        void follow(const std::vector<Ref<R>>& refs) {
            for (const Ref<R>& ref : refs)
                follow(ref);
        }
        template <class T>
        void follow(const T&) {}
    };

    // Weighings name their mixes, not the other way round.
    void takeWhatIsBehind(const Mix& mix) {
        takeAll<Weighing>(m_inner.indexes.weighings, mix.id);
        if (m_inner.depth.swatches)
            takeAll<Drawdown>(m_inner.indexes.drawdowns, mix.id);
    }
    void takeWhatIsBehind(const Drawdown& drawdown) {
        if (m_inner.depth.swatches)
            takeAll<Reading>(m_inner.indexes.readings, drawdown.id);
    }
    template <class R>
    void takeWhatIsBehind(const R&) {}

    const Inner& m_inner;
    std::array<std::set<std::size_t>, kinds> m_taken;
};

// What was handed over, but not how it was made: that is not the other party's business.
template <class Inner>
void takeTransfer(Gathering<Inner>& gathering, const Inner& inner, const std::string& id) {
    gathering.template take<Transfer>(id);
    if (const Transfer* transfer = inner.records.template find<Transfer>(id))
        for (const Ref<Impression>& ref : transfer->impressions)
            gathering.template take<Impression>(ref.id);
}

template <class Inner>
void takeSubject(Gathering<Inner>& gathering, const Inner& inner, const SheetAbout& about) {
    if (about.edition)
        gathering.takeEdition(*about.edition);
    for (const std::string& id : about.impressions) {
        gathering.takeImpression(id);
        if (const Impression* impression = inner.records.template find<Impression>(id))
            gathering.takeEdition(impression->edition.id);
    }
    if (about.edition && about.impressions.empty() && !about.layer)
        gathering.takeImpressionsOf(*about.edition);
    if (about.layer) {
        gathering.template take<Layer>(*about.layer);
        gathering.template takeAll<Pull>(inner.indexes.pullsOfLayer, *about.layer);
    }
    if (about.mix)
        gathering.template take<Mix>(*about.mix);
    if (about.transfer)
        takeTransfer(gathering, inner, *about.transfer);
    if (about.place)
        gathering.template take<Place>(*about.place);
}

bool isAboutAll(const SheetAbout& about) {
    return !about.edition && about.impressions.empty() && !about.layer && !about.mix &&
           !about.transfer && !about.place;
}

Tree aboutTree(const SheetAbout& about) {
    Tree tree = Tree::object();
    const auto set = [&](const char* name, const std::optional<std::string>& id) {
        if (id)
            tree.set(name, *id);
    };
    set("edition", about.edition);
    if (!about.impressions.empty()) {
        Tree list = Tree::array();
        for (const std::string& id : about.impressions)
            list.add(id);
        tree.set("impressions", std::move(list));
    }
    set("layer", about.layer);
    set("mix", about.mix);
    set("transfer", about.transfer);
    set("place", about.place);
    return tree;
}

}  // namespace

SheetRecords::SheetRecords(const RecordSet& records, const SheetDepth& depth, CivilMinute asOf)
    : m_inner(std::make_unique<Inner>(records, depth, asOf)) {}

SheetRecords::~SheetRecords() = default;

bool isStorage(const Place& place) {
    return place.placeKind == PlaceKind::drawer || place.placeKind == PlaceKind::box ||
           place.placeKind == PlaceKind::shelf;
}

std::string SheetRecords::textFor(const SheetHeading& heading) const {
    Gathering<Inner> gathering(*m_inner);
    gathering.takeEvery<Book>();
    takeSubject(gathering, *m_inner, heading.about);
    if (isAboutAll(heading.about) && !m_inner->depth.stock && !m_inner->depth.storage)
        for (const Edition& edition : m_inner->records.of<Edition>()) {
            gathering.takeEdition(edition.id);
            gathering.takeImpressionsOf(edition.id);
        }
    if (m_inner->depth.storage)
        for (const Place& place : m_inner->records.of<Place>())
            if (isStorage(place))
                gathering.take<Place>(place.id);
    if (isAboutAll(heading.about) && m_inner->depth.mixes)
        gathering.takeEvery<Mix>();
    if (m_inner->depth.stock) {
        gathering.takeEvery<Lot>();
        gathering.takeEvery<Mix>();
        gathering.takeEvery<StockTake>();
    }
    Tree head = Tree::object();
    head.set("rackbookSheet", 1)
        .set("sheet", heading.sheet)
        .set("asOf", heading.asOf)
        .set("language", heading.language)
        .set("about", aboutTree(heading.about))
        .set("namesHolders", m_inner->depth.privacy.namesHolders);
    std::string text = jsonText(head);
    text.erase(text.rfind("\n}"));
    text += ",\n  \"records\": [";
    const char* before = "\n    ";
    for (const std::string& record : gathering.texts()) {
        text += before + record;
        before = ",\n    ";
    }
    return text + "\n  ]\n}\n";
}

}  // namespace rackbook
