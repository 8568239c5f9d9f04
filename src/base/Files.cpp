#include "base/Files.h"

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <system_error>

#include "base/Error.h"
#include "base/Text.h"
#include "base/UnfinishedFile.h"

namespace rackbook {

namespace {

QString q(const std::string& path) {
    return QString::fromStdString(path);
}

std::string sizeText(std::size_t bytes) {
    constexpr std::size_t mebibyte = 1 << 20;
    return bytes < mebibyte ? std::to_string(bytes) + " bytes"
                            : std::to_string(bytes / mebibyte) + " MiB";
}

std::string readAll(QFile& file, const std::string& name, std::size_t most) {
    std::string bytes;
    constexpr qint64 chunk = 1 << 20;
    while (true) {
        const QByteArray part = file.read(chunk);
        if (part.isEmpty())
            break;
        bytes.append(part.constData(), static_cast<std::size_t>(part.size()));
        if (bytes.size() > most)
            throw InputError(name, "it is larger than " + sizeText(most),
                             "Split it into smaller files.");
    }
    if (file.error() != QFileDevice::NoError)
        throw InputError(name, file.errorString().toStdString(), "Check the disk it is on.");
    return bytes;
}

// Behind the name of a folder in the making. Nobody else names a folder so: what bears it is ours
// to take away, once nobody holds it.
constexpr const char* inTheMaking = ".rackbook-unfinished";

// On the folder itself, so that nothing lies in it that would have to be taken away once it has its
// name. -1 where it cannot be opened.
int openFolder(const std::string& path) {
    return open(path.c_str(), O_RDONLY | O_DIRECTORY | O_NOFOLLOW | O_CLOEXEC);
}

// What a process left that is no more: nobody holds the lock.
void removeLeftOver(const std::string& unfinished) {
    const int lock = openFolder(unfinished);
    if (lock < 0)
        return;
    if (flock(lock, LOCK_EX | LOCK_NB) == 0)
        QDir(q(unfinished)).removeRecursively();
    close(lock);
}

// Qt does not list names that are no text in UTF-8.
void addUnreadableNames(const std::string& folder, FilesBelow& found) {
    std::error_code trouble;
    const std::filesystem::directory_iterator end;
    for (std::filesystem::directory_iterator at(folder, trouble); !trouble && at != end;
         at.increment(trouble)) {
        const std::string name = at->path().filename().string();
        if (invalidUtf8At(name))
            found.passedOver.push_back(pathOf(folder, printable(name)));
    }
}

// Pre: it is a folder.
void collectBelow(const std::string& folder, const QString& suffix, FilesBelow& found) {
    const QDir here(q(folder));
    if (!here.isReadable())
        throw InputError(folder, "the folder cannot be read", "Check its permissions.");
    addUnreadableNames(folder, found);
    for (const QFileInfo& entry : here.entryInfoList(QDir::AllEntries | QDir::System |
                                                     QDir::Hidden | QDir::NoDotAndDotDot)) {
        const std::string path = entry.filePath().toStdString();
        const bool wanted = entry.fileName().endsWith(suffix, Qt::CaseInsensitive);
        // A pipe, a device.
        const bool isNeither = !entry.isDir() && !entry.isFile();
        const bool aside = entry.isSymLink() || entry.isHidden() || isNeither;
        if (aside && (wanted || entry.isDir()))
            found.passedOver.push_back(path);
        else if (!aside && entry.isDir())
            collectBelow(path, suffix, found);
        else if (!aside && wanted)
            found.paths.push_back(path);
    }
}

}  // namespace

std::string readFile(const std::string& path, std::size_t most) {
    QFile file(q(path));
    if (QFileInfo(q(path)).isDir())
        throw InputError(path, "it is a folder", "Name a file.");
    if (!file.open(QIODevice::ReadOnly))
        throw InputError(path, "it cannot be read: " + file.errorString().toStdString(),
                         "Check the name and the permissions.");
    return readAll(file, path, most);
}

void requireRegularFile(const std::string& path) {
    const QFileInfo there(q(path));
    if (there.isDir())
        throw InputError(path, "it is a folder", "Name a file.");
    if (there.exists() && !there.isFile())
        throw InputError(path, "it is no file", "Name a file.");
}

std::string readStandardInput(std::size_t most) {
    QFile file;
    if (!file.open(stdin, QIODevice::ReadOnly))
        throw InputError("standard input", file.errorString().toStdString(), "Name a file.");
    return readAll(file, "standard input", most);
}

std::string beginningOf(const std::string& path, std::size_t count) {
    QFile file(q(path));
    if (!QFileInfo(q(path)).isFile() || !file.open(QIODevice::ReadOnly))
        return {};
    return file.read(static_cast<qint64>(count)).toStdString();
}

void writeFileSafely(const std::string& path, std::string_view bytes) {
    // Renaming over a device or a pipe would put a file in its place.
    const QFileInfo there(q(path));
    if (there.exists() && !there.isFile())
        throw StoreError(path, "it is no regular file", "Name another file.");
    UnfinishedFile file(path);
    file.write(bytes);
    file.finish();
}

void copyFileSafely(const std::string& from, const std::string& to) {
    QFile source(q(from));
    if (!source.open(QIODevice::ReadOnly))
        throw InputError(from, "it cannot be read: " + source.errorString().toStdString(),
                         "Check the name and the permissions.");
    UnfinishedFile copy(to);
    constexpr qint64 chunk = 1 << 20;
    while (true) {
        const QByteArray part = source.read(chunk);
        if (part.isEmpty())
            break;
        copy.write({part.constData(), static_cast<std::size_t>(part.size())});
    }
    if (source.error() != QFileDevice::NoError)
        throw InputError(from, source.errorString().toStdString(), "Check the disk it is on.");
    copy.finish();
}

void makeFolder(const std::string& path) {
    if (!QDir().mkpath(q(path)))
        throw StoreError(path, "the folder cannot be made",
                         "Check the name, the permissions and the space on the disk.");
}

NewFolder::NewFolder(std::string folder) : m_folder(std::move(folder)) {
    while (m_folder.size() > 1 && m_folder.back() == '/')
        m_folder.pop_back();
    m_unfinished = m_folder + inTheMaking;
    removeLeftOver(m_unfinished);
    if (fileExists(m_unfinished))
        throw StoreError(m_unfinished, "something of that name is there already",
                         "Another command may be writing it; remove it if none is.");
    makeFolder(m_unfinished);
    hold();
}

// A file system that locks no folders is taken as it is: then what was left over stays until it is
// taken away by hand.
void NewFolder::hold() {
    m_lock = openFolder(m_unfinished);
    if (m_lock >= 0 && (flock(m_lock, LOCK_EX | LOCK_NB) == 0 || errno != EWOULDBLOCK))
        return;
    if (m_lock >= 0)
        close(m_lock);
    throw StoreError(m_unfinished, "another command is writing it", "Wait for it to finish.");
}

NewFolder::~NewFolder() {
    if (!m_unfinished.empty())
        QDir(q(m_unfinished)).removeRecursively();
    close(m_lock);
}

void NewFolder::finish() {
    syncFolder(m_unfinished);
    // An empty folder of that name gives way.
    QDir().rmdir(q(m_folder));
    if (!QDir().rename(q(m_unfinished), q(m_folder)))
        throw StoreError(m_folder, "the folder cannot be given its name",
                         "Check the permissions of the folder around it.");
    m_unfinished.clear();
    syncFolder(folderOf(m_folder));
}

bool isFolder(const std::string& path) {
    return QFileInfo(q(path)).isDir();
}

bool isLink(const std::string& path) {
    return QFileInfo(q(path)).isSymLink();
}

bool fileExists(const std::string& path) {
    return QFileInfo::exists(q(path));
}

bool isEmptyFolder(const std::string& path) {
    return isFolder(path) && QDir(q(path)).isEmpty(QDir::AllEntries | QDir::NoDotAndDotDot |
                                                   QDir::Hidden | QDir::System);
}

FilesBelow filesBelow(const std::string& folder, const std::string& suffix) {
    FilesBelow found;
    collectBelow(folder, q(suffix), found);
    std::sort(found.paths.begin(), found.paths.end());
    std::sort(found.passedOver.begin(), found.passedOver.end());
    return found;
}

std::string pathOf(const std::string& folder, const std::string& name) {
    return QDir(q(folder)).filePath(q(name)).toStdString();
}

std::string fileNameOf(const std::string& path) {
    return QFileInfo(q(path)).fileName().toStdString();
}

std::string folderOf(const std::string& path) {
    return QFileInfo(q(path)).path().toStdString();
}

}  // namespace rackbook
