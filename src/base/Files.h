// Reading whole files, and writing them so that a failure leaves the old file or none, never half.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// Throws InputError where the file is missing, unreadable or larger than `most` bytes.
std::string readFile(const std::string& path, std::size_t most);

// Throws InputError where something other than a file is there: a device or a pipe may never come
// to an end, or to a beginning.
void requireRegularFile(const std::string& path);

// Reads standard input to its end, with the same limit.
std::string readStandardInput(std::size_t most);

// At most the first `count` bytes; empty where it is no regular file or cannot be read.
std::string beginningOf(const std::string& path, std::size_t count);

// All of it or nothing, and on the disk when it returns (UnfinishedFile.h). Throws StoreError, also
// where something other than a regular file is there.
void writeFileSafely(const std::string& path, std::string_view bytes);

// The bytes of a file, whatever their size, into another in the same way. Throws InputError where
// they cannot be read, StoreError where they cannot be written.
void copyFileSafely(const std::string& from, const std::string& to);

// Makes the folder and its parents. Throws StoreError.
void makeFolder(const std::string& path);

// A folder that comes into being as a whole: its files are written under another name beside it,
// and go with it where finish() is not reached. Where the process was ended on the way, the next
// one that makes the same folder takes away what was left.
class NewFolder {
public:
    // Pre: `folder` is not there, or empty. Throws StoreError.
    explicit NewFolder(std::string folder);
    ~NewFolder();
    NewFolder(const NewFolder&) = delete;
    NewFolder& operator=(const NewFolder&) = delete;

    // Where the files are to be written.
    const std::string& path() const { return m_unfinished; }
    // Gives it its name. Throws StoreError.
    void finish();

private:
    void hold();

    std::string m_folder;
    std::string m_unfinished;
    int m_lock = -1;  // on the folder, for as long as the process lives
};

bool isFolder(const std::string& path);
// Whether the path itself is a symbolic link, wherever it leads.
bool isLink(const std::string& path);
bool fileExists(const std::string& path);

struct FilesBelow {
    // Sorted by name, so that every machine reads them in the same order.
    std::vector<std::string> paths;
    // What was not looked into and may be such a file or hold some: links, files and folders whose
    // names begin with a dot, and what is neither file nor folder or has a name that is no text.
    std::vector<std::string> passedOver;
};

// The files below a folder whose names end in `suffix`, in capitals or small letters. Throws
// InputError where a folder in it cannot be read.
FilesBelow filesBelow(const std::string& folder, const std::string& suffix);

bool isEmptyFolder(const std::string& path);

// "a/b" joined with one separator; the last and the leading part of a path.
std::string pathOf(const std::string& folder, const std::string& name);
std::string fileNameOf(const std::string& path);
std::string folderOf(const std::string& path);

}  // namespace rackbook
