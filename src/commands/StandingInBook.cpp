#include "commands/StandingInBook.h"

#include <map>
#include <memory>
#include <unordered_set>

#include "commands/FieldText.h"
#include "exchange/RecordCodec.h"
#include "store/RecordReader.h"

namespace rackbook {

namespace {

using Texts = std::vector<std::pair<std::string, std::string>>;

class Standing {
public:
    explicit Standing(const BookFile& book) : m_book(book) {}

    bool holds(RecordKind kind, const std::string& id) {
        const auto [found, isFresh] = m_ids.emplace(kind, std::unordered_set<std::string>{});
        if (isFresh)
            withRecordType(kind, [&, ids = &found->second](auto tag) {
                for (const auto& record : allOf<typename decltype(tag)::Type>(m_book))
                    ids->insert(record.id);
            });
        return found->second.count(id) != 0;
    }

    std::string payloadOf(RecordKind kind, const std::string& id) const {
        std::string payload;
        withRecordType(kind, [&](auto tag) {
            payload = encodeRecord(*findIn<typename decltype(tag)::Type>(m_book, id));
        });
        return payload;
    }

    Texts textsOf(RecordKind kind, const std::string& field) const {
        Texts texts;
        const bool isDesignation = kind == RecordKind::impression && field == "designation";
        std::map<std::string, std::string> codes;
        if (isDesignation)
            for (const Edition& edition : allOf<Edition>(m_book))
                codes[edition.id] = edition.code + " ";
        withRecordType(kind, [&](auto tag) {
            using R = typename decltype(tag)::Type;
            for (const R& record : allOf<R>(m_book)) {
                std::string before;
                if constexpr (std::is_same_v<R, Impression>)
                    before = isDesignation ? codes[record.edition.id] : std::string();
                for (const auto& [name, text] : fieldTexts(record))
                    if (name == field)
                        texts.emplace_back(record.id, before + text);
            }
        });
        return texts;
    }

private:
    const BookFile& m_book;
    std::map<RecordKind, std::unordered_set<std::string>> m_ids;
};

}  // namespace

StandingRecords standingIn(const BookFile& book) {
    const auto standing = std::make_shared<Standing>(book);
    return {
        [standing](RecordKind kind, const std::string& id) { return standing->holds(kind, id); },
        [standing](RecordKind kind, const std::string& id) {
            return standing->payloadOf(kind, id);
        },
        [standing](RecordKind kind, const std::string& field) {
            return standing->textsOf(kind, field);
        }};
}

}  // namespace rackbook
