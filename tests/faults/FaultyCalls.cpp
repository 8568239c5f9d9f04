// A library to be loaded before all others (LD_PRELOAD): counts the calls by which a program
// changes files below one folder, writes them down, and makes the one that was asked for go wrong.
//
//   RACKBOOK_FAULT_FOLDER  only what lies below it counts
//   RACKBOOK_FAULT_TRACE   file that gets one line a call: "write PATH", "rename FROM\tTO"
//   RACKBOOK_FAULT_AT      the call that goes wrong, from 1; 0: none
//   RACKBOOK_FAULT_KIND    see Kind below
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/types.h>
#include <sys/uio.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>

namespace {

enum class Kind {
    none,
    once,        // that call fails with EIO
    dead,        // it and all later ones fail with EIO
    full,        // it and all later ones that want room fail with ENOSPC
    part,        // that write takes half of the bytes and says so
    torn,        // that write takes half of the bytes, then the process is killed
    killBefore,  // the process is killed before that call …
    killAfter    // … or after it
};

constexpr std::size_t longestPath = 4096;

struct Plan {
    char folder[longestPath] = {};
    std::size_t folderLength = 0;
    Kind kind = Kind::none;
    long at = 0;
    int trace = -1;
};

long callsSoFar = 0;

Kind kindNamed(const char* name) {
    static const struct {
        const char* name;
        Kind kind;
    } kinds[] = {{"once", Kind::once},          {"dead", Kind::dead},
                 {"full", Kind::full},          {"part", Kind::part},
                 {"torn", Kind::torn},          {"killBefore", Kind::killBefore},
                 {"killAfter", Kind::killAfter}};
    for (const auto& one : kinds)
        if (name != nullptr && std::strcmp(one.name, name) == 0)
            return one.kind;
    return Kind::none;
}

Plan readPlan() {
    Plan plan;
    if (const char* folder = std::getenv("RACKBOOK_FAULT_FOLDER"))
        std::snprintf(plan.folder, sizeof plan.folder, "%s", folder);
    plan.folderLength = std::strlen(plan.folder);
    plan.kind = kindNamed(std::getenv("RACKBOOK_FAULT_KIND"));
    if (const char* at = std::getenv("RACKBOOK_FAULT_AT"))
        plan.at = std::atol(at);
    if (const char* trace = std::getenv("RACKBOOK_FAULT_TRACE"))
        plan.trace = static_cast<int>(
            syscall(SYS_openat, AT_FDCWD, trace, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600));
    return plan;
}

const Plan& plan() {
    static const Plan read = readPlan();
    return read;
}

template <class Function>
Function real(const char* name) {
    return reinterpret_cast<Function>(dlsym(RTLD_NEXT, name));
}

bool isBelow(const char* path) {
    const Plan& p = plan();
    return p.folderLength > 0 && std::strncmp(path, p.folder, p.folderLength) == 0 &&
           path[p.folderLength] == '/';
}

// Without links in the folder part, absolute. False where it does not lie below the folder.
bool wholePath(int at, const char* path, char* whole) {
    char base[longestPath];
    if (path[0] == '/') {
        std::snprintf(whole, longestPath, "%s", path);
        return isBelow(whole);
    }
    ssize_t length = 0;
    if (at == AT_FDCWD) {
        length = readlink("/proc/self/cwd", base, sizeof base - 1);
    } else {
        char link[64];
        std::snprintf(link, sizeof link, "/proc/self/fd/%d", at);
        length = readlink(link, base, sizeof base - 1);
    }
    if (length < 0)
        return false;
    base[length] = 0;
    while (std::strncmp(path, "./", 2) == 0)
        path += 2;
    if (static_cast<std::size_t>(length) + std::strlen(path) + 2 > longestPath)
        return false;
    std::strcpy(whole, base);
    std::strcat(whole, "/");
    std::strcat(whole, path);
    return isBelow(whole);
}

bool pathOf(int descriptor, char* whole) {
    char link[64];
    std::snprintf(link, sizeof link, "/proc/self/fd/%d", descriptor);
    const ssize_t length = readlink(link, whole, longestPath - 1);
    if (length < 0)
        return false;
    whole[length] = 0;
    const std::size_t folder = plan().folderLength;
    // The folder itself is synced too.
    return isBelow(whole) || (folder > 0 && std::strcmp(whole, plan().folder) == 0);
}

void note(const char* what, const char* path, const char* other) {
    if (plan().trace < 0)
        return;
    char line[2 * longestPath + 32];
    const int length = other == nullptr
                           ? std::snprintf(line, sizeof line, "%s %s\n", what, path)
                           : std::snprintf(line, sizeof line, "%s %s\t%s\n", what, path, other);
    syscall(SYS_write, plan().trace, line, static_cast<std::size_t>(length));
}

[[noreturn]] void die() {
    syscall(SYS_kill, getpid(), SIGKILL);
    for (;;)
        pause();
}

struct Verdict {
    int error = 0;  // 0: let it through
    bool onlyHalf = false;
    bool diesAfter = false;
};

// Counts the call and says what becomes of it.
Verdict judge(const char* what, const char* path, const char* other, bool wantsRoom) {
    const Plan& p = plan();
    ++callsSoFar;
    note(what, path, other);
    Verdict verdict;
    const bool isIt = callsSoFar == p.at;
    const bool isFromThere = p.at > 0 && callsSoFar >= p.at;
    const bool writes = std::strcmp(what, "write") == 0;
    if (isIt && p.kind == Kind::killBefore)
        die();
    if ((isIt && p.kind == Kind::once) || (isFromThere && p.kind == Kind::dead))
        verdict.error = EIO;
    if (isFromThere && p.kind == Kind::full && wantsRoom)
        verdict.error = ENOSPC;
    verdict.onlyHalf = isIt && writes && (p.kind == Kind::part || p.kind == Kind::torn);
    verdict.diesAfter = isIt && (p.kind == Kind::killAfter || p.kind == Kind::torn);
    return verdict;
}

template <class Result>
Result ended(const Verdict& verdict, Result result) {
    if (verdict.diesAfter)
        die();
    return result;
}

template <class Call>
auto onPath(const char* what, int at, const char* path, bool wantsRoom, Call call)
    -> decltype(call()) {
    char whole[longestPath];
    if (path == nullptr || !wholePath(at, path, whole))
        return call();
    const Verdict verdict = judge(what, whole, nullptr, wantsRoom);
    if (verdict.error != 0) {
        errno = verdict.error;
        return -1;
    }
    return ended(verdict, call());
}

template <class Call>
auto onDescriptor(const char* what, int descriptor, bool wantsRoom, Call call) -> decltype(call()) {
    char whole[longestPath];
    if (!pathOf(descriptor, whole))
        return call();
    const Verdict verdict = judge(what, whole, nullptr, wantsRoom);
    if (verdict.error != 0) {
        errno = verdict.error;
        return -1;
    }
    return ended(verdict, call());
}

// `call` takes how many bytes are to be written.
template <class Call>
ssize_t onWrite(int descriptor, std::size_t bytes, Call call) {
    char whole[longestPath];
    if (!pathOf(descriptor, whole))
        return call(bytes);
    const Verdict verdict = judge("write", whole, nullptr, true);
    if (verdict.error != 0) {
        errno = verdict.error;
        return -1;
    }
    return ended(verdict, call(verdict.onlyHalf ? (bytes + 1) / 2 : bytes));
}

template <class Call>
int onTwoPaths(const char* what, int fromAt, const char* from, int toAt, const char* to,
               Call call) {
    char first[longestPath];
    char second[longestPath];
    const bool isFirst = wholePath(fromAt, from, first);
    const bool isSecond = wholePath(toAt, to, second);
    if (!isFirst && !isSecond)
        return call();
    const Verdict verdict = judge(what, first, second, std::strcmp(what, "link") == 0);
    if (verdict.error != 0) {
        errno = verdict.error;
        return -1;
    }
    return ended(verdict, call());
}

bool makes(int flags) {
    return (flags & O_CREAT) != 0 || (flags & O_TMPFILE) == O_TMPFILE;
}

// Opening changes a folder only where it makes a file.
template <class Call>
int onOpen(int at, const char* path, int flags, Call call) {
    if ((flags & O_ACCMODE) == O_RDONLY && !makes(flags))
        return call();
    char whole[longestPath];
    struct stat there;
    const bool isThere = wholePath(at, path, whole) && stat(whole, &there) == 0;
    const bool changes = isThere ? (flags & O_TRUNC) != 0 : makes(flags);
    return changes ? onPath("open", at, path, true, call) : call();
}

mode_t modeIn(int flags, va_list words) {
    return makes(flags) ? va_arg(words, mode_t) : 0;
}

}  // namespace

