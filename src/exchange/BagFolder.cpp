#include "exchange/BagFolder.h"

#include <QString>
#include <QStringList>
#include <algorithm>
#include <filesystem>
#include <set>

#include "base/Error.h"
#include "base/Files.h"
#include "exchange/BagLines.h"

namespace rackbook {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t mostFiles = 1'000'000;
constexpr int deepestFolder = 64;

class Looking {
public:
    explicit Looking(const std::string& folder) : m_folder(folder) {}

    BagFolder run() {
        std::error_code trouble;
        const fs::recursive_directory_iterator end;
        for (fs::recursive_directory_iterator at(m_folder, trouble); !trouble && at != end;
             at.increment(trouble)) {
            note(*at);
            if (at.depth() >= deepestFolder)
                at.disable_recursion_pending();
        }
        if (trouble)
            throw InputError(m_folder, "it cannot be read: " + trouble.message(),
                             "Check the name and the permissions.");
        return std::move(m_found);
    }

private:
    void note(const fs::directory_entry& entry) {
        const std::string path = entry.path().lexically_relative(m_folder).generic_string();
        const fs::file_status status = entry.symlink_status();
        if (fs::is_directory(status))
            return;
        if (fs::is_symlink(status))
            add(path, "a link stands in the bag, and links are not followed");
        else if (!fs::is_regular_file(status))
            add(path, "it is no ordinary file");
        else if (const std::optional<std::string> wrong = whatIsWrongWithBagPath(path))
            add(path, *wrong);
        else if (m_found.files.size() >= mostFiles)
            throw InputError(m_folder, "more than a million files lie in it",
                             "Name the folder of a bag.");
        else
            m_found.files[path] = entry.file_size();
    }

    void add(const std::string& path, const std::string& what) {
        m_found.findings.push_back(
            bagFinding(pathOf(m_folder, path), 0, what, "", "Ask whoever made the bag."));
    }

    std::string m_folder;
    BagFolder m_found;
};

// "CON", "NUL.txt", a name that ends in a point or a blank, or with a character that is not allowed
// there: cannot be a file on Windows.
bool isNoNameSomewhere(const QString& name) {
    static const std::set<QString> devices = {
        "con",  "prn",  "aux",  "nul",  "com1", "com2", "com3", "com4", "com5", "com6", "com7",
        "com8", "com9", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9"};
    return devices.count(name.section('.', 0, 0).toLower()) != 0 || name.endsWith('.') ||
           name.endsWith(' ') || std::any_of(name.begin(), name.end(), [](QChar c) {
               return c.unicode() < 0x20 || QStringView(u"<>:\"|?*").contains(c);
           });
}

}  // namespace

BagFolder lookIntoBag(const std::string& folder) {
    if (!isFolder(folder))
        throw InputError(folder, "there is no such folder", "Name the folder of a bag.");
    return Looking(folder).run();
}

std::vector<Finding> clashesOfNames(const std::map<std::string, std::uint64_t>& files) {
    std::vector<Finding> findings;
    std::map<QString, std::string> folded;
    for (const auto& [path, bytes] : files) {
        const QString name = QString::fromStdString(path);
        const auto [known, isNew] =
            folded.emplace(name.normalized(QString::NormalizationForm_C).toCaseFolded(), path);
        if (!isNew)
            findings.push_back(bagFinding(
                path, 0, "on some machines it is the same file as another", known->second,
                "Unpack the bag only where both can be.", Severity::warning));
        const QStringList steps = name.split('/');
        if (std::any_of(steps.begin(), steps.end(), isNoNameSomewhere))
            findings.push_back(bagFinding(path, 0, "some machines cannot have a file of that name",
                                          "", "Unpack the bag only where it can be.",
                                          Severity::warning));
    }
    return findings;
}

}  // namespace rackbook
