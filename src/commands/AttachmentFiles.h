// The files of attachments beside record files: FOLDER/attachments/SHA256.jpg and so on.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "records/Record.h"
#include "store/BookFile.h"

namespace rackbook {

// "jpg", "png", "pdf"; "bin" for any other media type.
std::string fileEndingFor(const std::string& mediaType);

// Those that lie beside record files which are being taken in.
class AttachmentFiles {
public:
    // Looks into FOLDER/attachments, where there is one.
    void addFolder(const std::string& folder);

    // The bytes of the file named by that hash, or nothing. Throws InputError where they have
    // another one.
    std::optional<std::string> bytesOf(const std::string& sha256);

    // The hashes that were asked for and have no file.
    const std::vector<std::string>& missing() const { return m_missing; }
    // The files that are named by none of these records.
    std::vector<std::string> namedByNone(const std::vector<const Attachment*>& attachments) const;

private:
    std::map<std::string, std::string> m_paths;  // by the name without its ending
    std::vector<std::string> m_missing;
};

struct WrittenFiles {
    std::size_t files = 0;
    std::size_t withoutBytes = 0;  // records whose bytes the book doesn't hold
};

// Writes the bytes of the attachments among `records` into FOLDER/attachments, each once.
WrittenFiles writeAttachmentFiles(const BookFile& book, const std::vector<Record>& records,
                                  const std::string& folder);

}  // namespace rackbook
