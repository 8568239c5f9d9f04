#include "exchange/BagDigests.h"

#include <QCryptographicHash>
#include <QFile>
#include <algorithm>
#include <memory>

#include "base/Error.h"
#include "base/Files.h"

namespace rackbook {

namespace {

QCryptographicHash::Algorithm algorithmOf(const std::string& name) {
    if (name == "md5")
        return QCryptographicHash::Md5;
    if (name == "sha1")
        return QCryptographicHash::Sha1;
    if (name == "sha224")
        return QCryptographicHash::Sha224;
    if (name == "sha256")
        return QCryptographicHash::Sha256;
    return name == "sha384" ? QCryptographicHash::Sha384 : QCryptographicHash::Sha512;
}

}  // namespace

const std::vector<std::string>& knownDigests() {
    static const std::vector<std::string> names = {"md5",    "sha1",   "sha224",
                                                   "sha256", "sha384", "sha512"};
    return names;
}

bool isKnownDigest(const std::string& name) {
    return std::find(knownDigests().begin(), knownDigests().end(), name) != knownDigests().end();
}

std::map<std::string, std::string> digestsOfFile(const std::string& path,
                                                 const std::vector<std::string>& names) {
    requireRegularFile(path);
    QFile file(QString::fromStdString(path));
    if (!file.open(QIODevice::ReadOnly))
        throw InputError(path, "it cannot be read: " + file.errorString().toStdString(),
                         "Check the name and the permissions.");
    std::vector<std::unique_ptr<QCryptographicHash>> hashes;
    for (const std::string& name : names)
        hashes.push_back(std::make_unique<QCryptographicHash>(algorithmOf(name)));
    std::vector<char> part(std::size_t{1} << 20);
    qint64 read = 0;
    while ((read = file.read(part.data(), static_cast<qint64>(part.size()))) > 0)
        for (const auto& hash : hashes)
            hash->addData(QByteArrayView(part.data(), read));
    if (read < 0)
        throw InputError(path, file.errorString().toStdString(), "Check the disk it is on.");
    std::map<std::string, std::string> digests;
    for (std::size_t i = 0; i < names.size(); ++i)
        digests[names[i]] = hashes[i]->result().toHex().toStdString();
    return digests;
}

}  // namespace rackbook
