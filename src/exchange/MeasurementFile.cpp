#include "exchange/MeasurementFile.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Utf8.h"
#include "exchange/CgatsFile.h"
#include "exchange/Cxf3File.h"
#include "exchange/MeasurementDraft.h"
#include "exchange/SpectraTable.h"
#include "exchange/TextBytes.h"

namespace rackbook {

namespace {

constexpr std::size_t mostXmlBytes = std::size_t{64} << 20;
constexpr std::size_t mostTextBytes = std::size_t{16} << 20;

bool beginsWith(std::string_view text, std::string_view beginning) {
    return text.substr(0, beginning.size()) == beginning;
}

[[noreturn]] void refuseFile(const std::string& file, int line, const std::string& what,
                             const std::string& remedy) {
    Finding finding;
    finding.rule = "measurement-file";
    finding.where.file = file;
    finding.where.line = line;
    finding.what = what;
    finding.remedy = remedy;
    throw RefusedInput({finding});
}

void requireText(std::string_view bytes, const std::string& file) {
    const std::optional<TextFault> fault =
        textFaultIn(bytes, "Give CGATS.17, CxF or a table of spectra, not a file of another kind.");
    if (fault)
        refuseFile(file, fault->line, fault->what, fault->remedy);
}

// A line that begins with one of the words that every CGATS.17 file has.
bool isCgats(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        at = text.find_first_not_of(" \t\r\n", at);
        if (at == std::string_view::npos)
            return false;
        for (const char* word : {"BEGIN_DATA", "NUMBER_OF_SETS", "NUMBER_OF_FIELDS", "CGATS.17"})
            if (beginsWith(text.substr(at), word))
                return true;
        at = std::min(text.find_first_of("\r\n", at), text.size());
    }
    return false;
}

bool isTable(std::string_view text) {
    return text.substr(0, text.find('\n')).find_first_of(",;\t") != std::string_view::npos;
}

MeasurementFile readAs(MeasurementForm form, void (*read)(std::string_view, MeasurementDraft&),
                       std::string_view text, const std::string& file,
                       std::optional<SpectralUnit> unit) {
    MeasurementDraft draft(file, form);
    read(text, draft);
    return draft.finished(unit);
}

}  // namespace

MeasurementFile measurementsIn(std::string_view bytes, const std::string& file,
                               std::optional<SpectralUnit> unit) {
    if (beginsWith(bytes, byteOrderMark))
        bytes.remove_prefix(byteOrderMark.size());
    requireText(bytes, file);
    if (bytes[bytes.find_first_not_of(" \t\r\n")] == '<')
        return readAs(MeasurementForm::cxf3, readCxf3, bytes, file, unit);
    if (bytes.size() > mostTextBytes)
        refuseFile(file, 0, "the file is larger than 16 MB", "Split it.");
    if (isCgats(bytes))
        return readAs(MeasurementForm::cgats, readCgats, bytes, file, unit);
    if (isTable(bytes))
        return readAs(MeasurementForm::spectraTable, readSpectraTable, bytes, file, unit);
    refuseFile(file, 1, "this is no form of measurements that is known",
               "Give CGATS.17 text, CxF3 or a table of spectra as CSV.");
}

MeasurementFile readMeasurementFile(const std::string& path, std::optional<SpectralUnit> unit) {
    return measurementsIn(readFile(path, mostXmlBytes), path, unit);
}

}  // namespace rackbook
