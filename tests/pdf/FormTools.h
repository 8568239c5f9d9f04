// Forms in PDF files, seen and filled in by programs of others.
#pragma once

#include <map>
#include <nlohmann/json.hpp>
#include <string>

#include "archival/PdfJson.h"

namespace rackbook {

// References to the fields by their whole names.
std::map<std::string, std::string> fieldsIn(const PdfJson& file);

// The file with other values, written by qpdf: "u:text", "b:hexadecimal digits", "/on", or any
// other object of its JSON. Throws std::runtime_error for a field that is not there.
std::string filledByQpdf(const std::string& bytes,
                         const std::map<std::string, nlohmann::json>& values);

// The same by mupdf, which sets appearances too: texts, and "on" for boxes to tick. Returns the
// saved bytes; fails the test where mutool does.
std::string filledByMupdf(const std::string& bytes,
                          const std::map<std::string, std::string>& values);

}  // namespace rackbook
