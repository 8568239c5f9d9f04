// The bytes of attachments, kept in the book beside their records. They come in with the records,
// see IntakeTerms::bytesOf.
#pragma once

#include <optional>
#include <string>

#include "store/BookFile.h"

namespace rackbook {

// The bytes whose SHA-256 that is (64 lower-case hexadecimal digits), or nothing where the book
// doesn't hold them. Throws StoreError where they are not what was recorded.
std::optional<std::string> attachmentBytes(const BookFile& book, const std::string& sha256);

}  // namespace rackbook
