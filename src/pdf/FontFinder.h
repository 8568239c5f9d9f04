// Finds font files on this machine through fontconfig.
#pragma once

#include <optional>
#include <string>

namespace rackbook {

enum class FontWeight { regular, bold };

// The path of the upright TrueType outlines of normal width in that weight. Another family never
// stands in. Of several files the first by path is taken, so that one machine always finds the
// same. Collections and variable fonts are passed over, because a PDF would not hold them well.
std::optional<std::string> findFontFile(const std::string& family, FontWeight weight);

// The same, but throws RenderError naming the family and the Debian package that has it, where one
// is known.
std::string requireFontFile(const std::string& family, FontWeight weight);

}  // namespace rackbook
