// A file in the making, and what makes a name last on the disk.
#pragma once

#include <string>
#include <string_view>

namespace rackbook {

// Lies beside `path` with ".unfinished" behind its name until finish(), and goes where that is not
// reached. What a process left that was ended on the way is taken over by the next that writes the
// same file. A link leads to the file behind it, which keeps its permissions.
class UnfinishedFile {
public:
    // Throws StoreError, also where another process is writing the same file.
    explicit UnfinishedFile(const std::string& path);
    ~UnfinishedFile();
    UnfinishedFile(const UnfinishedFile&) = delete;
    UnfinishedFile& operator=(const UnfinishedFile&) = delete;

    void write(std::string_view bytes);
    // The bytes are on the disk before the name is theirs, and the name before this returns.
    // Throws StoreError.
    void finish();

private:
    [[noreturn]] void fail() const;
    bool tryOpen();

    std::string m_path;  // as it was given, for messages
    std::string m_target;
    std::string m_unfinished;
    int m_file = -1;
    bool m_isThere = false;
};

// After they return the bytes, or the names in the folder, outlive a cut of the power. Throw
// StoreError where the disk refuses; file systems that cannot do it are taken at their word.
void syncFile(const std::string& path);
void syncFolder(const std::string& path);

}  // namespace rackbook
