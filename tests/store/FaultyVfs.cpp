#include "FaultyVfs.h"

#include <sqlite3.h>

#include <cstring>
#include <stdexcept>

namespace rackbook::test {

namespace {

struct Fault {
    VfsCall call = VfsCall::open;
    int left = 0;  // calls of that kind until it comes; 0: none is to come
    int code = SQLITE_OK;
    bool lasting = false;
    bool tears = false;
    bool hasFailed = false;
};

// One at a time, so that SQLite's functions without a context find it.
Fault fault;
sqlite3_vfs* below = nullptr;

bool fails(VfsCall call) {
    if (call != fault.call || fault.code == SQLITE_OK)
        return false;
    if (fault.hasFailed)
        return fault.lasting;
    if (fault.left == 0 || --fault.left > 0)
        return false;
    fault.hasFailed = true;
    return true;
}

struct File {
    sqlite3_file base;
    sqlite3_io_methods methods;
};

sqlite3_file* inner(sqlite3_file* file) {
    return reinterpret_cast<sqlite3_file*>(reinterpret_cast<File*>(file) + 1);
}

const sqlite3_io_methods* innerMethods(sqlite3_file* file) {
    return inner(file)->pMethods;
}

int closeFile(sqlite3_file* f) {
    return innerMethods(f)->xClose(inner(f));
}
int readFile(sqlite3_file* f, void* to, int size, sqlite3_int64 at) {
    return innerMethods(f)->xRead(inner(f), to, size, at);
}
int writeFile(sqlite3_file* f, const void* from, int size, sqlite3_int64 at) {
    if (!fails(VfsCall::write))
        return innerMethods(f)->xWrite(inner(f), from, size, at);
    if (fault.tears)
        innerMethods(f)->xWrite(inner(f), from, size / 2, at);
    return fault.code;
}
int truncateFile(sqlite3_file* f, sqlite3_int64 size) {
    return fails(VfsCall::truncate) ? fault.code : innerMethods(f)->xTruncate(inner(f), size);
}
int syncFile(sqlite3_file* f, int flags) {
    return fails(VfsCall::sync) ? fault.code : innerMethods(f)->xSync(inner(f), flags);
}
int fileSize(sqlite3_file* f, sqlite3_int64* size) {
    return innerMethods(f)->xFileSize(inner(f), size);
}
int lockFile(sqlite3_file* f, int level) {
    return innerMethods(f)->xLock(inner(f), level);
}
int unlockFile(sqlite3_file* f, int level) {
    return innerMethods(f)->xUnlock(inner(f), level);
}
int checkLock(sqlite3_file* f, int* result) {
    return innerMethods(f)->xCheckReservedLock(inner(f), result);
}
int controlFile(sqlite3_file* f, int what, void* value) {
    return innerMethods(f)->xFileControl(inner(f), what, value);
}
int sectorSize(sqlite3_file* f) {
    return innerMethods(f)->xSectorSize(inner(f));
}
int traits(sqlite3_file* f) {
    return innerMethods(f)->xDeviceCharacteristics(inner(f));
}
int mapShared(sqlite3_file* f, int region, int size, int extend, void volatile** at) {
    return innerMethods(f)->xShmMap(inner(f), region, size, extend, at);
}
int lockShared(sqlite3_file* f, int offset, int n, int flags) {
    return innerMethods(f)->xShmLock(inner(f), offset, n, flags);
}
void barrier(sqlite3_file* f) {
    innerMethods(f)->xShmBarrier(inner(f));
}
int unmapShared(sqlite3_file* f, int deletes) {
    return innerMethods(f)->xShmUnmap(inner(f), deletes);
}

constexpr sqlite3_io_methods allMethods = {
    2,          closeFile,  readFile,    writeFile,   truncateFile, syncFile, fileSize,
    lockFile,   unlockFile, checkLock,   controlFile, sectorSize,   traits,   mapShared,
    lockShared, barrier,    unmapShared, nullptr,     nullptr};

int openFile(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* outFlags) {
    file->pMethods = nullptr;
    if (fails(VfsCall::open))
        return fault.code;
    auto* mine = reinterpret_cast<File*>(file);
    std::memset(static_cast<void*>(inner(file)), 0, static_cast<std::size_t>(below->szOsFile));
    const int code = below->xOpen(below, name, inner(file), flags, outFlags);
    if (innerMethods(file) == nullptr)
        return code;
    mine->methods = allMethods;
    // Files without shared memory say so by their version.
    mine->methods.iVersion = innerMethods(file)->iVersion >= 2 ? 2 : 1;
    file->pMethods = &mine->methods;
    return code;
}

int removeFile(sqlite3_vfs*, const char* name, int syncFolder) {
    return fails(VfsCall::remove) ? fault.code : below->xDelete(below, name, syncFolder);
}

}  // namespace

struct FaultyVfs::Inner {
    sqlite3_vfs vfs;
};

FaultyVfs::FaultyVfs() : m_inner(std::make_unique<Inner>()) {
    fault = {};
    below = sqlite3_vfs_find(nullptr);
    if (below == nullptr)
        throw std::runtime_error("SQLite knows no file system");
    m_inner->vfs = *below;
    m_inner->vfs.zName = "rackbook-faults";
    m_inner->vfs.pNext = nullptr;
    m_inner->vfs.szOsFile = static_cast<int>(sizeof(File)) + below->szOsFile;
    m_inner->vfs.xOpen = openFile;
    m_inner->vfs.xDelete = removeFile;
    sqlite3_vfs_register(&m_inner->vfs, 1);
}

FaultyVfs::~FaultyVfs() {
    sqlite3_vfs_unregister(&m_inner->vfs);
    sqlite3_vfs_register(below, 1);
    fault = {};
}

void FaultyVfs::arm(VfsCall call, int nth, int code, bool lasting, bool tears) {
    fault = {call, nth, code, lasting, tears, false};
}

void FaultyVfs::disarm() {
    fault.left = 0;
    fault.code = SQLITE_OK;
}

bool FaultyVfs::hasFailed() const {
    return fault.hasFailed;
}

}  // namespace rackbook::test
