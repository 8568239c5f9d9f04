#include "exchange/SpectraTable.h"

#include <algorithm>

#include "base/Numbers.h"
#include "base/Text.h"
#include "exchange/CsvText.h"

namespace rackbook {

namespace {

constexpr std::size_t mostColumns = 12'000;

bool isEmptyRow(const CsvRow& row) {
    return std::all_of(row.fields.begin(), row.fields.end(),
                       [](const std::string& field) { return trimmed(field).empty(); });
}

struct WavelengthAt {
    double wavelength_nm = 0;
    std::size_t at = 0;  // which column or row it is
    std::optional<SpectralUnit> unit;

    bool operator<(const WavelengthAt& other) const { return wavelength_nm < other.wavelength_nm; }
};

class TableReader {
public:
    TableReader(std::string_view text, MeasurementDraft& draft)
        : m_draft(draft), m_separator(csvSeparatorOf(text)) {
        m_rows = csvRows(text, m_separator, draft.file());
        m_rows.erase(std::remove_if(m_rows.begin(), m_rows.end(), isEmptyRow), m_rows.end());
        for (CsvRow& row : m_rows)
            std::transform(row.fields.begin(), row.fields.end(), row.fields.begin(),
                           [](const std::string& field) { return trimmed(field); });
        m_hasComma = m_separator != ',' && hasDecimalCommas();
    }

    void read() {
        if (m_rows.size() < 2) {
            m_draft.refuse({}, "the table holds no values",
                           "Give a line of headings and a line for each sample.");
            return;
        }
        if (m_rows[0].fields.size() > mostColumns) {
            m_draft.refuse({m_rows[0].line, {}, {}}, "the table has too many columns",
                           "Split the file.");
            return;
        }
        requireEvenRows();
        if (m_draft.isRefused())
            return;
        const std::vector<WavelengthAt> columns = wavelengthsInHeading();
        const std::vector<WavelengthAt> rows = wavelengthsInFirstColumn();
        if (rows.size() + 1 == m_rows.size() && columns.size() + 1 != m_rows[0].fields.size())
            readColumns(rows);
        else if (!columns.empty())
            readRows(columns);
        else
            m_draft.refuse({m_rows[0].line, {}, {}},
                           "neither the headings nor the first column are wavelengths",
                           "Head a column for each wavelength, as 380 or 380 nm, or begin each "
                           "row with one.");
    }

private:
    // Commas stand for decimal points where no number is written with a point.
    bool hasDecimalCommas() const {
        for (std::size_t i = 1; i < m_rows.size(); ++i)
            for (std::size_t j = 1; j < m_rows[i].fields.size(); ++j)
                if (m_rows[i].fields[j].find('.') != std::string::npos)
                    return false;
        return true;
    }

    void requireEvenRows() {
        const std::size_t wanted = m_rows[0].fields.size();
        for (const CsvRow& row : m_rows)
            if (row.fields.size() != wanted)
                m_draft.refuse({row.line, {}, {}},
                               "the line has " + std::to_string(row.fields.size()) +
                                   " fields, and the headings have " + std::to_string(wanted),
                               m_separator == ','
                                   ? "Give a field for each heading; where decimals have a comma, "
                                     "part the fields with semicolons."
                                   : "Give a field for each heading.");
    }

    std::vector<WavelengthAt> wavelengthsInHeading() const {
        std::vector<WavelengthAt> found;
        for (std::size_t j = 1; j < m_rows[0].fields.size(); ++j)
            if (const auto named = wavelengthNamed(m_rows[0].fields[j], m_separator != ','))
                found.push_back({named->wavelength_nm, j, named->unit});
        return found;
    }

    std::vector<WavelengthAt> wavelengthsInFirstColumn() const {
        std::vector<WavelengthAt> found;
        for (std::size_t i = 1; i < m_rows.size(); ++i)
            if (const auto named = wavelengthNamed(m_rows[i].fields[0], m_separator != ','))
                found.push_back({named->wavelength_nm, i, named->unit});
        return found;
    }

    std::optional<SpectralAxis> axisOf(std::vector<WavelengthAt>& wavelengths, int line) {
        std::sort(wavelengths.begin(), wavelengths.end());
        std::vector<double> sorted;
        for (const WavelengthAt& one : wavelengths)
            sorted.push_back(one.wavelength_nm);
        std::vector<AxisFault> faults;
        const std::optional<SpectralAxis> axis = axisThrough(sorted, faults);
        for (const AxisFault& fault : faults)
            m_draft.refuse({line, {}, {}}, fault.what, fault.remedy);
        return axis;
    }

    void readRows(std::vector<WavelengthAt> columns) {
        const std::optional<SpectralAxis> axis = axisOf(columns, m_rows[0].line);
        if (!axis)
            return;
        notePassedOver(columns);
        for (std::size_t i = 1; i < m_rows.size(); ++i)
            addSample(*axis, columns, m_rows[i].fields[0], m_rows[i].line,
                      [&](const WavelengthAt& at) { return std::pair(i, at.at); });
    }

    void readColumns(std::vector<WavelengthAt> rows) {
        const std::optional<SpectralAxis> axis = axisOf(rows, m_rows[1].line);
        for (std::size_t j = 1; axis && j < m_rows[0].fields.size(); ++j)
            addSample(*axis, rows, m_rows[0].fields[j], m_rows[0].line,
                      [&](const WavelengthAt& at) { return std::pair(at.at, j); });
    }

    template <class CellOf>
    void addSample(const SpectralAxis& axis, const std::vector<WavelengthAt>& wavelengths,
                   const std::string& name, int line, const CellOf& cellOf) {
        MeasuredSample sample;
        sample.name = name;
        sample.line = line;
        std::vector<double> values;
        for (const WavelengthAt& at : wavelengths) {
            const auto [i, j] = cellOf(at);
            const MeasurementSpot spot{m_rows[i].line, name, partOf(at)};
            if (const auto value = m_draft.number(spot, m_rows[i].fields[j], m_hasComma))
                values.push_back(*value);
        }
        if (values.size() == axis.count)
            m_draft.setSpectrum(sample, axis, std::move(values), wavelengths.front().unit);
        m_draft.add(std::move(sample));
    }

    static std::string partOf(const WavelengthAt& at) {
        return "at " + formatShortest(at.wavelength_nm) + " nm";
    }

    void notePassedOver(const std::vector<WavelengthAt>& columns) {
        std::vector<std::string> others;
        for (std::size_t j = 1; j < m_rows[0].fields.size(); ++j) {
            const bool isRead = std::any_of(columns.begin(), columns.end(),
                                            [&](const WavelengthAt& at) { return at.at == j; });
            if (!isRead && others.size() < 10)
                others.push_back("\"" + excerpt(m_rows[0].fields[j]) + "\"");
        }
        if (!others.empty())
            m_draft.note({m_rows[0].line, {}, {}},
                         "these columns are no wavelengths and were left aside: " + joined(others),
                         "Only spectra are read from a table.");
    }

    MeasurementDraft& m_draft;
    char m_separator;
    std::vector<CsvRow> m_rows;
    bool m_hasComma = false;
};

}  // namespace

void readSpectraTable(std::string_view text, MeasurementDraft& draft) {
    TableReader(text, draft).read();
}

}  // namespace rackbook
