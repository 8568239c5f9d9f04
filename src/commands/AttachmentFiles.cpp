#include "commands/AttachmentFiles.h"

#include <set>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Sha256.h"
#include "exchange/PictureFile.h"
#include "store/AttachmentBytes.h"

namespace rackbook {

namespace {

constexpr const char* attachmentsFolder = "attachments";

std::string withoutEnding(const std::string& name) {
    return name.substr(0, name.find('.'));
}

}  // namespace

std::string fileEndingFor(const std::string& mediaType) {
    static const std::map<std::string, std::string> endings = {
        {"image/jpeg", "jpg"}, {"image/png", "png"}, {"application/pdf", "pdf"}};
    const auto found = endings.find(mediaType);
    return found == endings.end() ? "bin" : found->second;
}

void AttachmentFiles::addFolder(const std::string& folder) {
    const std::string inside = pathOf(folder, attachmentsFolder);
    // Like every link in a folder that is named: it may lead anywhere.
    if (!isFolder(inside) || isLink(inside))
        return;
    for (const std::string& path : filesBelow(inside, "").paths)
        m_paths.emplace(withoutEnding(fileNameOf(path)), path);
}

std::optional<std::string> AttachmentFiles::bytesOf(const std::string& sha256) {
    const auto found = m_paths.find(sha256);
    if (found == m_paths.end()) {
        m_missing.push_back(sha256);
        return std::nullopt;
    }
    requireRegularFile(found->second);
    std::string bytes = readFile(found->second, largestPicture_B);
    if (rackbook::sha256(bytes) != sha256)
        throw InputError(found->second, "its bytes are not those that its name stands for",
                         "Put the file there that was attached, or take it away: the record can "
                         "come in without it.");
    return bytes;
}

std::vector<std::string> AttachmentFiles::namedByNone(
    const std::vector<const Attachment*>& attachments) const {
    std::set<std::string> named;
    for (const Attachment* attachment : attachments)
        named.insert(attachment->sha256);
    std::vector<std::string> others;
    for (const auto& [name, path] : m_paths)
        if (named.count(name) == 0)
            others.push_back(path);
    return others;
}

WrittenFiles writeAttachmentFiles(const BookFile& book, const std::vector<Record>& records,
                                  const std::string& folder) {
    WrittenFiles written;
    std::set<std::string> done;
    for (const Record& record : records) {
        const Attachment* attachment = std::get_if<Attachment>(&record);
        if (attachment == nullptr)
            continue;
        const std::optional<std::string> bytes = attachmentBytes(book, attachment->sha256);
        if (!bytes) {
            ++written.withoutBytes;
            continue;
        }
        if (!done.insert(attachment->sha256).second)
            continue;
        const std::string inside = pathOf(folder, attachmentsFolder);
        makeFolder(inside);
        writeFileSafely(
            pathOf(inside, attachment->sha256 + "." + fileEndingFor(attachment->mediaType)),
            *bytes);
        ++written.files;
    }
    return written;
}

}  // namespace rackbook
