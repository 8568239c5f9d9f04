#include "commands/TemplateAccess.h"

#include "base/Files.h"
#include "exchange/TreeJson.h"

namespace rackbook {

namespace {

constexpr std::size_t mostTemplateBytes = 1 << 20;

std::vector<std::string> foldersWith(const std::string& folder, const std::string& file) {
    std::vector<std::string> names;
    if (!isFolder(folder))
        return names;
    for (const std::string& path : filesBelow(folder, file).paths)
        if (path == pathOf(pathOf(folder, fileNameOf(folderOf(path))), file))
            names.push_back(fileNameOf(folderOf(path)));
    return names;
}

}  // namespace

TemplateSource templatesInFiles(const std::string& shipped) {
    TemplateSource source;
    source.shipped = shipped;
    source.read = [](const std::string& file) {
        requireRegularFile(file);
        return treeFromJson(readFile(file, mostTemplateBytes), file);
    };
    source.exists = fileExists;
    source.foldersWith = foldersWith;
    return source;
}

SheetTemplate sheetTemplateFor(const CommandContext& context, const SheetKind& kind) {
    TemplateWish wish;
    wish.sheet = kind.name;
    wish.file = context.arguments.value("template");
    wish.language = context.arguments.value("language");
    wish.paper = context.arguments.value("paper");
    const TemplateSource source = templatesInFiles(context.folders.templates);
    return SheetTemplate::read(gatherTemplate(source, wish), kind.rules());
}

}  // namespace rackbook
