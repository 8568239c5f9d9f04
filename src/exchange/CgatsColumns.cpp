#include "exchange/CgatsColumns.h"

#include <algorithm>

#include "base/Text.h"

namespace rackbook {

namespace {

class ColumnReader {
public:
    ColumnReader(const std::vector<CgatsWord>& columns, MeasurementDraft& draft)
        : m_columns(columns), m_draft(draft), m_line(columns.empty() ? 0 : columns.front().line) {}

    CgatsColumns read() {
        CgatsColumns found;
        for (const char* keyword : {"SAMPLE_NAME", "SAMPLE_ID", "SampleID", "SAMPLE_LOC"})
            if (!found.name)
                found.name = at(keyword);
        if (!found.name)
            refuse("no column names the samples", "Give a column SAMPLE_ID or SAMPLE_NAME.");
        found.lab = three({"LAB_L", "LAB_A", "LAB_B"});
        found.xyz = three({"XYZ_X", "XYZ_Y", "XYZ_Z"});
        const bool hasWavelengths = readSpectrum(found);
        if (at("SPECTRAL_NM"))
            refuse("the wavelengths stand in a column SPECTRAL_NM",
                   "Export a column for each wavelength, as SPECTRAL_NM380.");
        else if (!found.hasColour() && !hasWavelengths && !m_isHalf)
            refuse("no column holds a colour",
                   "Export CIELAB (LAB_L, LAB_A, LAB_B), XYZ, or a column for each wavelength.");
        return found;
    }

private:
    void refuse(const std::string& what, const std::string& remedy) {
        m_draft.refuse({m_line, {}, {}}, what, remedy);
    }

    std::optional<std::size_t> at(std::string_view keyword) {
        std::optional<std::size_t> found;
        for (std::size_t i = 0; i < m_columns.size(); ++i) {
            if (!isSameWord(m_columns[i].text, keyword))
                continue;
            if (found)
                refuse("the column " + m_columns[i].text + " is there twice",
                       "Leave one of the two out.");
            found = i;
        }
        return found;
    }

    std::optional<std::array<std::size_t, 3>> three(const std::array<const char*, 3>& keywords) {
        std::array<std::size_t, 3> found{};
        std::vector<std::string> missing;
        for (std::size_t i = 0; i < keywords.size(); ++i) {
            if (const std::optional<std::size_t> column = at(keywords[i]))
                found[i] = *column;
            else
                missing.push_back(keywords[i]);
        }
        if (missing.empty())
            return found;
        if (missing.size() < keywords.size()) {
            m_isHalf = true;
            refuse("there is no column " + joined(missing), "Export all three or none.");
        }
        return std::nullopt;
    }

    // Whether there are columns for wavelengths, whatever they are worth.
    bool readSpectrum(CgatsColumns& found) {
        std::vector<std::pair<double, std::size_t>> wavelengths;
        for (std::size_t i = 0; i < m_columns.size(); ++i)
            if (const auto named = wavelengthNamed(m_columns[i].text)) {
                wavelengths.emplace_back(named->wavelength_nm, i);
                found.unit = named->unit;
            }
        if (wavelengths.empty())
            return false;
        std::sort(wavelengths.begin(), wavelengths.end());
        std::vector<double> sorted;
        for (const auto& [wavelength_nm, column] : wavelengths) {
            sorted.push_back(wavelength_nm);
            found.spectrum.push_back(column);
        }
        std::vector<AxisFault> faults;
        found.axis = axisThrough(sorted, faults);
        for (const AxisFault& fault : faults)
            refuse(fault.what, fault.remedy);
        return true;
    }

    const std::vector<CgatsWord>& m_columns;
    MeasurementDraft& m_draft;
    int m_line;
    bool m_isHalf = false;
};

}  // namespace

CgatsColumns cgatsColumns(const std::vector<CgatsWord>& columns, MeasurementDraft& draft) {
    return ColumnReader(columns, draft).read();
}

}  // namespace rackbook
