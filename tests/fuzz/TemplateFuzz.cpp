// Templates of sheets: a layout that somebody wrote, on top of the shipped one.
#include "Fuzz.h"
#include "base/Files.h"
#include "exchange/TreeJson.h"
#include "sheets/EditionSheet.h"
#include "sheets/Template.h"
#include "sheets/TemplateFiles.h"

using namespace rackbook;

namespace {

constexpr const char* folder = RACKBOOK_SOURCE_DIR "/templates/";

TemplateFile shipped(const std::string& name) {
    const std::string path = folder + name;
    return {name, treeFromJson(readFile(path, std::size_t{1} << 20), path)};
}

TemplateParts shippedParts() {
    TemplateParts parts;
    parts.layouts = {shipped("edition.json")};
    parts.language = "en";
    parts.common = shipped("words/en/common.json");
    parts.words = shipped("words/en/edition.json");
    return parts;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const TemplateParts base = shippedParts();
    fuzz::tolerateRefusal([&] {
        TemplateParts parts = base;
        parts.layouts.insert(parts.layouts.begin(),
                             {"own.json", treeFromJson(fuzz::textOf(data, size), "own.json")});
        SheetTemplate::read(parts, editionSheetRules()).flowSetup();
    });
    return 0;
}
