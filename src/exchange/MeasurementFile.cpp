#include "exchange/MeasurementFile.h"

#include <algorithm>

#include "base/Error.h"
#include "base/Files.h"
#include "base/Text.h"
#include "exchange/CgatsFile.h"
#include "exchange/Cxf3File.h"
#include "exchange/MeasurementDraft.h"
#include "exchange/SpectraTable.h"

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

int lineAt(std::string_view bytes, std::size_t at) {
    int line = 1;
    for (const char c : bytes.substr(0, at))
        line += c == '\n' ? 1 : 0;
    return line;
}

// A control character that no text has, also where the bytes are no UTF-8.
std::size_t junkAt(std::string_view bytes) {
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        const auto c = static_cast<unsigned char>(bytes[i]);
        if ((c < 0x20 && c != '\t' && c != '\n' && c != '\r') || c == 0x7F)
            return i;
    }
    return bytes.size();
}

void requireText(std::string_view bytes, const std::string& file) {
    if (bytes.find_first_not_of(" \t\r\n") == std::string_view::npos)
        refuseFile(file, 0, "the file is empty", "Export it again.");
    if (beginsWith(bytes, "\xFF\xFE") || beginsWith(bytes, "\xFE\xFF"))
        refuseFile(file, 0, "the file is UTF-16", "Save it as UTF-8.");
    if (const std::size_t at = junkAt(bytes); at < bytes.size())
        refuseFile(file, lineAt(bytes, at), "the file holds bytes that are no text",
                   "Give CGATS.17, CxF or a table of spectra, not a file of another kind.");
    if (const auto at = invalidUtf8At(bytes))
        refuseFile(file, lineAt(bytes, *at), "the text is not UTF-8", "Save it as UTF-8.");
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
    if (beginsWith(bytes, "\xEF\xBB\xBF"))
        bytes.remove_prefix(3);
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
