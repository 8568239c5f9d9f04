#include "base/Sha256.h"

#include <gtest/gtest.h>

#include <set>

namespace rackbook {
namespace {

// NIST, "SHA-256 examples" beside FIPS 180-4 (one block and two blocks), and the empty message of
// the NIST Secure Hash Algorithm Validation System (SHA256ShortMsg.rsp, Len = 0).
TEST(Sha256, GivesThePublishedValues) {
    EXPECT_EQ(sha256("abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(sha256(""), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
    EXPECT_EQ(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
}

// FIPS 180-2, appendix B.3: one million times "a".
TEST(Sha256, HashesLongMessages) {
    EXPECT_EQ(sha256(std::string(1000000, 'a')),
              "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST(Sha256, GivesRawBytesToo) {
    const std::string bytes = sha256Bytes("abc");
    EXPECT_EQ(bytes.size(), 32u);
    EXPECT_EQ(hexOf(bytes), sha256("abc"));
}

TEST(Sha256, HashesZeroBytesLikeAnyOther) {
    EXPECT_NE(sha256(std::string(1, '\0')), sha256(std::string(2, '\0')));
}

TEST(Sha256, WritesTwoDigitsAByte) {
    EXPECT_EQ(hexOf(std::string("\x00\x0F\xF0\xFF", 4)), "000ff0ff");
    EXPECT_EQ(hexOf(""), "");
}

TEST(Sha256, DrawsOtherBytesEachTime) {
    std::set<std::string> drawn;
    for (int i = 0; i < 100; ++i)
        drawn.insert(randomBytes(16));
    EXPECT_EQ(drawn.size(), 100u);
    EXPECT_EQ(randomBytes(0), "");
    EXPECT_EQ(randomBytes(7).size(), 7u);
}

}  // namespace
}  // namespace rackbook
