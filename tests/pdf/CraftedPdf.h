// PDF files put together by hand, so that something is wrong with them.
#pragma once

#include <string>
#include <vector>

namespace rackbook {

// A file of objects 1, 2 … with a table of where they are; object 1 is the catalog.
std::string craftedPdf(const std::vector<std::string>& objects, const std::string& inTrailer = "");

// The same object in a stream, with the keys of its dictionary.
std::string craftedStream(const std::string& keys, const std::string& bytes);

// A file whose catalog lies in an object stream (ISO 32000-1, 7.5.7) with those bytes.
std::string craftedWithObjectStream(const std::string& keys, const std::string& bytes);

// A Flate stream of zeros: 1 MB of it becomes about 159 MB.
std::string zerosDeflated(std::size_t length_MB);

}  // namespace rackbook
