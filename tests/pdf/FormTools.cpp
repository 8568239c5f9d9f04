#include "FormTools.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "OutsideReader.h"
#include "base/Files.h"

namespace rackbook {

namespace {

using nlohmann::json;

void addFields(const PdfJson& file, const json& nodes, const std::string& above,
               std::map<std::string, std::string>& fields) {
    for (const json& node : nodes) {
        const std::string name = above + (above.empty() ? "" : ".") + textOf(file.at(node, "/T"));
        const json& kids = file.at(node, "/Kids");
        if (kids.is_array())
            addFields(file, kids, name, fields);
        else
            fields[name] = node.get<std::string>();
    }
}

json& dictionaryOf(json& tree, const std::string& reference) {
    json& entry = tree.at("qpdf").at(1).at("obj:" + reference);
    return entry.contains("stream") ? entry.at("stream").at("dict") : entry.at("value");
}

}  // namespace

std::map<std::string, std::string> fieldsIn(const PdfJson& file) {
    std::map<std::string, std::string> fields;
    addFields(file, file.at(file.at(file.catalog(), "/AcroForm"), "/Fields"), "", fields);
    return fields;
}

std::string filledByQpdf(const std::string& bytes, const std::map<std::string, json>& values) {
    const std::map<std::string, std::string> fields = fieldsIn(PdfJson(bytes));
    json tree = editableJson(bytes);
    for (const auto& [name, value] : values) {
        if (fields.count(name) == 0)
            throw std::runtime_error("there is no field " + name);
        dictionaryOf(tree, fields.at(name))["/V"] = value;
    }
    return pdfFromJson(tree);
}

// mupdf tells fields by their words for those who do not see them.
std::string filledByMupdf(const std::string& bytes,
                          const std::map<std::string, std::string>& values) {
    const PdfJson file(bytes);
    const std::map<std::string, std::string> fields = fieldsIn(file);
    std::string lines;
    for (const auto& [name, value] : values) {
        if (fields.count(name) == 0)
            throw std::runtime_error("there is no field " + name);
        lines += textOf(file.at(fields.at(name), "/TU")) + "\t" + value + "\n";
    }
    const std::string blank = fileWith(bytes, "blank-form.pdf");
    const std::string filled = blank + ".filled";
    const ToolRun run = readWith("mutool run " RACKBOOK_SOURCE_DIR "/tests/pdf/fill-form.js " +
                                 blank + " " + filled + " " + fileWith(lines, "form-values"));
    EXPECT_EQ(run.exitCode, 0) << run.output;
    EXPECT_EQ(run.output, "");
    return readFile(filled, std::size_t{1} << 26);
}

}  // namespace rackbook
