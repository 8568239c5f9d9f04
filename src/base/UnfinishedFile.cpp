#include "base/UnfinishedFile.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <QFileInfo>

#include <cstdio>
#include <cstring>

#include "base/Error.h"
#include "base/Files.h"

namespace rackbook {

namespace {

constexpr const char* remedy = "Check the folder, its permissions and the space on the disk.";

std::string targetOf(const std::string& path) {
    const QFileInfo there(QString::fromStdString(path));
    if (!there.isSymLink())
        return path;
    const QString target = there.exists() ? there.canonicalFilePath() : there.symLinkTarget();
    return target.toStdString();
}

// Some file systems cannot sync, and say so.
bool syncs(int file) {
    return fsync(file) == 0 || errno == EINVAL || errno == ENOTSUP || errno == EROFS;
}

void syncPath(const std::string& path, int flags) {
    const int file = open(path.c_str(), O_RDONLY | O_CLOEXEC | flags);
    const bool isSynced = file >= 0 && syncs(file);
    const std::string why = std::strerror(errno);
    if (file >= 0)
        close(file);
    if (!isSynced)
        throw StoreError(path, "the disk does not say that what was written will stay: " + why,
                         "Check the disk before you rely on it.");
}

}  // namespace

UnfinishedFile::UnfinishedFile(const std::string& path)
    : m_path(path), m_target(targetOf(path)), m_unfinished(m_target + ".unfinished") {
    struct stat before;
    const bool replaces = stat(m_target.c_str(), &before) == 0;
    if (replaces && access(m_target.c_str(), W_OK) != 0)
        fail();
    // Whoever finished in between has taken the name away from the file that was opened.
    while (!tryOpen()) {
    }
    m_isThere = true;
    if (ftruncate(m_file, 0) != 0 || (replaces && fchmod(m_file, before.st_mode & 07777) != 0)) {
        const int why = errno;
        unlink(m_unfinished.c_str());
        close(m_file);
        errno = why;
        fail();
    }
}

// False where the name does not belong to the opened file any more.
bool UnfinishedFile::tryOpen() {
    m_file =
        open(m_unfinished.c_str(), O_CREAT | O_WRONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK, 0666);
    if (m_file < 0)
        fail();
    if (flock(m_file, LOCK_EX | LOCK_NB) != 0) {
        close(m_file);
        throw StoreError(m_path, "another command is writing it", "Wait for it to finish.");
    }
    struct stat mine;
    struct stat named;
    if (fstat(m_file, &mine) == 0 && stat(m_unfinished.c_str(), &named) == 0 &&
        mine.st_ino == named.st_ino && mine.st_dev == named.st_dev)
        return true;
    close(m_file);
    return false;
}

UnfinishedFile::~UnfinishedFile() {
    if (m_isThere)
        unlink(m_unfinished.c_str());
    close(m_file);
}

void UnfinishedFile::fail() const {
    throw StoreError(m_path, std::string("it cannot be written: ") + std::strerror(errno), remedy);
}

void UnfinishedFile::write(std::string_view bytes) {
    // A full disk takes a part first; only the write after that says why.
    while (!bytes.empty()) {
        const ssize_t written = ::write(m_file, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR)
            continue;
        if (written < 0)
            fail();
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
}

void UnfinishedFile::finish() {
    if (!syncs(m_file) || std::rename(m_unfinished.c_str(), m_target.c_str()) != 0)
        fail();
    m_isThere = false;
    syncFolder(folderOf(m_target));
}

void syncFile(const std::string& path) {
    syncPath(path, 0);
}

void syncFolder(const std::string& path) {
    syncPath(path, O_DIRECTORY);
}

}  // namespace rackbook
