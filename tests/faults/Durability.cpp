#include "Durability.h"

#include <filesystem>
#include <map>
#include <set>

namespace rackbook::faults {

namespace {

bool endsWith(const std::string& text, const std::string& end) {
    return text.size() >= end.size() &&
           text.compare(text.size() - end.size(), end.size(), end) == 0;
}

bool matters(const std::string& path) {
    return !endsWith(path, ".lock") && !endsWith(path, "-shm") &&
           !endsWith(path, ".rackbook-is-writing");
}

std::string folderOfPath(const std::string& path) {
    return std::filesystem::path(path).parent_path().string();
}

struct Disk {
    std::set<std::string> unsyncedFiles;
    std::map<std::string, std::string> unsyncedNames;  // folder: the last name that was given
    std::vector<std::string> complaints;

    void rename(const std::string& from, const std::string& to) {
        if (unsyncedFiles.count(from) > 0)
            complaints.push_back(from + " gets its name before its bytes are on the disk");
        unsyncedFiles.erase(from);
        unsyncedFiles.erase(to);
        unsyncedNames[folderOfPath(to)] = to;
    }

    void take(const std::string& what, const std::string& path) {
        if (what == "write" || what == "truncate")
            unsyncedFiles.insert(path);
        else if (what == "sync" && unsyncedNames.erase(path) == 0)
            unsyncedFiles.erase(path);
        else if (what == "unlink")
            unsyncedFiles.erase(path);
    }
};

}  // namespace

std::vector<std::string> notDurable(const std::vector<std::string>& calls) {
    Disk disk;
    for (const std::string& call : calls) {
        const std::string what = call.substr(0, call.find(' '));
        const std::string path = call.substr(call.find(' ') + 1);
        const std::size_t tab = path.find('\t');
        if (tab != std::string::npos && matters(path.substr(tab + 1)))
            disk.rename(path.substr(0, tab), path.substr(tab + 1));
        else if (tab == std::string::npos && matters(path))
            disk.take(what, path);
    }
    for (const std::string& path : disk.unsyncedFiles)
        disk.complaints.push_back(path + " is never synced after its last bytes");
    for (const auto& [folder, name] : disk.unsyncedNames)
        disk.complaints.push_back(folder + " is not synced after " + name + " got its name");
    return disk.complaints;
}

}  // namespace rackbook::faults
