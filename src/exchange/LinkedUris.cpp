#include "exchange/LinkedUris.h"

#include <algorithm>

#include "base/Sha256.h"

namespace rackbook {

namespace {

struct Row {
    const char* folder;
    const char* type;
};

constexpr Row rows[] = {{"impression", "HumanMadeObject"},
                        {"block", "HumanMadeObject"},
                        {"edition", "Set"},
                        {"image", "VisualItem"},
                        {"inscription", "LinguisticObject"},
                        {"picture", "DigitalObject"},
                        {"person", "Person"},
                        {"group", "Group"},
                        {"place", "Place"},
                        {"process", "Type"}};

const Row& rowOf(LinkedKind kind) {
    return rows[static_cast<std::size_t>(kind)];
}

// RFC 9562, version 8: the bits are ours but for version and variant; here those of a hash, so
// that the same record has the same URI each time.
std::string uuidOf(const std::string& words) {
    std::string bytes = sha256Bytes(words).substr(0, 16);
    const auto put = [&](std::size_t at, unsigned keep, unsigned bits) {
        bytes[at] = static_cast<char>((static_cast<unsigned char>(bytes[at]) & keep) | bits);
    };
    put(6, 0x0F, 0x80);
    put(8, 0x3F, 0x80);
    std::string text = hexOf(bytes);
    for (const std::size_t at : {20U, 16U, 12U, 8U})
        text.insert(at, "-");
    return text;
}

}  // namespace

const char* folderOf(LinkedKind kind) {
    return rowOf(kind).folder;
}

const char* classOf(LinkedKind kind) {
    return rowOf(kind).type;
}

LinkedUris::LinkedUris(std::string base, std::string bookMark)
    : m_base(std::move(base)), m_bookMark(std::move(bookMark)) {}

std::string LinkedUris::pathOf(LinkedKind kind, const std::string& id) const {
    // Ids are of letters, digits and . _ - / alone; ~ stands for itself in a URI.
    std::string name = id;
    std::replace(name.begin(), name.end(), '/', '~');
    return std::string(rowOf(kind).folder) + "/" + name + ".json";
}

std::string LinkedUris::uriOf(LinkedKind kind, const std::string& id) const {
    if (!m_base.empty())
        return m_base + pathOf(kind, id);
    return "urn:uuid:" + uuidOf(m_bookMark + "\n" + rowOf(kind).folder + "\n" + id);
}

Tree LinkedUris::reference(LinkedKind kind, const std::string& id, const std::string& label) const {
    Tree tree = Tree::object();
    tree.set("id", uriOf(kind, id));
    tree.set("type", rowOf(kind).type);
    tree.set("_label", label);
    return tree;
}

}  // namespace rackbook
