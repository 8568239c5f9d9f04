#include "pdf/FontFinder.h"

#include <fontconfig/fontconfig.h>

#include <algorithm>
#include <array>
#include <memory>
#include <utility>
#include <vector>

#include "base/Error.h"

namespace rackbook {

namespace {

using Pattern = std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)>;
using ObjectSet = std::unique_ptr<FcObjectSet, decltype(&FcObjectSetDestroy)>;
using FontSet = std::unique_ptr<FcFontSet, decltype(&FcFontSetDestroy)>;

// Debian 12, from the file lists of the packages.
constexpr std::array<std::pair<const char*, const char*>, 9> debianPackages = {{
    {"Noto Sans", "fonts-noto-core"},
    {"Noto Sans Math", "fonts-noto-core"},
    {"Noto Serif", "fonts-noto-core"},
    {"DejaVu Sans", "fonts-dejavu-core"},
    {"DejaVu Serif", "fonts-dejavu-core"},
    {"Liberation Sans", "fonts-liberation"},
    {"Liberation Serif", "fonts-liberation"},
    {"IPAGothic", "fonts-ipafont-gothic"},
    {"Droid Sans Fallback", "fonts-droid-fallback"},
}};

std::string remedyFor(const std::string& family) {
    for (const auto& [name, package] : debianPackages)
        if (family == name)
            return std::string("Install the Debian package ") + package +
                   ", or name another family in the template.";
    return "Install a package that has it, or name another family in the template; Noto Sans is in "
           "the Debian package fonts-noto-core.";
}

bool isCollection(const std::string& path) {
    return path.size() > 4 &&
           (path.substr(path.size() - 4) == ".ttc" || path.substr(path.size() - 4) == ".otc");
}

FontSet filesOf(const std::string& family, FontWeight weight) {
    const Pattern pattern(FcPatternCreate(), &FcPatternDestroy);
    FcPatternAddString(pattern.get(), FC_FAMILY, reinterpret_cast<const FcChar8*>(family.c_str()));
    FcPatternAddInteger(pattern.get(), FC_WEIGHT,
                        weight == FontWeight::bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR);
    FcPatternAddInteger(pattern.get(), FC_SLANT, FC_SLANT_ROMAN);
    FcPatternAddInteger(pattern.get(), FC_WIDTH, FC_WIDTH_NORMAL);
    FcPatternAddString(pattern.get(), FC_FONTFORMAT, reinterpret_cast<const FcChar8*>("TrueType"));
    FcPatternAddBool(pattern.get(), FC_OUTLINE, FcTrue);
    FcPatternAddBool(pattern.get(), FC_VARIABLE, FcFalse);
    const ObjectSet objects(FcObjectSetBuild(FC_FILE, static_cast<char*>(nullptr)),
                            &FcObjectSetDestroy);
    return {FcFontList(nullptr, pattern.get(), objects.get()), &FcFontSetDestroy};
}

}  // namespace

std::optional<std::string> findFontFile(const std::string& family, FontWeight weight) {
    const FontSet set = filesOf(family, weight);
    std::vector<std::string> paths;
    for (int i = 0; set && i < set->nfont; ++i) {
        FcChar8* path = nullptr;
        if (FcPatternGetString(set->fonts[i], FC_FILE, 0, &path) == FcResultMatch)
            paths.emplace_back(reinterpret_cast<const char*>(path));
    }
    paths.erase(std::remove_if(paths.begin(), paths.end(), isCollection), paths.end());
    if (paths.empty())
        return std::nullopt;
    return *std::min_element(paths.begin(), paths.end());
}

std::string requireFontFile(const std::string& family, FontWeight weight) {
    if (auto path = findFontFile(family, weight))
        return *std::move(path);
    throw RenderError("font family \"" + family + "\"",
                      std::string("its TrueType outlines in the ") +
                          (weight == FontWeight::bold ? "bold" : "regular") +
                          " weight are not on this machine",
                      remedyFor(family));
}

}  // namespace rackbook