extern "C" {

#define OPEN(name)                                                                     \
    int name(const char* path, int flags, ...) {                                       \
        va_list words;                                                                 \
        va_start(words, flags);                                                        \
        const mode_t mode = modeIn(flags, words);                                      \
        va_end(words);                                                                 \
        static const auto next = real<int (*)(const char*, int, ...)>(#name);          \
        return onOpen(AT_FDCWD, path, flags, [&] { return next(path, flags, mode); }); \
    }
OPEN(open)
OPEN(open64)

#define OPEN_AT(name)                                                                \
    int name(int at, const char* path, int flags, ...) {                             \
        va_list words;                                                               \
        va_start(words, flags);                                                      \
        const mode_t mode = modeIn(flags, words);                                    \
        va_end(words);                                                               \
        static const auto next = real<int (*)(int, const char*, int, ...)>(#name);   \
        return onOpen(at, path, flags, [&] { return next(at, path, flags, mode); }); \
    }
OPEN_AT(openat)
OPEN_AT(openat64)

ssize_t write(int descriptor, const void* bytes, size_t count) {
    static const auto next = real<ssize_t (*)(int, const void*, size_t)>("write");
    return onWrite(descriptor, count, [&](size_t n) { return next(descriptor, bytes, n); });
}

#define WRITE_AT(name, Offset)                                                               \
    ssize_t name(int descriptor, const void* bytes, size_t count, Offset offset) {           \
        static const auto next = real<ssize_t (*)(int, const void*, size_t, Offset)>(#name); \
        return onWrite(descriptor, count,                                                    \
                       [&](size_t n) { return next(descriptor, bytes, n, offset); });        \
    }
WRITE_AT(pwrite, off_t)
WRITE_AT(pwrite64, off64_t)

ssize_t writev(int descriptor, const struct iovec* parts, int count) {
    static const auto next = real<ssize_t (*)(int, const struct iovec*, int)>("writev");
    return onWrite(descriptor, 0, [&](size_t) { return next(descriptor, parts, count); });
}

#define ON_DESCRIPTOR(name)                                                               \
    int name(int descriptor) {                                                            \
        static const auto next = real<int (*)(int)>(#name);                               \
        return onDescriptor("sync", descriptor, false, [&] { return next(descriptor); }); \
    }
ON_DESCRIPTOR(fsync)
ON_DESCRIPTOR(fdatasync)

#define TRUNCATE(name, Offset)                                         \
    int name(int descriptor, Offset length) noexcept {                 \
        static const auto next = real<int (*)(int, Offset)>(#name);    \
        return onDescriptor("truncate", descriptor, true,              \
                            [&] { return next(descriptor, length); }); \
    }
TRUNCATE(ftruncate, off_t)
TRUNCATE(ftruncate64, off64_t)

#define FALLOCATE(name, Offset)                                                      \
    int name(int descriptor, int mode, Offset offset, Offset length) {               \
        static const auto next = real<int (*)(int, int, Offset, Offset)>(#name);     \
        return onDescriptor("truncate", descriptor, true,                            \
                            [&] { return next(descriptor, mode, offset, length); }); \
    }
FALLOCATE(fallocate, off_t)
FALLOCATE(fallocate64, off64_t)

int rename(const char* from, const char* to) noexcept {
    static const auto next = real<int (*)(const char*, const char*)>("rename");
    return onTwoPaths("rename", AT_FDCWD, from, AT_FDCWD, to, [&] { return next(from, to); });
}

int renameat(int fromAt, const char* from, int toAt, const char* to) noexcept {
    static const auto next = real<int (*)(int, const char*, int, const char*)>("renameat");
    return onTwoPaths("rename", fromAt, from, toAt, to,
                      [&] { return next(fromAt, from, toAt, to); });
}

int renameat2(int fromAt, const char* from, int toAt, const char* to, unsigned flags) noexcept {
    static const auto next =
        real<int (*)(int, const char*, int, const char*, unsigned)>("renameat2");
    return onTwoPaths("rename", fromAt, from, toAt, to,
                      [&] { return next(fromAt, from, toAt, to, flags); });
}

int link(const char* from, const char* to) noexcept {
    static const auto next = real<int (*)(const char*, const char*)>("link");
    return onTwoPaths("link", AT_FDCWD, from, AT_FDCWD, to, [&] { return next(from, to); });
}

int linkat(int fromAt, const char* from, int toAt, const char* to, int flags) noexcept {
    static const auto next = real<int (*)(int, const char*, int, const char*, int)>("linkat");
    return onTwoPaths("link", fromAt, from, toAt, to,
                      [&] { return next(fromAt, from, toAt, to, flags); });
}

#define ON_PATH(name, what)                                                     \
    int name(const char* path) noexcept {                                       \
        static const auto next = real<int (*)(const char*)>(#name);             \
        return onPath(what, AT_FDCWD, path, false, [&] { return next(path); }); \
    }
ON_PATH(unlink, "unlink")
ON_PATH(rmdir, "rmdir")
ON_PATH(remove, "unlink")

int unlinkat(int at, const char* path, int flags) noexcept {
    static const auto next = real<int (*)(int, const char*, int)>("unlinkat");
    return onPath("unlink", at, path, false, [&] { return next(at, path, flags); });
}

int mkdir(const char* path, mode_t mode) noexcept {
    static const auto next = real<int (*)(const char*, mode_t)>("mkdir");
    return onPath("mkdir", AT_FDCWD, path, true, [&] { return next(path, mode); });
}

}  // extern "C"
