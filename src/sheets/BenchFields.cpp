#include "sheets/BenchFields.h"

#include <algorithm>

namespace rackbook {

const std::vector<BenchField>& benchFields() {
    static const std::vector<BenchField> fields = {
        {"date", FieldKind::date, "run.date", 0, 1.4},
        {"start", FieldKind::time, "run.start", 0, 1},
        {"end", FieldKind::time, "run.end", 0, 1},
        {"temperature_C", FieldKind::number, "run.temperature", 0, 1.1},
        {"humidity_pct", FieldKind::number, "run.humidity", 0, 1.1},
        {"press", FieldKind::words, "run.press", 1, 1},
        {"packing", FieldKind::words, "run.packing", 1, 1},
        {"printer", FieldKind::words, "run.printer", 1, 1},
        {"mixTaken_g", FieldKind::number, "ink.mix", 0, 1},
        {"base_g", FieldKind::number, "ink.base", 0, 1},
        {"drier_g", FieldKind::number, "ink.drier", 0, 1},
        {"drier_pct", FieldKind::number, "ink.drierShare", 0, 1},
        {"inkBefore_g", FieldKind::number, "ink.before", 0, 1},
        {"inkAfter_g", FieldKind::number, "ink.after", 0, 1},
        {"printed", FieldKind::tick, "impressions.printed", 0, 0},
        {"spoiled", FieldKind::tick, "impressions.spoiled", 0, 0},
        {"remark", FieldKind::words, "impressions.remark", 0, 1},
        {"hungAt", FieldKind::words, "notes.hungAt", 0, 1},
        {"notes", FieldKind::words, "notes.lines", 1, 1},
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

std::string benchFieldName(const BenchField& field, int workingNumber) {
    return std::string(field.name) + "." + std::to_string(workingNumber);
}

const BenchField& benchFieldAt(const FieldPlace& place) {
    const std::string name = place.name.substr(0, place.name.find('.'));
    return *std::find_if(benchFields().begin(), benchFields().end(),
                         [&](const BenchField& field) { return name == field.name; });
}

}  // namespace rackbook
