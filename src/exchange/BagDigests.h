// Digests by the names that manifests of bags call them by. Private to exchange/.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace rackbook {

// "md5", "sha1", "sha224", "sha256", "sha384", "sha512": those that can be checked. The first two
// guard against accidents alone.
const std::vector<std::string>& knownDigests();
bool isKnownDigest(const std::string& name);

// Lower-case hexadecimal digits by name, of a file's bytes, read once and in parts. Throws
// InputError where it cannot be read. Pre: the names are known.
std::map<std::string, std::string> digestsOfFile(const std::string& path,
                                                 const std::vector<std::string>& names);

}  // namespace rackbook
