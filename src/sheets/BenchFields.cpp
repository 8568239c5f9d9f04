#include "sheets/BenchFields.h"

#include <algorithm>
#include <string_view>

namespace rackbook {

namespace {

constexpr const char* ofImpressions = "sheet.";

}  // namespace

const char* const everyPrinted = "sheet.all.printed";

const std::vector<BenchField>& benchFields() {
    static const std::vector<BenchField> fields = {
        {"pull.day", FieldKind::date, "run.date", 0, 1.4},
        {"pull.start", FieldKind::time, "run.start", 0, 1},
        {"pull.end", FieldKind::time, "run.end", 0, 1},
        {"pull.temperature_C", FieldKind::number, "run.temperature", 0, 1.1},
        {"pull.humidity_pct", FieldKind::number, "run.humidity", 0, 1.1},
        {"pull.press", FieldKind::words, "run.press", 1, 1},
        {"pull.packing", FieldKind::words, "run.packing", 1, 1},
        {"pull.printer", FieldKind::choice, "run.printer", 1, 1},
        {"portion.mix_g", FieldKind::number, "ink.mix", 0, 1},
        {"portion.base_g", FieldKind::number, "ink.base", 0, 1},
        {"portion.drier_g", FieldKind::number, "ink.drier", 0, 1},
        {"portion.drier_pct", FieldKind::number, "ink.drierShare", 0, 1},
        {"pull.inkBefore_g", FieldKind::number, "ink.before", 0, 1},
        {"pull.inkAfter_g", FieldKind::number, "ink.after", 0, 1},
        {"portion.baseLot", FieldKind::choice, "ink.baseLot", 1, 1},
        {"portion.drierLot", FieldKind::choice, "ink.drierLot", 1, 1},
        {"pull.portion", FieldKind::choice, "ink.portion", 1, 1.3},
        {"printed", FieldKind::tick, "impressions.printed", 0, 0},
        {"spoiled", FieldKind::tick, "impressions.spoiled", 0, 0},
        {"remark", FieldKind::words, "impressions.remark", 0, 1},
        {"move.to", FieldKind::choice, "notes.hungAt", 0, 1},
        {"pull.note", FieldKind::lines, "notes.lines", 1, 1},
    };
    return fields;
}

std::vector<std::vector<BenchField>> benchRows(const std::string& section) {
    std::vector<std::vector<BenchField>> rows;
    for (const BenchField& field : benchFields()) {
        if (std::string(field.label).rfind(section + ".", 0) != 0)
            continue;
        rows.resize(static_cast<std::size_t>(field.row) + 1);
        rows.back().push_back(field);
    }
    return rows;
}

bool isOfImpressions(const BenchField& field) {
    return std::string(field.label).rfind("impressions.", 0) == 0;
}

bool isOfPortion(const BenchField& field) {
    return std::string_view(field.name).rfind("portion.", 0) == 0;
}

std::string benchFieldName(const BenchField& field, const std::string& code, int workingNumber) {
    std::string part = code;
    std::replace(part.begin(), part.end(), '.', '-');
    return ofImpressions + part + "-" + std::to_string(workingNumber) + "." + field.name;
}

const BenchField* findBenchField(const std::string& name) {
    const bool isOne = name.rfind(ofImpressions, 0) == 0;
    const std::string part = isOne ? name.substr(name.rfind('.') + 1) : name;
    const auto found =
        std::find_if(benchFields().begin(), benchFields().end(), [&](const BenchField& field) {
            return part == field.name && isOfImpressions(field) == isOne;
        });
    return found == benchFields().end() ? nullptr : &*found;
}

const BenchField& benchFieldAt(const FieldPlace& place) {
    return *findBenchField(place.name);
}

}  // namespace rackbook
