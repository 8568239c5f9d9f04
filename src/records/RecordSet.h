// Records held in memory, by kind, found by id.
#pragma once

#include <cstddef>
#include <string>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "records/Record.h"

namespace rackbook {

class RecordSet {
public:
    // Records of one kind in the order in which they were added. Pre for add: the id is new to
    // its kind.
    template <class R>
    const std::vector<R>& of() const {
        return std::get<Shelf<R>>(m_shelves).records;
    }

    template <class R>
    void add(R record) {
        Shelf<R>& shelf = std::get<Shelf<R>>(m_shelves);
        shelf.index.emplace(record.id, shelf.records.size());
        shelf.records.push_back(std::move(record));
    }

    void add(Record record) {
        std::visit([this](auto& r) { add(std::move(r)); }, record);
    }

    // The record, or nothing. The pointer holds until the next add.
    template <class R>
    const R* find(const std::string& id) const {
        const Shelf<R>& shelf = std::get<Shelf<R>>(m_shelves);
        const auto found = shelf.index.find(id);
        return found == shelf.index.end() ? nullptr : &shelf.records[found->second];
    }

    template <class R>
    const R* find(const Ref<R>& ref) const {
        return find<R>(ref.id);
    }

    template <class R>
    const R* find(const std::optional<Ref<R>>& ref) const {
        return ref ? find<R>(ref->id) : nullptr;
    }

    // Position of a record in of<R>(), or -1.
    template <class R>
    int indexOf(const std::string& id) const {
        const Shelf<R>& shelf = std::get<Shelf<R>>(m_shelves);
        const auto found = shelf.index.find(id);
        return found == shelf.index.end() ? -1 : static_cast<int>(found->second);
    }

    std::size_t size() const {
        std::size_t count = 0;
        forEachRecordType([&](auto tag) { count += of<typename decltype(tag)::Type>().size(); });
        return count;
    }

private:
    template <class R>
    struct Shelf {
        std::vector<R> records;
        std::unordered_map<std::string, std::size_t> index;
    };
    template <class>
    struct Shelves;
    template <class... Rs>
    struct Shelves<std::variant<Rs...>> {
        using Type = std::tuple<Shelf<Rs>...>;
    };

    typename Shelves<Record>::Type m_shelves;
};

}  // namespace rackbook
