#include "base/Sha256.h"

#include <QByteArrayView>
#include <QCryptographicHash>
#include <QFile>
#include <QRandomGenerator>

#include "base/Error.h"
#include "base/Files.h"

namespace rackbook {

std::string sha256Bytes(std::string_view bytes) {
    const QByteArrayView view(bytes.data(), static_cast<qsizetype>(bytes.size()));
    return QCryptographicHash::hash(view, QCryptographicHash::Sha256).toStdString();
}

std::string sha256(std::string_view bytes) {
    return hexOf(sha256Bytes(bytes));
}

std::string sha256OfFile(const std::string& path) {
    const QString name = QString::fromStdString(path);
    QFile file(name);
    requireRegularFile(path);
    if (!file.open(QIODevice::ReadOnly))
        throw InputError(path, "it cannot be read: " + file.errorString().toStdString(),
                         "Check the name and the permissions.");
    QCryptographicHash hash(QCryptographicHash::Sha256);
    if (!hash.addData(&file))
        throw InputError(path, file.errorString().toStdString(), "Check the disk it is on.");
    return hash.result().toHex().toStdString();
}

std::string randomBytes(int count) {
    std::string bytes(static_cast<std::size_t>(count), '\0');
    for (std::size_t at = 0; at < bytes.size(); at += sizeof(quint32)) {
        const quint32 value = QRandomGenerator::system()->generate();
        for (std::size_t i = 0; i < sizeof value && at + i < bytes.size(); ++i)
            bytes[at + i] = static_cast<char>((value >> (8 * i)) & 0xFF);
    }
    return bytes;
}

std::string hexOf(std::string_view bytes) {
    static constexpr char digits[] = "0123456789abcdef";
    std::string text;
    text.reserve(bytes.size() * 2);
    for (const char c : bytes) {
        text += digits[static_cast<unsigned char>(c) >> 4];
        text += digits[static_cast<unsigned char>(c) & 0xF];
    }
    return text;
}

std::optional<std::string> bytesOfHex(std::string_view digits) {
    const QByteArray text(digits.data(), static_cast<qsizetype>(digits.size()));
    const QByteArray bytes = QByteArray::fromHex(text);
    if (bytes.toHex() != text.toLower())
        return std::nullopt;
    return bytes.toStdString();
}

}  // namespace rackbook
