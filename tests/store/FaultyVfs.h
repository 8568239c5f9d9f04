// A layer under SQLite that counts its calls to the system and makes one of them fail.
#pragma once

#include <memory>
#include <string>

namespace rackbook::test {

enum class VfsCall { open, write, sync, truncate, remove };

// While it lives, every database that is opened goes through it. One at a time.
class FaultyVfs {
public:
    FaultyVfs();
    ~FaultyVfs();
    FaultyVfs(const FaultyVfs&) = delete;
    FaultyVfs& operator=(const FaultyVfs&) = delete;

    // The `nth` call of that kind from now on (1: the next) fails with SQLite's `code`; with
    // `lasting` all after it do too. A write that fails puts half of its bytes there where `tears`.
    void arm(VfsCall call, int nth, int code, bool lasting = false, bool tears = false);
    void disarm();
    // Whether the fault has come.
    bool hasFailed() const;

private:
    struct Inner;
    std::unique_ptr<Inner> m_inner;
};

}  // namespace rackbook::test
