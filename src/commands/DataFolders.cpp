#include "commands/DataFolders.h"

#include <QCoreApplication>
#include <optional>

#include "base/Files.h"

namespace rackbook {

namespace {

std::optional<DataFolders> foldersIn(const std::string& folder) {
    const DataFolders found{pathOf(folder, "schema"), pathOf(folder, "templates")};
    return isFolder(found.schema) && isFolder(found.templates) ? std::optional(found)
                                                               : std::nullopt;
}

}  // namespace

DataFolders findDataFolders() {
    const std::string named = qEnvironmentVariable("RACKBOOK_DATA").toStdString();
    if (!named.empty()) {
        if (const std::optional<DataFolders> found = foldersIn(named))
            return *found;
        throw StoreError(named, "the folder that RACKBOOK_DATA names holds no schema and templates",
                         "Unset it, or name share/rackbook of an installed Rackbook.");
    }
    const std::string beside = QCoreApplication::applicationDirPath().toStdString();
    for (const char* way : {"share/rackbook", "../share/rackbook"})
        if (const std::optional<DataFolders> found = foldersIn(pathOf(beside, way)))
            return *found;
    throw StoreError(beside, "the program's schema and templates are not where they belong",
                     "Install Rackbook again.");
}

}  // namespace rackbook
