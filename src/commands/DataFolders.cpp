#include "commands/DataFolders.h"

#include <QCoreApplication>

#include "base/Files.h"

namespace rackbook {

DataFolders findDataFolders() {
    const std::string beside = QCoreApplication::applicationDirPath().toStdString();
    for (const char* way : {"share/rackbook", "../share/rackbook"}) {
        const std::string folder = pathOf(beside, way);
        const DataFolders found{pathOf(folder, "schema"), pathOf(folder, "templates")};
        if (isFolder(found.schema) && isFolder(found.templates))
            return found;
    }
    throw StoreError(beside, "the program's schema and templates are not where they belong",
                     "Install Rackbook again.");
}

}  // namespace rackbook
