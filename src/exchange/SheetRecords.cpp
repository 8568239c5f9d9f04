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

void keepOnly(std::vector<Ref<Impression>>& list, const SheetGathering& gathering) {
    list.erase(std::remove_if(
                   list.begin(), list.end(),
                   [&](const Ref<Impression>& ref) { return !gathering.hasImpression(ref.id); }),
               list.end());
}

// Prints that went along are nobody's business who asks about another. Whether the record is of
// such a kind.
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
    } else if (Pull* pull = std::get_if<Pull>(&record)) {
        if (!gathering.listsOwnPulls())
            return false;
        keepOnly(pull->impressions, gathering);
        keepOnly(pull->spoiled, gathering);
    } else
        return false;
    return true;
}

// Where a pull lists only some: how much ink one sheet got follows from how many there were.
void addCountOfRun(std::string& text, std::size_t impressions) {
    text.insert(text.size() - 1, ",\"impressionCount\":" + std::to_string(impressions));
}

const std::vector<std::string_view>* printedFields(RecordKind kind, const SheetDepth& depth) {
    for (const PrintedFields& printed : depth.printed)
        if (printed.kind == kind)
            return &printed.fields;
    return nullptr;
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
    Inner(const SheetIndexes& bookIndexes, const SheetDepth& sheetDepth, CivilMinute asOfMinute,
          EstimatesOf reckoned)
        : indexes(bookIndexes),
          depth(sheetDepth),
          asOf(asOfMinute),
          estimatesOf(std::move(reckoned)),
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
        const bool mayBeShared = R::kind != RecordKind::pull || !gathering.listsOwnPulls();
        std::unordered_map<std::size_t, std::string>& known =
            shared[static_cast<std::size_t>(R::kind)];
        if (const auto found = known.find(position); mayBeShared && found != known.end())
            return found->second;
        const R& original = indexes.records.of<R>()[position];
        Record record = then.copyOf(original);
        withoutPrivate(record, depth.privacy);
        const bool listsOwn = listOnlyOwn(record, gathering);
        const bool isRenamed = withheld.rename(record, names);
        std::string text = encodeRecordWithout(
            record, [this](std::string_view field) { return isLeftAside(R::kind, field, depth); });
        if constexpr (std::is_same_v<R, Pull>)
            if (std::get<Pull>(record).impressions.size() < original.impressions.size())
                addCountOfRun(text, original.impressions.size());
        if (!listsOwn && !isRenamed)
            known.emplace(position, text);
        return text;
    }

    // In the order of the records of the impressions.
    std::string estimates(const SheetGathering& gathering) const {
        std::string text;
        if (!estimatesOf || !depth.light)
            return text;
        for (const std::size_t position : gathering.taken(RecordKind::impression)) {
            const std::string& id = indexes.records.of<Impression>()[position].id;
            const std::optional<Tree> one =
                gathering.isJudged(id) ? estimatesOf(id) : std::optional<Tree>();
            if (one)
                text += (text.empty() ? "\n    " : ",\n    ") + jsonLine(*one);
        }
        return text.empty() ? text : ",\n  \"estimates\": [" + text + "\n  ]";
    }

    const SheetIndexes& indexes;
    SheetDepth depth;
    CivilMinute asOf;
    EstimatesOf estimatesOf;
    RecordsThen then;
    Withheld withheld;
    // By kind and position: texts that are the same on every sheet, made when first asked for.
    std::array<std::unordered_map<std::size_t, std::string>, kinds> shared;
};

SheetRecords::SheetRecords(const SheetIndexes& indexes, const SheetDepth& depth, CivilMinute asOf,
                           EstimatesOf estimatesOf)
    : m_inner(std::make_unique<Inner>(indexes, depth, asOf, std::move(estimatesOf))) {}

SheetRecords::~SheetRecords() = default;

bool isStorage(const Place& place) {
    return place.placeKind == PlaceKind::drawer || place.placeKind == PlaceKind::box ||
           place.placeKind == PlaceKind::shelf;
}

bool isLeftAside(RecordKind kind, std::string_view field, const SheetDepth& depth) {
    if (field == "id")
        return false;
    if (const std::vector<std::string_view>* printed = printedFields(kind, depth))
        return std::find(printed->begin(), printed->end(), field) == printed->end();
    if (kind == RecordKind::book)
        return field != "studio" && field != "lengthUnit";
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
    return text + "\n  ]" + m_inner->estimates(gathering) + "\n}\n";
}

}  // namespace rackbook
