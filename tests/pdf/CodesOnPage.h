// Machine-readable codes on a page, read by a program of others (zbar).
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// What the QR codes of the page say, in no particular order; the page is drawn at 150 dots an inch,
// as an ordinary scanner would see it. `page` counts from 1.
std::vector<std::string> decodedCodes(const std::string& pdf, int page);

// The same of an image file in a form that zbar reads.
std::vector<std::string> decodedCodesOf(const std::string& image);

}  // namespace rackbook
