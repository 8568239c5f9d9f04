#include "exchange/SheetRecords.h"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "exchange/RecordCodec.h"
#include "exchange/SheetGathering.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t kinds = std::size(EnumText<RecordKind>::names);

class LeavingAside {
public:
    LeavingAside(RecordKind kind, const SheetDepth& depth) : m_kind(kind), m_depth(depth) {}

    template <class T>
    void operator()(const char* field, std::optional<T>& value) {
        if (isLeftAside(m_kind, field, m_depth))
            value.reset();
    }
    template <class T>
    void operator()(const char* field, std::vector<T>& values) {
        if (isLeftAside(m_kind, field, m_depth))
            values.clear();
    }
    template <class T>
    void operator()(const char*, T&) {}

private:
    RecordKind m_kind;
    const SheetDepth& m_depth;
};

void keepOnly(std::vector<Ref<Impression>>& list, const SheetGathering& gathering) {
    list.erase(std::remove_if(
                   list.begin(), list.end(),
                   [&](const Ref<Impression>& ref) { return !gathering.hasImpression(ref.id); }),
               list.end());
}

// Prints that went along are nobody's business who asks about another. Those of a run stay: how
// much ink one sheet got follows from how many there were. Whether the record is of such a kind.
bool listOnlyOwn(Record& record, const SheetGathering& gathering) {
    if (Move* move = std::get_if<Move>(&record))
        keepOnly(move->impressions, gathering);
    else if (Transfer* transfer = std::get_if<Transfer>(&record))
        keepOnly(transfer->impressions, gathering);
    else if (Look* look = std::get_if<Look>(&record)) {
        // A look that stands for a print was a look at others, by which it is judged.
        const std::vector<Ref<Impression>> sample = look->impressions;
        keepOnly(look->impressions, gathering);
        keepOnly(look->standsFor, gathering);
        if (look->impressions.empty())
            look->impressions = sample;
    } else
        return false;
    return true;
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

struct SheetRecords::Inner {
    Inner(const SheetIndexes& bookIndexes, const SheetDepth& sheetDepth, CivilMinute asOfMinute)
        : indexes(bookIndexes),
          depth(sheetDepth),
          asOf(asOfMinute),
          then(bookIndexes.records, asOfMinute),
          withheld(bookIndexes.records, sheetDepth.privacy) {}

    std::string headFor(const SheetHeading& heading) const {
        Tree head = Tree::object();
        head.set("rackbookSheet", sheetRecordForm)
            .set("sheet", heading.sheet)
            .set("asOf", heading.asOf)
            .set("language", heading.language)
            .set("about", aboutTree(heading.about))
            .set("namesHolders", depth.privacy.namesHolders);
        std::string text = jsonText(head);
        text.erase(text.rfind("\n}"));
        return text;
    }

    template <class R>
    std::string textOf(std::size_t position, const SheetGathering& gathering,
                       WithheldNames& names) {
        std::unordered_map<std::size_t, std::string>& known =
            shared[static_cast<std::size_t>(R::kind)];
        if (const auto found = known.find(position); found != known.end())
            return found->second;
        Record record = then.copyOf(indexes.records.of<R>()[position]);
        withoutPrivate(record, depth.privacy);
        LeavingAside leavingAside(R::kind, depth);
        R::fields(std::get<R>(record), leavingAside);
        const bool listsOwn = listOnlyOwn(record, gathering);
        const bool isRenamed = withheld.rename(record, names);
        std::string text = encodeRecord(record);
        if (!listsOwn && !isRenamed)
            known.emplace(position, text);
        return text;
    }

    const SheetIndexes& indexes;
    SheetDepth depth;
    CivilMinute asOf;
    RecordsThen then;
    Withheld withheld;
    // By kind and position: texts that are the same on every sheet, made when first asked for.
    std::array<std::unordered_map<std::size_t, std::string>, kinds> shared;
};

SheetRecords::SheetRecords(const SheetIndexes& indexes, const SheetDepth& depth, CivilMinute asOf)
    : m_inner(std::make_unique<Inner>(indexes, depth, asOf)) {}

SheetRecords::~SheetRecords() = default;

bool isStorage(const Place& place) {
    return place.placeKind == PlaceKind::drawer || place.placeKind == PlaceKind::box ||
           place.placeKind == PlaceKind::shelf;
}

bool isLeftAside(RecordKind kind, std::string_view field, const SheetDepth& depth) {
    if (kind == RecordKind::book)
        return field == "houseRules" || field == "monthlySkies";
    return !depth.stock && field == "place" && (kind == RecordKind::lot || kind == RecordKind::mix);
}

std::string SheetRecords::textFor(const SheetHeading& heading) const {
    SheetGathering gathering(m_inner->indexes, m_inner->then, m_inner->withheld, m_inner->depth,
                             m_inner->asOf);
    gathering.takeFor(heading.about);
    WithheldNames names;
    std::string text = m_inner->headFor(heading) + ",\n  \"records\": [";
    const char* before = "\n    ";
    forEachRecordType([&](auto tag) {
        using R = typename decltype(tag)::Type;
        for (const std::size_t position : gathering.taken(R::kind)) {
            text += before + m_inner->template textOf<R>(position, gathering, names);
            before = ",\n    ";
        }
    });
    return text + "\n  ]\n}\n";
}

}  // namespace rackbook
